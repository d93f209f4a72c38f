export { routeOf, type SceneWish, useScene } from './use-scene.ts';
