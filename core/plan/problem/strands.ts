import type { Mode, Op } from './types.ts';

/** One op of a visit that is still to be given to the first or the second person. */
export type StrandOp = {
  readonly zoneId: string;
  readonly rank: number;
  /** '' for work with a machine. */
  readonly handMethodId: string;
  /** Whether the hand method may be used beside a machine that is riding; false for work with a machine. */
  readonly mayRunBeside: boolean;
  /** Given for a hand trim, which comes after the machine on its zone. */
  readonly trims?: boolean;
};

/**
 * The hand methods that a second person works with while the first one rides. A method is either the first person's or the second's
 * for the whole visit. It is the second's where it may be used beside a machine, and where none of its ops has to wait for an op of
 * the first person, or the other way round: on one zone, work of another rank, and hand trim after a machine. Somebody has to ride: without work by a machine there
 * is only one strand.
 */
export function secondMethods(ops: readonly StrandOp[]): ReadonlySet<string> {
  if (ops.every((each) => each.handMethodId !== '')) return new Set();
  const second = new Set(ops.filter((each) => each.mayRunBeside).map((each) => each.handMethodId));
  const waits = (own: StrandOp): boolean =>
    ops.some(
      (other) =>
        !second.has(other.handMethodId) &&
        other.zoneId === own.zoneId &&
        (other.rank !== own.rank || own.trims === true),
    );
  for (;;) {
    const bound = ops.find((each) => second.has(each.handMethodId) && waits(each));
    if (bound === undefined) return second;
    second.delete(bound.handMethodId);
  }
}

/** The time that ops take without refills between them: the longer one of the two strands. ms */
export function strandsMs(ops: readonly Pick<Op, 'second' | 'serviceMs'>[]): number {
  const sum = (second: boolean): number =>
    ops.reduce((total, each) => total + (each.second === second ? each.serviceMs : 0), 0);
  return Math.max(sum(false), sum(true));
}

/** Time of a visit without refills and head swaps. ms */
export function visitMs(mode: Mode): number {
  return mode.beforeMs + mode.afterMs + strandsMs(mode.ops);
}
