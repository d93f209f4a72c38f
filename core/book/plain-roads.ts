import type { BookRoads } from './model.ts';

/** What a book without a word about roads says. */
export const PLAIN_ROADS: BookRoads = {
  use: true,
  speeds: [],
  mostFt: 1000,
  kerbSide: false,
  drivesOn: 'right',
  privateRoads: true,
  avoid: [],
  times: [],
};
