import type { HeadPasses, Zone } from '../book/index.ts';
import type { PassOptions } from './types.ts';

/**
 * The direction in which a zone's swaths are to run with a head: the one that the user has fixed for the zone; up and down where
 * the head wants that on ground so steep and it is known which way it falls; otherwise the quickest, which is searched.
 * @param passes how the head is driven; null where the book does not say
 */
export function directionOptions(
  { slopeDeg, downhillDeg, swathDeg }: Pick<Zone, 'slopeDeg' | 'downhillDeg' | 'swathDeg'>,
  passes: Pick<HeadPasses, 'upAndDownFromDeg'> | null,
): PassOptions {
  if (swathDeg !== undefined) return { angleDeg: angleOfBearing(swathDeg) };
  const fromDeg = passes?.upAndDownFromDeg;
  if (fromDeg === undefined || slopeDeg < fromDeg) return {};
  return downhillDeg === undefined ? { isDownhillUnknown: true } : { angleDeg: angleOfBearing(downhillDeg) };
}

/**
 * A bearing, degrees clockwise from north, as the angle of a line, degrees anticlockwise from east in [0, 180); and the other way
 * round, since the one mirrors the other.
 */
export const angleOfBearing = (bearingDeg: number): number => (((90 - bearingDeg) % 180) + 180) % 180;
