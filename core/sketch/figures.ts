import { lineLengthMetres, ringAreaSquareMetres } from '../geometry/index.ts';
import { type Feet, metresToFeet, quantity, type SquareFeet, squareMetresToSquareFeet } from '../units/index.ts';
import type { Corners } from './types.ts';

/** What is shown at the pointer while an outline is drawn. */
export type OutlineFigures = {
  /** Ground inside the outline as if it were closed now, ft2; null where it goes round nothing. */
  readonly areaSqFt: SquareFeet | null;
  /** Length of all sides, ft; the closing one counts where the outline is closed. */
  readonly perimeterFt: Feet;
  /** Length of the side drawn last, ft; null before there is one. */
  readonly lastEdgeFt: Feet | null;
  /** Likely error of the area, ft2; null where neither the outline's error nor an area is known. */
  readonly likelyErrorSqFt: SquareFeet | null;
};

/**
 * Figures of an outline on the ellipsoid. The likely error is that of an outline drawn too far out or in all round by
 * `outlineErrorFt`: error times perimeter, which at 1 ft and 1,000 m2 is about 4 %.
 */
export function outlineFigures(corners: Corners, closed: boolean, outlineErrorFt?: number): OutlineFigures {
  const areaSqM = corners.length < 3 ? null : ringAreaSquareMetres(corners);
  const round = lineLengthMetres(corners, true);
  const lastTwo = corners.slice(-2);
  return {
    areaSqFt: areaSqM === null ? null : squareMetresToSquareFeet(areaSqM),
    perimeterFt: metresToFeet(closed ? round : lineLengthMetres(corners)),
    lastEdgeFt: lastTwo.length < 2 ? null : metresToFeet(lineLengthMetres(lastTwo)),
    likelyErrorSqFt:
      areaSqM === null || outlineErrorFt === undefined ? null : quantity<'ft2'>(metresToFeet(round) * outlineErrorFt),
  };
}
