import type { PlanActivity } from '../result/index.ts';
import type { DayState } from './day-state.ts';
import { openLoad } from './loads.ts';
import { compartmentOf } from './lookup.ts';
import { needTime } from './need-time.ts';
import { standingAt } from './standing.ts';
import { amountWords, GROUND_SLACK_SQ_FT, LEVEL_SLACK_PARTS, msOf } from './tolerance.ts';
import { pourIn, type ReadFill, readFills } from './vessels.ts';

type Pour = Extract<PlanActivity, { kind: 'pour' }>;

/** Plays the pouring of bags that ride on a machine: at a stop, out of the bags beside this hopper, for long enough. */
export function pour(state: DayState, activity: Pour, index: number, where: string): void {
  const { ledger, rig, vessels } = state;
  const standing = standingAt(state, index);
  const fills = readFills(state, activity.fills, where);
  const from = compartmentOf(rig, activity.fromCompartmentId);
  const pours = rig.compartments[from]?.pours;
  state.sums.refillMs += msOf(activity.endSec) - msOf(activity.startSec);
  if (state.place !== state.visit?.place)
    ledger.add('time-not-possible', where, 'bags are poured where no work is done');
  if (standing.nextOp !== null && Math.abs(activity.afterSqFt - standing.doneUnits) > GROUND_SLACK_SQ_FT) {
    ledger.add('figure-differs', where, `after ${activity.afterSqFt} ft² stated, ${standing.doneUnits} ft² are done`);
  }
  if (pours === undefined) {
    ledger.add('level-below-empty', where, `the rig has no bags "${activity.fromCompartmentId}" on a machine`);
    return;
  }
  for (const fill of fills) {
    if (fill.compartment !== pours.into) {
      const vessel = rig.compartments[fill.compartment]?.id ?? '';
      ledger.add('mixed-materials', where, `${activity.fromCompartmentId} cannot be poured into ${vessel}`);
    }
    takeOut(state, from, fill, where);
    openLoad(state, fill.compartment, fill.material, fill.parts, '', true);
    pourIn(state, fill, where);
  }
  const parts = fills.reduce((sum, fill) => sum + Math.max(0, fill.parts), 0);
  needTime(state, activity, parts * pours.msPerPart, where);
  if ((vessels.levels[from] ?? 0) <= LEVEL_SLACK_PARTS) vessels.levels[from] = 0;
}

function takeOut({ vessels, ledger, rig }: DayState, from: number, fill: ReadFill, where: string): void {
  const held = vessels.materials[from] ?? -1;
  const name = rig.compartments[from]?.id ?? '';
  if (held >= 0 && held !== fill.material) ledger.add('mixed-materials', where, `${name} hold another material`);
  const level = (vessels.levels[from] ?? 0) - fill.parts;
  vessels.levels[from] = Math.max(0, level);
  if (level < -LEVEL_SLACK_PARTS) {
    ledger.add('level-below-empty', where, `${name} are short by ${amountWords(-level)} lb`);
  }
}

/** Bags beside a hopper hold what it holds; asked after everything that fills one of the two. */
export function checkBags({ vessels, ledger, rig }: DayState, where: string): void {
  rig.compartments.forEach(({ id, pours }, index) => {
    if (pours === undefined || (vessels.levels[index] ?? 0) <= LEVEL_SLACK_PARTS) return;
    const inHopper = vessels.materials[pours.into] ?? -1;
    if (inHopper < 0 || inHopper === vessels.materials[index]) return;
    ledger.add('mixed-materials', where, `${id} are of another product than the hopper that they go into`);
  });
}
