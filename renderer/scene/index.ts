export { useBackdrop, useChosenBackground } from './use-backdrop.ts';
export { routeOf, type SceneWish, useScene } from './use-scene.ts';
export { useWays } from './use-ways.ts';
