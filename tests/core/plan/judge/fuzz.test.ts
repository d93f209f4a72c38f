import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { type Plan, planSchema } from '../../../../core/plan/result/index.ts';
import { casesOf } from '../../../support/cases.ts';
import { smallPlan } from './small-plan.ts';
import { smallProblem } from './small-problem.ts';

type Slot = { readonly holder: Record<string, unknown> | unknown[]; readonly key: string | number };

/** Every place of a value that holds something. */
function slotsOf(value: unknown, slots: Slot[] = []): Slot[] {
  if (typeof value !== 'object' || value === null) return slots;
  for (const key of Object.keys(value)) {
    const holder = value as Record<string, unknown>;
    slots.push({ holder, key });
    slotsOf(holder[key], slots);
  }
  return slots;
}

const CASES = casesOf(1500, 60);
const WORDS = [
  '',
  'acre',
  'birch',
  'shop',
  'hydrant',
  'rider/tank',
  'rider/hopper',
  'mix-two',
  'north',
  '__proto__',
  'é"\\',
];
const figure = fc.oneof(
  fc.constantFrom(0, -1, 1e300, -1e300, 1e-300, 9e15, 0.5),
  fc.integer({ min: -10, max: 100_000 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);

/** Changes some of a plan's members: figures, words, flags; drops, doubles and swaps members of lists. */
function mutate(plan: Plan, picks: readonly (readonly [number, number, number, string])[]): unknown {
  const copy = structuredClone(plan);
  for (const [pick, way, number, word] of picks) {
    const slots = slotsOf(copy);
    const slot = slots[pick % slots.length];
    if (slot === undefined) continue;
    const holder = slot.holder as Record<string, unknown>;
    const value = holder[slot.key];
    if (typeof value === 'number') holder[slot.key] = number;
    else if (typeof value === 'string') holder[slot.key] = word;
    else if (typeof value === 'boolean') holder[slot.key] = !value;
    else if (Array.isArray(value)) changeList(value, way, pick);
  }
  return copy;
}

function changeList(list: unknown[], way: number, pick: number): void {
  const at = list.length === 0 ? 0 : pick % list.length;
  if (way % 4 === 0) list.splice(at, 1);
  else if (way % 4 === 1 && list.length > 0) list.splice(at, 0, structuredClone(list[at]));
  else if (way % 4 === 2) list.reverse();
  else list.length = 0;
}

describe('plans from anywhere', () => {
  it('are judged without throwing, and every violation has a place and words', () => {
    const problem = smallProblem();
    let judged = 0;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(5000), fc.nat(3), figure, fc.constantFrom(...WORDS)), { minLength: 1, maxLength: 8 }),
        (picks) => {
          const plan = mutate(smallPlan(), picks);
          if (!v.is(planSchema, plan)) return;
          judged += 1;
          const verdict = judgePlan(problem, plan as Plan);
          expect(verdict.feasible).toBe(verdict.violations.length === 0);
          for (const violation of verdict.violations) {
            expect(violation.where).not.toBe('');
            expect(violation.message).not.toBe('');
          }
        },
      ),
      { numRuns: CASES, seed: 42 },
    );
    // Mutations that no longer follow the schema are not the judge's business; most still do.
    expect(judged).toBeGreaterThan(CASES * 0.45);
  });

  it('of any shape that the schema allows, also empty ones', () => {
    const empty = { ...smallPlan(), days: [], unplaced: [] };
    const verdict = judgePlan(smallProblem(), empty);
    expect(verdict.violations.filter((each) => each.code === 'task-missing')).toHaveLength(5);
    const idle = { ...smallPlan(), days: smallPlan().days.map((day) => ({ ...day, activities: [], stops: [] })) };
    expect(judgePlan(smallProblem(), idle).feasible).toBe(false);
  });
});
