import type { Chain } from './chain.ts';
import { drawnAfter } from './part-done.ts';
import type { RefillEvent } from './search-limits.ts';

/**
 * The same events with the refills from the rig inside ops as early as the compartments allow, from event `first` on to the next
 * station. The labels place them where a compartment runs dry; earlier ones cost the same and can bring parts from home to use that a station would be paid for.
 *
 * @returns null where nothing moves
 */
export function moveEarlier(
  chain: Chain,
  events: readonly RefillEvent[],
  first: number,
): readonly RefillEvent[] | null {
  const moved = events.slice();
  let changed = false;
  const next = events.findIndex((event, e) => e >= first && event.station >= 0);
  for (let e = (next < 0 ? events.length : next) - 1; e >= first; e -= 1) {
    const event = events[e] as RefillEvent;
    const done = earliest(chain, moved, e);
    if (done >= event.done) continue;
    moved[e] = { ...event, done };
    changed = true;
  }
  return changed && inOrder(moved) ? moved : null;
}

/** Least units at which event e can lie so that no compartment is asked for more than it holds before it is filled again. */
function earliest(chain: Chain, events: readonly RefillEvent[], e: number): number {
  const event = events[e] as RefillEvent;
  let low = 1;
  let high = event.done;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (lasts(chain, events, e, middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function lasts(chain: Chain, events: readonly RefillEvent[], e: number, done: number): boolean {
  const { compartments, store } = chain.model;
  for (let c = 0; c < compartments; c += 1) {
    if (partsUntilFilled(chain, events, e, done, c) > (store[c] as number)) return false;
  }
  return true;
}

/** Parts that compartment c gives from event e, moved to `done` units, until the next event that fills it or changes its material. */
function partsUntilFilled(chain: Chain, events: readonly RefillEvent[], e: number, done: number, c: number): number {
  const { model } = chain;
  const from = events[e] as RefillEvent;
  const material = chain.nextMaterial[from.position * model.compartments + c] as number;
  if (material < 0) return 0;
  const stock = model.problem.materials[material]?.stock ?? -1;
  const until = events
    .slice(e + 1)
    .find(
      (next) =>
        next.station < 0 ||
        ((next.changes >> c) & 1) === 1 ||
        (((model.holds[next.station] as number) >> stock) & 1) === 1,
    );
  const end = until?.position ?? chain.length - 1;
  let parts = 0;
  for (let i = from.position; i <= end; i += 1) {
    const op = chain.op[i] as number;
    const area = model.ops.area[op] as number;
    const start = i === from.position ? done : 0;
    const stop = until !== undefined && i === end ? until.done : area;
    for (let draw = model.ops.drawStart[op] as number; draw < (model.ops.drawStart[op + 1] as number); draw += 1) {
      if (model.ops.drawCompartment[draw] !== c || model.ops.material[op] !== material) continue;
      const all = model.ops.drawParts[draw] as number;
      parts += drawnAfter(all, stop, area) - drawnAfter(all, start, area);
    }
  }
  return parts;
}

function inOrder(events: readonly RefillEvent[]): boolean {
  return events.every((event, e) => {
    const before = events[e - 1];
    return before === undefined || before.position < event.position || before.done <= event.done;
  });
}
