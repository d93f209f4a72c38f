export { PassPanel, type PassSubject } from './pass-panel.tsx';
export { Reckoning } from './reckoning.tsx';
export { usePassScene } from './use-pass-scene.ts';
