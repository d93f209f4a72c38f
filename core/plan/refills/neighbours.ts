import type { Chain } from './chain.ts';
import type { RefillEvent } from './search-limits.ts';

/** Where a refill may lie: before an op with nothing of it done, or inside it. */
type Place = { readonly position: number; readonly inside: boolean };

/** How many places earlier or later a refill is tried; in short rows all. */
const REACH = 3;
const SHORT_PLACES = 48;

/**
 * Rows of events that differ from a given one in a refill or two: left out, done elsewhere, done at another place of supply, one
 * refill from the rig more, two in a row with their supplies exchanged or made into one, one made from the rig with a station elsewhere. Changes of material go with the refills
 * that are left.
 */
export function neighboursOf(chain: Chain, events: readonly RefillEvent[]): readonly (readonly RefillEvent[])[] {
  const places = Array.from({ length: chain.length * 2 }, (_, at) => ({ position: at >> 1, inside: at % 2 === 1 }));
  const found = new Map<string, RefillEvent[]>();
  const keep = (row: RefillEvent[]): void => {
    const changed = withChanges(chain, row);
    if (changed !== null) found.set(keyOf(changed), changed);
  };
  events.forEach((event, index) => {
    const rest = events.filter((_, k) => k !== index);
    keep(rest);
    const at = event.position * 2 + (event.done > 0 ? 1 : 0);
    const reach = places.length <= SHORT_PLACES ? places.length : REACH;
    for (const place of places.slice(Math.max(0, at - reach), at + reach + 1)) {
      for (let station = -1; station < chain.model.stations; station += 1) {
        if (station === event.station && isAt(event, place)) continue;
        for (const row of inserted(chain, rest, place, station, event.changes)) keep(row);
        if (event.station < 0 || station < 0) continue;
        // Out of the rig here, so that there is room for what a station gives elsewhere.
        const fromRig = events.map((each, k) => (k === index ? { ...each, station: -1 } : each));
        for (const row of inserted(chain, fromRig, place, station, 0)) if (stationsFirst(row)) keep(row);
      }
    }
  });
  for (const place of places) for (const row of inserted(chain, events, place, -1, 0)) keep(row);
  for (let k = 1; k < events.length; k += 1) for (const row of paired(events, k, chain.model.stations)) keep(row);
  return [...found.values()];
}

/** Alike for rows in which the same refills lie before, between and inside the same ops. */
function keyOf(events: readonly RefillEvent[]): string {
  return events.map((each) => `${each.position},${each.done > 0},${each.station},${each.changes}`).join(' ');
}

/** Refill k and the one before it: with their supplies exchanged, and either one alone, with any supply. */
function paired(events: readonly RefillEvent[], k: number, stations: number): RefillEvent[][] {
  const [left, right] = [events[k - 1] as RefillEvent, events[k] as RefillEvent];
  const changes = left.changes | right.changes;
  const instead = (...row: RefillEvent[]): RefillEvent[] => [...events.slice(0, k - 1), ...row, ...events.slice(k + 1)];
  const rows = [instead({ ...left, station: right.station }, { ...right, station: left.station })];
  for (let station = -1; station < stations; station += 1)
    rows.push(instead({ ...left, station, changes }), instead({ ...right, station, changes }));
  return rows.filter(stationsFirst);
}

function isAt(event: RefillEvent, place: Place): boolean {
  return event.position === place.position && event.done > 0 === place.inside;
}

/** The row with one more event; where others lie inside the same op, before and after them. */
function inserted(
  chain: Chain,
  events: readonly RefillEvent[],
  place: Place,
  station: number,
  changes: number,
): RefillEvent[][] {
  const area = chain.model.ops.area[chain.op[place.position] as number] as number;
  if (place.inside && area < 2) return [];
  const event = { position: place.position, done: place.inside ? 1 : 0, station, changes };
  const same = events.filter((each) => isAt(each, place));
  if (!place.inside && same.some((each) => each.station === station)) return [];
  const before = events.filter((each) => isBefore(each, place));
  const after = events.slice(before.length + same.length);
  const rows = [[...before, ...same, event, ...after]];
  if (same.length > 0) rows.push([...before, event, ...same, ...after]);
  return place.inside ? rows : rows.filter((row) => stationsFirst(row));
}

function isBefore(event: RefillEvent, place: Place): boolean {
  if (event.position !== place.position) return event.position < place.position;
  return event.done === 0 && place.inside;
}

/** Whether the rig's own refills come after the stations at each op that is not begun. */
function stationsFirst(events: readonly RefillEvent[]): boolean {
  return events.every((event, k) => {
    const before = events[k - 1];
    if (before === undefined || before.position !== event.position || before.done > 0 || event.done > 0) return true;
    return before.station >= 0 || event.station < 0;
  });
}

/** The events with every change of material at one of them that lies between the old material's last use and the new one's first. */
function withChanges(chain: Chain, events: readonly RefillEvent[]): RefillEvent[] | null {
  const { compartments: C } = chain.model;
  const masks = events.map(() => 0);
  for (let c = 0; c < C; c += 1) {
    for (let from = 0; from < chain.length; from += 1) {
      const material = chain.nextMaterial[from * C + c] as number;
      const before = from === 0 ? chain.firstMaterial(c) : chain.nextMaterial[(from - 1) * C + c];
      if (material < 0 || material === before) continue;
      const chosen = chooseForChange(chain, events, c, from, firstUse(chain, c, from));
      if (chosen < 0) return null;
      masks[chosen] = (masks[chosen] as number) | (1 << c);
    }
  }
  return events.map((event, k) => ({ ...event, changes: masks[k] as number }));
}

function firstUse(chain: Chain, compartment: number, from: number): number {
  const { ops, poursInto } = chain.model;
  const into = poursInto[compartment] as number;
  const c = into < 0 ? compartment : into;
  for (let i = from; i < chain.length; i += 1) {
    const op = chain.op[i] as number;
    for (let draw = ops.drawStart[op] as number; draw < (ops.drawStart[op + 1] as number); draw += 1)
      if (ops.drawCompartment[draw] === c) return i;
  }
  return chain.length - 1;
}

/** The event that changes compartment c: the one that did, else one at water, else the last that can; -1 for none. */
function chooseForChange(chain: Chain, events: readonly RefillEvent[], c: number, from: number, to: number): number {
  const { model } = chain;
  let [chosen, rank] = [-1, -1];
  events.forEach((event, k) => {
    if (event.position < from || event.position > to || (event.position === to && event.done > 0)) return;
    const water =
      event.station >= 0 && model.water >= 0 && (((model.holds[event.station] as number) >> model.water) & 1) === 1;
    const own = ((event.changes >> c) & 1) === 1 ? 2 : water ? 1 : 0;
    if (own >= rank) [chosen, rank] = [k, own];
  });
  return chosen;
}
