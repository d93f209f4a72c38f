export { commonGround, cutHole, cutOut, edgeStrip, merge, offsetOutline } from './area-edits.ts';
export { type Crossing, crossingsOf, crossingsOfSide } from './crossings.ts';
export {
  beginDraft,
  cornersWanted,
  type Draft,
  type DraftPurpose,
  type DraftStart,
  type DraftStep,
  type DraftTool,
  draftOutline,
  draftPlace,
  isOutline,
  isPlace,
  propertyIdOf,
  readDraft,
} from './draft.ts';
export { finishDraft } from './draft-finish.ts';
export { applyDraft, endDraftMerging, redoDraft, undoDraft } from './draft-steps.ts';
export { type OutlineFigures, outlineFigures } from './figures.ts';
export { mergeZones } from './merge-zones.ts';
export { carryPlace, copyShape, mirrorShape, nudge, nudgePlace, rotateShape } from './place-edits.ts';
export {
  addCorner,
  cornersAt,
  moveCorner,
  openRing,
  polygonOf,
  removeCorner,
  removeHole,
  withCorners,
} from './ring-edits.ts';
export { circleAround, circleThrough, type RectangleDepth, rectangleBySides } from './shapes.ts';
export { type OutlineSide, placeAlong, type SideChange, sidesOf, withSide } from './sides.ts';
export { type Snap, type SnapOwn, snapPoint } from './snap.ts';
export { type SnapShape, type SnapTargets, snapTargets } from './snap-index.ts';
export { splitBy } from './split.ts';
export { type Straightened, squareUp } from './square-up.ts';
export { straighten } from './straighten.ts';
export { type Corners, FIRST_SHELL, type RingPlace } from './types.ts';
export { closeWalk, cornersFromSides, isWalkedRound, type Walk, type WalkedSide } from './walk.ts';
