import type { StopSignal } from '../../base/index.ts';
import type { Choices } from './choices.ts';
import { type State, withRoutes } from './state.ts';
import type { Codes, RouteValues } from './values.ts';

/** Places at which a job that was left out is placed in earnest: the cheapest, and then those of the shortest days, which have room. */
const TRIED_PLACES = 12;
const TRIED_SHORT_DAYS = 8;
/** Of one day: where the best place does not hold, the others of the same day seldom do. */
const TRIED_OF_A_DAY = 3;
/** Such trials for a whole plan at most. */
const MOST_TRIALS = 1000;

type Place = { readonly slot: number; readonly at: number; readonly code: number; readonly added: number };

/**
 * Puts jobs that were left out where they still fit when refills are placed in earnest, which may be better than by rule: the quickest
 * job first, each where it adds the least travel and work.
 */
export function insertLeftOut(state: State, values: RouteValues, choices: Choices, signal: StopSignal): State {
  let current = state;
  let trials = 0;
  const quickest = [...state.absent].sort((left, right) => leastMs(choices, left) - leastMs(choices, right));
  for (const job of quickest) {
    for (const { slot, at, code } of placesFor(current, choices, job)) {
      if (trials >= MOST_TRIALS || signal.stopped()) return current;
      trials += 1;
      const codes = (current.routes[slot] as Codes).toSpliced(at, 0, code);
      const cost = values.prove(slot, codes);
      if (!Number.isFinite(cost)) continue;
      const { paidMs } = values;
      const absent = current.absent.filter((each) => each !== job);
      current = withRoutes(choices.table.problem, current, new Map([[slot, { codes, cost, paidMs }]]), absent);
      break;
    }
  }
  return current;
}

function leastMs({ table }: Choices, job: number): number {
  return table.rigs.reduce((least, rig) => Math.min(least, rig.leastVisitMs[job] as number), Number.POSITIVE_INFINITY);
}

/** The likeliest places, a few of each day: those where it would still be long enough without any refill, least cost first. */
function placesFor(state: State, choices: Choices, job: number): readonly Place[] {
  const { table, slots } = choices;
  const places: Place[] = [];
  const emptyKinds = new Set<number>();
  for (const [slot, codes] of state.routes.entries()) {
    const modes = choices.modes(job, slot);
    if (modes === 0) continue;
    const kind = slots.kindOf[slot] as number;
    if (codes.length === 0 && emptyKinds.has(kind)) continue;
    if (codes.length === 0) emptyKinds.add(kind);
    const rig = table.rigs[slots.rigOf[slot] as number];
    if (rig === undefined) continue;
    const ofDay: Place[] = [];
    for (let at = choices.kept[slot] as number; at <= codes.length; at += 1) {
      for (let mode = 0; mode < modes; mode += 1) {
        const code = job * table.width + mode;
        const row = codes.toSpliced(at, 0, code);
        if (!choices.hasTime(slot, row)) continue;
        const work = (rig.visitMs[code] as number) * rig.rig.costPerMs;
        ofDay.push({ slot, at, code, added: choices.travelAdded(slot, codes, at, [code]) + work });
      }
    }
    places.push(...ofDay.sort(cheapestFirst).slice(0, TRIED_OF_A_DAY));
  }
  places.sort(cheapestFirst);
  const lengthOf = ({ slot }: Place): number => state.lengths[slot] as number;
  const roomiest = places.slice(TRIED_PLACES).sort((left, right) => lengthOf(left) - lengthOf(right));
  return [...places.slice(0, TRIED_PLACES), ...roomiest.slice(0, TRIED_SHORT_DAYS)];
}

function cheapestFirst(left: Place, right: Place): number {
  return left.added - right.added;
}
