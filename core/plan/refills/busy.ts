import type { Moves } from './amounts.ts';
import type { RefillEvent } from './search-limits.ts';

/** The events of a day and what is moved at each; entry 0 of `moves` is the morning. */
export type Work = {
  readonly events: readonly RefillEvent[];
  readonly moves: readonly Moves[];
  /** What is poured out of bags on machines, by `stintKey`; absent: nothing is decided. */
  readonly pours?: ReadonlyMap<number, number>;
};

/** Without the events at which nothing is moved or rinsed: such a one may only seem to pay, by passing the time until a break. */
export function withoutIdle(work: Work): Work {
  const { events, moves } = work;
  const busy = events.map(({ changes }, k) => {
    const moved = moves[k + 1];
    return changes !== 0 || (moved?.fills.length ?? 0) > 0 || (moved?.stock.length ?? 0) > 0;
  });
  if (busy.every((each) => each)) return work;
  return { events: events.filter((_, k) => busy[k]), moves: moves.filter((_, e) => e === 0 || busy[e - 1]) };
}
