export { metresPerPixel, roundStep } from './grid.ts';
export { MapPanel } from './map-panel.tsx';
export type { FillMark, GateScale, LawnLabel, MapScene, RouteLeg } from './scene.ts';
