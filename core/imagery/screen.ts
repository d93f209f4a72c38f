import { fitMap } from './fit.ts';
import { cornersOf, type PictureSize } from './placement.ts';
import type { FlatPoint, PlaneMap } from './transform.ts';

/**
 * The map from the pixels of a picture to a flat frame in which its four corners are known (upper left, upper right, lower
 * right, lower left), for instance the screen's. Null where the corners do not span a picture.
 */
export function mapFromCorners(size: PictureSize, corners: readonly FlatPoint[]): PlaneMap | null {
  const from = cornersOf(size);
  const pairs = corners.flatMap((to, index) => {
    const corner = from[index];
    return corner === undefined ? [] : [{ from: corner, to }];
  });
  return fitMap('projective', pairs);
}
