import type { Order } from '../../routing/engine/index.ts';
import type { Slots } from './slots.ts';
import type { JobTable } from './tables.ts';

/** Neighbours whose mean distance is a usual drive. */
const USUAL_NEIGHBOURS = 5;

/** Temperatures, as shares of a usual drive between neighbours. */
export const HEAT = { start: 1, end: 0.01 };

/** Where fewer routes than this are in use, one may lose several strings in a step. */
export const FEW_ROUTES = 3;

/** Orders in which jobs are put back. Customers are jobs + 1. */
export function ordersOf(table: JobTable, slots: Slots): readonly Order[] {
  const { problem, jobs, placeOf, places, openMs, closeMs, area } = table;
  const home = problem.rigs[0]?.depot ?? 0;
  const away = Float64Array.from(placeOf, (place) => problem.travelMs[home * places + place] ?? 0);
  const choices = new Float64Array(jobs);
  for (let slot = 0; slot < slots.count; slot += 1) {
    const modes = table.rigs[slots.rigOf[slot] as number]?.modes;
    for (let job = 0; job < jobs; job += 1) {
      if (slots.dayAllowed[job * slots.days + (slots.dayOf[slot] as number)] === 0) continue;
      if ((modes?.[job] ?? 0) > 0) choices[job] = (choices[job] as number) + 1;
    }
  }
  return [
    { weight: 4, key: null },
    { weight: 4, key: (customer) => -(area[customer - 1] as number) },
    { weight: 2, key: (customer) => -(away[customer - 1] as number) },
    { weight: 1, key: (customer) => away[customer - 1] as number },
    { weight: 2, key: (customer) => (closeMs[customer - 1] as number) - (openMs[customer - 1] as number) },
    { weight: 1, key: (customer) => choices[customer - 1] as number },
  ];
}

/** Cost of a usual drive between neighbours: a scale for the temperature. nano-dollars */
export function usualDrive(table: JobTable, near: Int32Array, width: number): number {
  const { problem, jobs, placeOf, places } = table;
  const rig = problem.rigs[0];
  const neighbours = Math.min(USUAL_NEIGHBOURS, width - 1);
  if (rig === undefined || neighbours < 1) return 1;
  let ms = 0;
  let metres = 0;
  for (let job = 0; job < jobs; job += 1) {
    for (let rank = 1; rank <= neighbours; rank += 1) {
      const other = (near[(job + 1) * width + rank] as number) - 1;
      const at = (placeOf[job] as number) * places + (placeOf[other] as number);
      ms += problem.travelMs[at] as number;
      metres += problem.travelM[at] as number;
    }
  }
  return Math.max(1, (ms * rig.costPerMs + metres * rig.costPerM) / (jobs * neighbours));
}
