import type { GroundReadOptions } from './types.ts';

const MEBIBYTE = 1024 * 1024;

/** What is used where nobody asks for anything else. The sizes are ours: several times the largest county file tried. */
export const GROUND_READ_OPTIONS: GroundReadOptions = {
  limits: {
    fileBytes: 200 * MEBIBYTE,
    unpackedBytes: 300 * MEBIBYTE,
    entries: 2000,
    features: 200_000,
    positions: 5_000_000,
  },
  walk: { closeWithinM: 15, simplifyM: 0.15 },
};
