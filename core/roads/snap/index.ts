export { SNAP_OPTIONS, type SnapOptions, snapPlaces } from './places.ts';
