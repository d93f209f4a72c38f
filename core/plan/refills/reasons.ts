import { DONE, TIME } from './labels.ts';
import type { RefillSearch } from './refill-search.ts';
import type { RefillEvent, SearchLimits } from './search-limits.ts';
import type { RefillReason } from './types.ts';

/**
 * Says for each event of a day of this cost why it is where it is. Runs the search again for events that nothing forces, to
 * learn what they save; the last run with `marked` must be that of the day, with these limits.
 */
export function findReasons(
  search: RefillSearch,
  events: readonly RefillEvent[],
  cost: number,
  limits: SearchLimits,
): readonly RefillReason[] {
  const forced = forcedReasons(search, events);
  const { costPerMs } = search.model.rig;
  const fallback = events.map((event) => whatItGives(search, event));
  return events.map((event, index) => {
    const reason = forced[index];
    if (reason !== null && reason !== undefined) return reason;
    const without = search.runWithout(event, limits);
    if (!Number.isFinite(without)) return fallback[index] ?? { kind: 'payload' };
    return { kind: 'cheaper-here-than-later', savedMs: Math.max(0, Math.round((without - cost) / costPerMs)) };
  });
}

/** Replays the events; null where work could have gone on without the event. */
function forcedReasons(search: RefillSearch, events: readonly RefillEvent[]): (RefillReason | null)[] {
  const { chain, labels, steps } = search;
  const at = labels.first(chain, 0, 0);
  const reasons: (RefillReason | null)[] = [];
  let next = 0;
  for (let i = 0; i < chain.length; i += 1) {
    labels.data[at + DONE] = 0;
    for (; events[next]?.position === i; next += 1) {
      const event = events[next] as RefillEvent;
      if (event.done > (labels.data[at + DONE] as number)) steps.work(at, i, event.done);
      reasons.push(forcedAt(search, at, event));
      if (event.station < 0) steps.refillFromRig(at, i, event.changes);
      else steps.visitStation(at, i, event.station, event.changes);
      labels.data[at + TIME] = 0;
    }
    steps.work(at, i, search.model.ops.area[chain.op[i] as number] as number);
  }
  return reasons;
}

function forcedAt(search: RefillSearch, at: number, event: RefillEvent): RefillReason | null {
  const { stores } = search;
  const i = event.position;
  if (event.done === 0 && stores.mismatched(at, i)) {
    for (let c = 0; event.changes >> c !== 0; c += 1) {
      if (((event.changes >> c) & 1) === 1) return { kind: 'change-of-material', compartment: c };
    }
  }
  // Inside an op too, a refill may come before it must: before a wait, or so that more can be taken on where it flows faster.
  if (stores.furthest(at, i) <= event.done) {
    const limit = stores.limitAt(at, i);
    if (limit.kind === 'stock') return { kind: 'stock-runs-out', stock: limit.index };
    if (limit.kind === 'compartment') return { kind: 'runs-dry', compartment: limit.index };
    return { kind: 'payload' };
  }
  return null;
}

/** For an event without which the day cannot be done at all: what it brings for the op that follows. */
function whatItGives(search: RefillSearch, event: RefillEvent): RefillReason {
  const { chain, model } = search;
  const held = event.station < 0 ? 0 : (model.holds[event.station] as number);
  for (let s = 0; s < model.stocks; s += 1) {
    const needed = (chain.stockParts[event.position * model.stocks + s] as number) > 0;
    if (needed && ((held >> s) & 1) === 1) return { kind: 'stock-runs-out', stock: s };
  }
  const op = chain.op[event.position] as number;
  const draw = model.ops.drawStart[op] as number;
  return { kind: 'runs-dry', compartment: model.ops.drawCompartment[draw] ?? 0 };
}
