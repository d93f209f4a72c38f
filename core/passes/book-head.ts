import type { Head } from '../book/index.ts';
import type { PassHead } from './types.ts';

/** A head of the book as passes need it; null where the book does not say how it is driven. */
export function passHeadOf({ swathFt, speedMph, passes }: Head): PassHead | null {
  if (passes === undefined) return null;
  const { overlapFt, trimPasses, turnSec, trimSwathFt, sectionsFt, shieldedSide, squareCorners, transitMph, mark } =
    passes;
  return {
    swathFt,
    speedMph,
    overlapFt,
    trimPasses,
    turnSec,
    ...(trimSwathFt === undefined ? {} : { trimSwathFt }),
    ...(sectionsFt === undefined || sectionsFt.length === 0 ? {} : { sectionsFt }),
    ...(shieldedSide === undefined ? {} : { shieldedSide }),
    ...(squareCorners === true ? { squareCorners } : {}),
    ...(mark === undefined ? {} : { mark }),
    ...(transitMph === undefined ? {} : { transitMph }),
  };
}
