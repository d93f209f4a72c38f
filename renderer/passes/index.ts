export { PassPanel, type PassSubject } from './pass-panel.tsx';
export { usePassScene } from './use-pass-scene.ts';
