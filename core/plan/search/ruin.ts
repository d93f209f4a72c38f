import type { Random } from '../../base/index.ts';
import type { JobTable } from './jobs.ts';
import type { State } from './state.ts';
import type { Codes } from './values.ts';

/** Mean number of visits taken out, longest row of neighbours taken out of one route, and how often a row keeps a middle piece. */
const MEAN_REMOVED = 10;
const LONGEST_STRING = 10;
const SPLIT_SHARE = 0.5;
const SPLIT_STOP = 0.99;
/** Rows taken out of the same route where there are few routes. */
const STRINGS_PER_ROUTE = 3;

export type Ruined = { readonly routes: Map<number, Codes>; readonly removed: readonly number[] };

/**
 * Takes rows of neighbouring visits out around a random job: the adjacent string removal of Christiaens and Vanden Berghe, Slack
 * Induction by String Removals for Vehicle Routing Problems, Transportation Science 54(2), 2020. Where fewer than three routes are
 * in use a route may lose several rows.
 */
export function ruin(table: JobTable, state: State, random: Random): Ruined {
  const routes = new Map<number, Codes>();
  const removed: number[] = [];
  const used = state.routes.filter((codes) => codes.length > 0).length;
  const served = table.jobs - state.absent.length;
  if (served === 0) return { routes, removed };
  const longest = Math.min(LONGEST_STRING, Math.max(1, served / used));
  const most = (4 * MEAN_REMOVED) / (1 + longest) - 1;
  const strings = Math.max(1, Math.floor(1 + random.unit() * most));
  const perRoute = used < STRINGS_PER_ROUTE ? STRINGS_PER_ROUTE : 1;
  const taken = new Map<number, number>();
  const where = slotOfJob(table, state);
  const seed = random.below(table.jobs);
  let cut = 0;
  for (let k = 0; k < table.jobs && cut < strings; k += 1) {
    const job = table.near[seed * table.jobs + k] as number;
    const slot = where[job] as number;
    const before = taken.get(slot) ?? 0;
    if (slot < 0 || before >= perRoute || removed.includes(job)) continue;
    const codes = routes.get(slot) ?? state.routes[slot] ?? [];
    const length = Math.floor(1 + random.unit() * Math.min(codes.length, longest));
    routes.set(slot, cutString(table, codes, job, Math.min(length, codes.length), random, removed));
    taken.set(slot, before + 1);
    cut += 1;
  }
  return { routes, removed };
}

function slotOfJob(table: JobTable, state: State): Int32Array {
  const where = new Int32Array(table.jobs).fill(-1);
  state.routes.forEach((codes, slot) => {
    for (const code of codes) where[Math.trunc(code / table.width)] = slot;
  });
  return where;
}

/** Takes out a row of `length` visits that holds the job; half of the rows spare a piece in their middle. */
function cutString(
  table: JobTable,
  codes: Codes,
  job: number,
  length: number,
  random: Random,
  removed: number[],
): Codes {
  const at = codes.findIndex((code) => Math.trunc(code / table.width) === job);
  let spared = 0;
  if (length > 1 && random.unit() < SPLIT_SHARE) {
    spared = 1;
    while (length + spared < codes.length && random.unit() > SPLIT_STOP) spared += 1;
    if (length + spared > codes.length) spared = 0;
  }
  const span = length + spared;
  const first = Math.max(0, at - span + 1);
  const last = Math.min(at, codes.length - span);
  const start = first + random.below(last - first + 1);
  const hole = spared === 0 ? -1 : start + 1 + random.below(Math.max(1, length - 1));
  return codes.filter((code, index) => {
    const inside = index >= start && index < start + span && !(hole >= 0 && index >= hole && index < hole + spared);
    if (inside) removed.push(Math.trunc(code / table.width));
    return !inside;
  });
}
