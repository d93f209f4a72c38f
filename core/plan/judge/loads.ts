import type { PlanDay } from '../result/index.ts';
import { type Figure, reportFigures } from './compare.ts';
import type { DayState } from './day-state.ts';
import { compartmentOf } from './lookup.ts';
import { AMOUNT_SLACK, GROUND_SLACK_SQ_FT } from './tolerance.ts';

/** One fill of a compartment as it happened: what went in, the ground treated out of it, what was left at the next fill. */
export type SeenLoad = {
  readonly compartment: number;
  readonly material: number;
  readonly fillPointId: string;
  readonly fromBags: boolean;
  readonly parts: number;
  /** What the first load of a material fills below the reach of the pump besides. */
  readonly sumpParts: number;
  coversSqFt: number;
  leftParts: number;
};

/** Opens a load; what the one before it left stays with that one. Bags put on a machine are stock, and begin none. */
export function openLoad(
  state: DayState,
  compartment: number,
  material: number,
  parts: number,
  from: string,
  fromBags: boolean,
): void {
  const vessel = state.rig.compartments[compartment];
  if (vessel?.pours !== undefined) return;
  closeLoad(state, compartment);
  const sumpParts = state.sumps.get(compartment) === material ? 0 : (vessel?.sumpParts ?? 0);
  state.sumps.set(compartment, material);
  const load = { compartment, material, fillPointId: from, fromBags, parts, sumpParts, coversSqFt: 0, leftParts: 0 };
  state.loads.push(load);
  state.openLoads.set(compartment, load);
}

/** Notes what is left of a compartment's load now. */
export function closeLoad(state: DayState, compartment: number): void {
  const load = state.openLoads.get(compartment);
  if (load !== undefined) load.leftParts = state.vessels.levels[compartment] ?? 0;
  state.openLoads.delete(compartment);
}

/** A rinse takes what is below the reach of the pump out as well. */
export function drainSump(state: DayState, compartment: number): void {
  state.sumps.delete(compartment);
}

export function coverWithLoad(state: DayState, compartment: number, areaSqFt: number): void {
  const load = state.openLoads.get(compartment);
  if (load !== undefined) load.coversSqFt += areaSqFt;
}

/** Holds the load tickets and the left-overs of a day against what happened. */
export function checkLoads(state: DayState, plan: PlanDay): void {
  for (const compartment of [...state.openLoads.keys()]) closeLoad(state, compartment);
  const count = { name: 'number of loads', stated: plan.loads.length, found: state.loads.length, slack: 0 };
  reportFigures(state.ledger, state.label, [count]);
  plan.loads.forEach((load, index) => {
    const seen = state.loads[index];
    const where = `${state.label}, load ${index + 1}`;
    if (seen === undefined) return;
    const materialId = state.lookup.problem.materials[seen.material]?.id;
    if (
      compartmentOf(state.rig, load.compartmentId) !== seen.compartment ||
      load.materialId !== materialId ||
      load.fillPointId !== seen.fillPointId ||
      load.fromBags !== seen.fromBags
    ) {
      state.ledger.add('figure-differs', where, 'names another compartment, material or fill point than the refill');
      return;
    }
    reportFigures(state.ledger, where, loadFigures(state, load, seen));
  });
  checkLeftOver(state, plan);
}

function loadFigures(state: DayState, load: PlanDay['loads'][number], seen: SeenLoad): readonly Figure[] {
  const tank = state.rig.compartments[seen.compartment]?.kind === 'tank';
  const [amount, left] = tank ? [load.volumeGal, load.leftGal] : [load.weightLb, load.leftLb];
  return [
    { name: 'amount', stated: amount, found: seen.parts / 100, slack: AMOUNT_SLACK },
    { name: 'sumpGal', stated: load.sumpGal, found: seen.sumpParts / 100, slack: AMOUNT_SLACK },
    { name: 'coversSqFt', stated: load.coversSqFt, found: seen.coversSqFt, slack: GROUND_SLACK_SQ_FT },
    { name: 'left', stated: left, found: seen.leftParts / 100, slack: AMOUNT_SLACK },
  ];
}

function checkLeftOver(state: DayState, plan: PlanDay): void {
  state.rig.compartments.forEach((vessel, index) => {
    const stated = plan.leftOver.filter((each) => each.compartmentId === vessel.id);
    const amount = stated.reduce((sum, each) => sum + (vessel.kind === 'tank' ? each.volumeGal : each.weightLb), 0);
    reportFigures(state.ledger, state.label, [
      {
        name: `left over in ${vessel.id}`,
        stated: amount,
        found: (state.vessels.levels[index] ?? 0) / 100,
        slack: AMOUNT_SLACK,
      },
    ]);
  });
}
