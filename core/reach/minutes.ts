import type { Book } from '../book/index.ts';
import { acresPerHour, minutesForArea } from '../calibrate/index.ts';
import { type Minutes, quantity } from '../units/index.ts';
import type { Method } from './types.ts';

/**
 * Minutes of treating, without unloading, setting up or refilling. A machine's from its field capacity (speed x swath x
 * efficiency / 8.25, Iowa State University Extension A3-24), a hand method's from its minutes per 1,000 ft2.
 *
 * @param treatedSqFt ground to go over once
 * @param passes times that the ground is gone over
 * @returns null where the book does not hold the method
 */
export function treatingMinutes(book: Book, method: Method, treatedSqFt: number, passes = 1): Minutes | null {
  if (method.kind === 'hand') {
    const hand = book.handMethods.find((each) => each.id === method.handMethodId);
    return hand ? quantity<'min'>((treatedSqFt / 1000) * hand.minutesPer1000SqFt * passes) : null;
  }
  const machine = book.machines.find((each) => each.id === method.machineId);
  const head = machine?.heads.find((each) => each.id === method.headId);
  if (!head) return null;
  return minutesForArea(treatedSqFt * passes, acresPerHour(head.speedMph, head.swathFt, head.fieldEfficiency));
}
