export type { MapBackdrop, OverlayLook, PlacingMark, TileLook } from './background-scene.ts';
export { CROSSHAIR_KEYS } from './drawing/crosshair.ts';
export { DRAWING_KEYS } from './drawing/draw-keys.ts';
export type { Box, DrawEvents, DrawTone, DrawWish, OutlineWish, SnapFinder } from './drawing/draw-surface.ts';
export { createSnapFinder } from './drawing/snap-finder.ts';
export { MapPanel, type MapPointing } from './map-panel.tsx';
export { MAP_KEYS } from './map-view.ts';
export {
  type FillMark,
  type GateScale,
  type LawnLabel,
  type MapPart,
  type MapScene,
  partKey,
  type RouteLeg,
} from './scene.ts';
