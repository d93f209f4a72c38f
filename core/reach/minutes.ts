import type { Book, HandMethod } from '../book/index.ts';
import { acresPerHour, minutesForArea } from '../calibrate/index.ts';
import { type Minutes, quantity } from '../units/index.ts';
import type { Method } from './types.ts';

/**
 * Minutes of treating, without unloading, setting up or refilling. A machine's from its field capacity (speed x swath x
 * efficiency / 8.25, Iowa State University Extension A3-24), a hand method's from its minutes per 1,000 ft2 and the handling of
 * its hose.
 *
 * @param treatedSqFt ground to go over once
 * @param passes times that the ground is gone over
 * @param wayFt from the stand to the farthest point of the ground, for a hose that is pulled on; 0 where not known
 * @returns null where the book does not hold the method
 */
export function treatingMinutes(
  book: Book,
  method: Method,
  treatedSqFt: number,
  passes = 1,
  wayFt = 0,
): Minutes | null {
  if (method.kind === 'hand') {
    const hand = book.handMethods.find((each) => each.id === method.handMethodId);
    return hand ? handMinutes(hand, treatedSqFt * passes, wayFt) : null;
  }
  const machine = book.machines.find((each) => each.id === method.machineId);
  const head = machine?.heads.find((each) => each.id === method.headId);
  if (!head) return null;
  return minutesForArea(treatedSqFt * passes, acresPerHour(head.speedMph, head.swathFt, head.fieldEfficiency));
}

/** A hose is pulled on in moves of one length, ft (common practice, no source). */
const MOVE_FT = 50;

function handMinutes({ minutesPer1000SqFt, standSec = 0, moveSec = 0 }: HandMethod, sqFt: number, wayFt: number) {
  const moves = Number.isFinite(wayFt) ? Math.ceil(wayFt / MOVE_FT) : 0;
  return quantity<'min'>((sqFt / 1000) * minutesPer1000SqFt + (standSec + moves * moveSec) / 60);
}
