import { err, ok, type Result } from '../base/index.ts';
import { formatNumber } from './format-number.ts';
import { normalise, quote } from './quantity-text.ts';

/** The sixteen points of the compass, clockwise from north. */
const POINTS = 'n nne ne ene e ese se sse s ssw sw wsw w wnw nw nnw'.split(' ');
const FULL_TURN_DEG = 360;
const POINT_DEG = FULL_TURN_DEG / POINTS.length;
const HINT = 'Write a point of the compass such as NE, or degrees clockwise from north such as 45.';

/**
 * A bearing in degrees clockwise from north, from 0 up to less than 360, from "NE", "ssw", "45", "45°".
 * Errors: 'quantity-unreadable', 'quantity-out-of-range' (not from 0 to 360).
 */
export function parseBearing(text: string, where: string = quote(text)): Result<number> {
  // What formatBearing writes: the degrees count, the point of the compass beside them is only read by people.
  const tidy = normalise(text).replace(/ ?(?:°|deg|degrees?)(?: [nesw]+)?$/, '');
  const point = POINTS.indexOf(tidy);
  if (point >= 0) return ok(point * POINT_DEG);
  if (!/^[-+]?\d+(\.\d+)?$/.test(tidy)) {
    return err('quantity-unreadable', where, `${quote(text)} cannot be read as a bearing.`, HINT);
  }
  const degrees = Number(tidy);
  if (degrees >= 0 && degrees <= FULL_TURN_DEG) return ok(degrees % FULL_TURN_DEG);
  return err('quantity-out-of-range', where, `${quote(text)} is no bearing from 0 to 360.`, HINT);
}

/** "45° NE": degrees and the nearest point of the compass. */
export function formatBearing(bearingDeg: number): string {
  const point = POINTS[Math.round(bearingDeg / POINT_DEG) % POINTS.length] ?? 'n';
  return `${formatNumber(bearingDeg)}° ${point.toUpperCase()}`;
}
