import type { Random } from '../../base/index.ts';
import type { JobTable } from './jobs.ts';
import type { RouteScreen } from './screen.ts';
import type { Codes, RouteValues } from './values.ts';

/** Share of positions that is passed over at random, so that the same ruin does not always heal in the same way. */
const BLINK = 0.01;
/** Orders in which absent jobs are put back, with their weights. */
const ORDERS = [
  { name: 'random', weight: 4 },
  { name: 'large', weight: 4 },
  { name: 'far', weight: 2 },
  { name: 'near', weight: 1 },
  { name: 'narrow-window', weight: 2 },
  { name: 'few-rigs', weight: 1 },
] as const;
type OrderName = (typeof ORDERS)[number]['name'];

export type Place = { readonly slot: number; readonly at: number; readonly code: number; readonly cost: number };

/** Rows of slots and modes in which each job may be done. */
export type Choices = readonly (readonly { readonly slot: number; readonly codes: readonly number[] }[])[];

export function choicesOf(table: JobTable): Choices {
  const { problem, width } = table;
  return problem.jobs.map((job, j) =>
    problem.slots.flatMap(({ rig, day }, slot) => {
      const modes = job.modes[rig] ?? [];
      if (modes.length === 0 || job.dayAllowed[day] !== 1) return [];
      return [{ slot, codes: modes.map((_, mode) => j * width + mode) }];
    }),
  );
}

/** Puts jobs into an order for being put back. */
export function orderJobs(
  table: JobTable,
  choices: Choices,
  jobs: readonly number[],
  random: Random,
): readonly number[] {
  const name = pickOrder(random);
  const key = jobs.map((job) => keyOf(table, choices, job, name, random));
  return jobs
    .map((_, index) => index)
    .sort((left, right) => (key[left] as number) - (key[right] as number))
    .map((index) => jobs[index] as number);
}

function pickOrder(random: Random): OrderName {
  let throwOf = random.below(ORDERS.reduce((sum, each) => sum + each.weight, 0));
  for (const { name, weight } of ORDERS) {
    throwOf -= weight;
    if (throwOf < 0) return name;
  }
  return 'random';
}

function keyOf(table: JobTable, choices: Choices, job: number, name: OrderName, random: Random): number {
  const home = table.problem.stations[table.problem.rigs[0]?.home ?? 0]?.place ?? 0;
  const away = table.problem.travelMs[home * table.places + (table.placeOf[job] as number)] as number;
  switch (name) {
    case 'random':
      return random.unit();
    case 'large':
      return -(table.area[job] as number);
    case 'far':
      return -away;
    case 'near':
      return away;
    case 'narrow-window':
      return (table.closeMs[job] as number) - (table.openMs[job] as number);
    case 'few-rigs':
      return choices[job]?.length ?? 0;
  }
}

/** The roughly cheapest place for a job over all its slots, modes and positions; null where it fits nowhere. */
export function roughPlace(
  screens: readonly RouteScreen[],
  choices: Choices,
  job: number,
  random: Random,
): Place | null {
  let best: Place | null = null;
  for (const { slot, codes } of choices[job] ?? []) {
    const screen = screens[slot] as RouteScreen;
    for (const code of codes) {
      for (let at = 0; at <= screen.codes.length; at += 1) {
        if (random.unit() < BLINK) continue;
        const cost = screen.insertion(code, at);
        if (cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { slot, at, code, cost };
      }
    }
  }
  return best;
}

/** The cheapest place for a job with every position reckoned in full; for small problems. */
export function exactPlace(
  values: RouteValues,
  routes: readonly Codes[],
  choices: Choices,
  job: number,
  random: Random,
): Place | null {
  let best: Place | null = null;
  for (const { slot, codes } of choices[job] ?? []) {
    const route = routes[slot] as Codes;
    const before = values.reckon(slot, route);
    for (const code of codes) {
      for (let at = 0; at <= route.length; at += 1) {
        if (random.unit() < BLINK) continue;
        const cost = values.reckon(slot, route.toSpliced(at, 0, code)) - before;
        if (cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { slot, at, code, cost };
      }
    }
  }
  return best;
}
