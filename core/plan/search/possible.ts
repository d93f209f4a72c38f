import type { Slots } from './slots.ts';
import type { LaidStart } from './start.ts';
import type { RouteValues } from './values.ts';

/**
 * Jobs that some rig can do alone on a day that has nothing else, by rule or by the labels of the refills, and those of a plan to begin
 * with. The others are not worth a search: it would only try in vain to make room for them.
 */
export function possibleJobs(values: RouteValues, slots: Slots, { routes }: LaidStart): readonly number[] {
  const begun = new Set(routes.flatMap((each) => each.customers.map((customer) => customer - 1)));
  const jobs = [...values.table.problem.jobs.keys()];
  return jobs.filter((job) => begun.has(job) || canBeAlone(values, slots, job));
}

function canBeAlone(values: RouteValues, slots: Slots, job: number): boolean {
  const slotOfRig = new Map<number, number>();
  for (let slot = 0; slot < slots.count; slot += 1) {
    const rig = slots.rigOf[slot] as number;
    if (slots.dayAllowed[job * slots.days + (slots.dayOf[slot] as number)] === 1 && !slotOfRig.has(rig)) {
      slotOfRig.set(rig, slot);
    }
  }
  const { rigs, width } = values.table;
  const ways = [...slotOfRig].flatMap(([rig, slot]) =>
    Array.from({ length: rigs[rig]?.modes[job] ?? 0 }, (_, mode) => ({ slot, code: job * width + mode })),
  );
  return (
    ways.some(({ slot, code }) => Number.isFinite(values.reckon(slot, [code]))) ||
    ways.some(({ slot, code }) => Number.isFinite(values.labelled(slot, [code])))
  );
}
