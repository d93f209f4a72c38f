import type { Position } from '../book/index.ts';

/** Corners of an outline in order, longitude and latitude in degrees; the first one is not repeated at the end. */
export type Corners = readonly Position[];

/** One ring of an outline: which polygon of it, and which ring of that; ring 0 is the shell, the others are holes. */
export type RingPlace = { readonly polygon: number; readonly ring: number };

/** The shell of the first polygon. */
export const FIRST_SHELL: RingPlace = { polygon: 0, ring: 0 };
