import { expect, it } from 'vitest';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { smallPlan } from './small-plan.ts';
import { smallProblem } from './small-problem.ts';

/** Figures that no rule is about (docs/methods/planning.md, part 11), or that are not read where they stand, such as gallons of a hopper. */
const FREE: readonly RegExp[] = [
  /^(version|seed|iterations)$/,
  /^totals\.waterGal$/,
  /^days\.0\.(carryWeightLb|payloadLb)$/,
  /^days\.0\.stops\.\d+\.(driveSec|distanceM)$/,
  // The problem holds the time, and not the efficiency that it comes from.
  /\.reckoned\.fieldEfficiency$/,
  /^days\.0\.loads\.\d+\.(number|startSec|beforeGal|beforeLb)$/,
  /^days\.0\.activities\.\d+\.rinseGal$/,
  /^days\.0\.activities\.0\.stock\.\d+\.(bags|weightLb)$/,
];
type Slot = { readonly path: string; readonly holder: Record<string, unknown>; readonly key: string };

function figuresOf(value: unknown, path: string, found: Slot[]): Slot[] {
  if (typeof value !== 'object' || value === null) return found;
  const holder = value as Record<string, unknown>;
  for (const key of Object.keys(holder)) {
    const at = path === '' ? key : `${path}.${key}`;
    if (typeof holder[key] === 'number') found.push({ path: at, holder, key });
    else figuresOf(holder[key], at, found);
  }
  return found;
}

/** Whether the judge minds the small plan with its figure number `which` moved by `by`. */
function minds(which: number, by: number): boolean {
  const plan = structuredClone(smallPlan());
  const slot = figuresOf(plan, '', [])[which];
  if (slot === undefined) throw new RangeError('no such figure');
  slot.holder[slot.key] = (slot.holder[slot.key] as number) + by;
  return !judgePlan(smallProblem(), plan).feasible;
}

/** Whether nothing can be minded about a figure: no rule is about it, or it is the gallons of a hopper or the pounds of a tank. */
function isFree(path: string, holder: Record<string, unknown>, key: string, by: number): boolean {
  // The nurse tank leaves home with more than it gives.
  if (path === 'days.0.activities.0.stock.0.volumeGal') return by < 0;
  if (key === 'step') return holder.kind === 'swap-head' || holder.kind === 'refill';
  if (FREE.some((each) => each.test(path))) return true;
  if (key === 'sumpGal' || !/\.(fills|draws|loads)\.\d+\.\w+(Gal|Lb)$/.test(path)) return false;
  return key.endsWith('Gal') !== String(holder.compartmentId).endsWith('tank');
}

it('a figure that is off by one is noticed, wherever a rule is about it', () => {
  const wrong: string[] = [];
  figuresOf(smallPlan(), '', []).forEach(({ path, holder, key }, which) => {
    for (const by of [1, -1]) if (minds(which, by) === isFree(path, holder, key, by)) wrong.push(`${path} ${by}`);
  });
  expect(wrong).toEqual([]);
});

it('a figure that is off by less than its last decimal is not', () => {
  const wrong = figuresOf(smallPlan(), '', []).flatMap(({ path }, which) =>
    minds(which, 0.000_01) &&
    !/(days|stops|refills|loads|unplaced|fillPointVisits|number|step|person|worstRate|swaths|trimPasses)$/.test(path)
      ? [path]
      : [],
  );
  expect(wrong).toEqual([]);
});
