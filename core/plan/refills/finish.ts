import { type Work, withoutIdle } from './busy.ts';
import { CostFloor } from './floor.ts';
import { neighboursOf } from './neighbours.ts';
import type { RefillSearch } from './refill-search.ts';
import type { RefillEvent } from './search-limits.ts';
import { isTimeline, playDay, type Timeline } from './timeline.ts';
import { leastOf, settleWhole } from './whole.ts';

/** A day played to the millisecond, with what leads to it. */
export type Played = Work & { readonly timeline: Timeline };

/** Longest row of visits in which single refills are tried elsewhere: in longer ones that takes long and hardly ever pays. */
const SHORT_ROW = 10;
/** Steps taken at most from one row of events to a better one. */
const MOST_STEPS = 12;

/**
 * Improves a day that the labels found: amounts and places of refills inside ops by linear programming, and in short rows one refill
 * at a time elsewhere, from another place of supply or left out, as long as that pays. `search.chain` holds the visits.
 */
export function finish(search: RefillSearch, start: Played): Played {
  const long = search.chain.visits > SHORT_ROW;
  if (long && !amountsMatter(search, start)) return start;
  let best = settled(search, start, start.events, breakOf(start.timeline)) ?? start;
  for (let step = 0; step < MOST_STEPS && !long; step += 1) {
    const next = bestOfBreaks(search, best);
    if (next === null) return best;
    best = next;
  }
  return best;
}

/** Whether it is likely to matter how much is moved at which event: the flow differs, or parts moved before a wait cost nothing. */
export function amountsMatter(
  search: RefillSearch,
  { events, timeline }: Pick<Played, 'events' | 'timeline'>,
): boolean {
  if (events.length === 0) return false;
  // The labels empty a hopper before the bags beside it, even where those came from home and the hopper's from a station.
  if (search.model.carriesBags) return true;
  const kinds = timeline.activities.map((each) => each.kind);
  if (kinds.lastIndexOf('wait') > kinds.indexOf('refill')) return true;
  const { stocks, price } = search.model;
  return Array.from({ length: stocks }, (_, s) => s).some((s) => {
    const prices = events.flatMap(({ station }) => (station < 0 ? [] : [price[station * stocks + s] as number]));
    return new Set(prices.filter((each) => each >= 0)).size > 1;
  });
}

/** With the break where it is; where nothing is better so, with the break a visit earlier or later. */
function bestOfBreaks(search: RefillSearch, best: Played): Played | null {
  const now = breakOf(best.timeline);
  const next = bestNeighbour(search, best, now);
  if (next !== null) return next;
  for (const other of breaksBeside(search, now)) {
    const found = settled(search, best, best.events, other) ?? bestNeighbour(search, best, other);
    if (found !== null) return found;
  }
  return null;
}

/** The visits before and after that of the break; -1, no break, comes after the last one. */
export function breaksBeside(search: RefillSearch, now: number): readonly number[] {
  if (search.model.rig.breakAfterMs < 0) return [];
  const last = search.chain.visits - 1;
  if (now < 0) return [last];
  const after = now === last ? -1 : now + 1;
  return now === 0 ? [after] : [now - 1, after];
}

function bestNeighbour(search: RefillSearch, best: Played, breakVisit: number): Played | null {
  const { chain } = search;
  const limit = best.timeline.cost - search.costPerMs / 2;
  const floor = new CostFloor(chain);
  const hopeful = neighboursOf(chain, best.events)
    .filter((events) => floor.of(events, breakVisit) < limit)
    .map((events) => ({ events, least: leastOf(chain, events, breakVisit, limit) }))
    .filter((each) => each.least < limit)
    .sort((left, right) => left.least - right.least);
  for (const { events } of hopeful) {
    const next = settled(search, best, events, breakVisit);
    if (next !== null) return next;
  }
  return null;
}

/** The day with these events, if it is really cheaper. */
function settled(
  search: RefillSearch,
  best: Played,
  events: readonly RefillEvent[],
  breakVisit: number,
): Played | null {
  const { chain } = search;
  const found = settleWhole(chain, events, breakVisit);
  if (found === null || found.cost >= best.timeline.cost) return null;
  const work = withoutIdle(found);
  const timeline = playDay(chain, work);
  return isTimeline(timeline) && timeline.cost < best.timeline.cost ? { ...work, timeline } : null;
}

/** Visit on whose arrival the break is taken, or -1: setting up follows on the break. */
export function breakOf({ activities }: Timeline): number {
  const next = activities[activities.findIndex((each) => each.kind === 'break') + 1];
  return next?.kind === 'set-up' ? next.visit : -1;
}
