import * as v from 'valibot';
import type { GoTable } from '../plan/board/index.ts';
import { planSchema } from '../plan/result/index.ts';
import type { BoardReply } from './board-types.ts';
import { channel } from './channel.ts';

const handle = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{1,80}$/));
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(120));
const date = v.pipe(v.string(), v.regex(/^\d{4}-\d{2}-\d{2}$/));
const wholeNumber = v.pipe(v.number(), v.integer(), v.minValue(0));

const task = v.strictObject({ propertyId: id, zoneId: id, treatmentId: id, step: wholeNumber });
const goal = v.variant('kind', [
  v.strictObject({ kind: v.literal('day'), date, rigId: id, position: wholeNumber }),
  v.strictObject({ kind: v.literal('out') }),
]);
const moves = v.pipe(v.array(v.strictObject({ task, to: goal })), v.minLength(1), v.maxLength(1000));
/** A rig that does not go on a date, or that goes without one of its machines. */
export const outageSchema = v.strictObject({ date, rigId: id, machineId: v.exactOptional(id) });

/** What was done of a round before it is planned: without a zone a whole property. */
export const doneSchema = v.strictObject({
  propertyId: id,
  zoneId: v.exactOptional(id),
  treatmentId: v.exactOptional(id),
  step: v.exactOptional(wholeNumber),
});

const question = v.variant('kind', [
  v.strictObject({ kind: v.literal('move'), moves, newStamp: handle }),
  v.strictObject({ kind: v.literal('breaches') }),
  v.strictObject({ kind: v.literal('places'), task }),
  v.strictObject({ kind: v.literal('rests'), date }),
  v.strictObject({ kind: v.literal('takers'), outage: outageSchema }),
]);

/** Plans that are changed by hand. */
export const boardChannels = {
  /**
   * A question about a plan of a round. The screen names plans by stamps of its own; the plan itself goes along where the host does not
   * know the stamp. A thread of the host holds the problem, so that an answer takes tens of milliseconds.
   */
  'board.ask': channel<BoardReply>()(
    v.strictObject({
      session: handle,
      roundId: id,
      /** The day on which is asked: notice counts from it. */
      today: date,
      stamp: handle,
      plan: v.nullable(planSchema),
      question,
    }),
  ),
  /** Keeps an earlier plan with the book: somebody has gone back to it. */
  'board.keep': channel<{ readonly known: boolean }>()(v.strictObject({ session: handle, roundId: id, stamp: handle })),
  /** Lawns of a round by machines and hand methods, for one treatment: minutes, or the reason. */
  'fit.read': channel<GoTable | null>()(v.strictObject({ session: handle, roundId: id, treatmentId: id })),
};
