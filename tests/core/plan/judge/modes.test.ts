import { describe, expect, it } from 'vitest';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import type { Job, Mode, Op, Problem } from '../../../../core/plan/problem/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import type { Draft } from './breakers.ts';
import { smallPlan } from './small-plan.ts';
import { smallProblem } from './small-problem.ts';

const [ACRE, BIRCH] = [0, 1];
const SECOND = 1000;

function ops(change: (op: Op) => Partial<Op>): (mode: Mode) => Mode {
  return (mode) => ({ ...mode, ops: mode.ops.map((op) => ({ ...op, ...change(op) })) });
}

function draws(parts: number): (mode: Mode) => Mode {
  return ops((op) => ({ draws: op.draws.map((draw) => ({ ...draw, parts: draw.parts + parts })) }));
}

/** Modes that the plan made by hand does not follow, although it could be taken for it. */
const OTHERS: readonly (readonly [string, (mode: Mode) => Mode])[] = [
  ['draws a gallon more', draws(100)],
  ['draws a gallon less', draws(-100)],
  ['draws on the hopper as well', ops((op) => ({ draws: [...op.draws, { compartment: 1, parts: 300 }] }))],
  ['draws nothing', ops(() => ({ draws: [] }))],
  ['takes longer', ops((op) => ({ serviceMs: op.serviceMs + 60 * SECOND }))],
  ['takes longer to set up', (mode) => ({ ...mode, beforeMs: mode.beforeMs + SECOND, afterMs: mode.afterMs - SECOND })],
  [
    'takes longer to pack up',
    (mode) => ({ ...mode, afterMs: mode.afterMs + SECOND, beforeMs: mode.beforeMs - SECOND }),
  ],
  ['uses another head', ops(() => ({ method: { kind: 'machine', machineId: 'rider', headId: 'other' } }))],
  ['goes on foot', ops(() => ({ method: { kind: 'hand', handMethodId: 'hose' } }))],
  [
    'does it the other way round',
    (mode) => ({ ...mode, ops: [...mode.ops].reverse().slice(0, 1).concat(mode.ops.slice(0, -1)), beforeMs: 1e9 }),
  ],
];

function withModes(problem: Problem, job: number, modes: (mode: Mode) => readonly Mode[]): Problem {
  const changed = (each: Job): Job => ({ ...each, modes: [modes(each.modes[0]?.[0] as Mode), []] });
  return { ...problem, jobs: problem.jobs.map((each, index) => (index === job ? changed(each) : each)) };
}

describe.each(OTHERS)('a mode that %s', (_, other) => {
  it.each([
    ['before the right one', (mode: Mode) => [other(mode), mode]],
    ['after it', (mode: Mode) => [mode, other(mode)]],
  ])('is not taken for it, %s', (__, modes) => {
    for (const job of [ACRE, BIRCH])
      expect(judgePlan(withModes(smallProblem(), job, modes), smallPlan()).violations).toEqual([]);
  });
});

it('of two modes the one that leaves less undone is meant', () => {
  const extra = (mode: Mode): Mode => ({
    ...mode,
    ops: [...mode.ops, { ...(mode.ops[0] as Op), task: 4, method: { kind: 'hand', handMethodId: 'hose' } }],
    beforeMs: mode.beforeMs + 5 * SECOND,
  });
  // It would take longer to set up, and both would be as good a reading of the treats.
  for (const modes of [(mode: Mode) => [extra(mode), mode], (mode: Mode) => [mode, extra(mode)]])
    expect(judgePlan(withModes(smallProblem(), BIRCH, modes), smallPlan()).violations).toEqual([]);
});

it('of two jobs at one property the one whose tasks are done is meant, and only that one is late', () => {
  const small = smallProblem();
  const birch = small.jobs[BIRCH] as Job;
  const other: Job = {
    ...birch,
    tasks: [4],
    modes: [[{ beforeMs: 0, afterMs: 0, ops: [{ ...(birch.modes[0]?.[0]?.ops[0] as Op), task: 4 }] }], []],
    lateCost: Float64Array.of(7e9, 0),
    dayAllowed: Uint8Array.of(0, 0),
  };
  for (const jobs of [
    [other, ...small.jobs],
    [...small.jobs, other],
  ])
    expect(judgePlan({ ...small, jobs }, smallPlan()).violations).toEqual([]);
});

it('a visit that follows no mode is set up and packed up for as long as the shortest of them asks', () => {
  const plan = structuredClone(smallPlan()) as Draft<Plan>;
  for (const each of plan.days[0]?.activities ?? [])
    if (each.kind === 'treat' && each.propertyId === 'birch') each.method = { kind: 'hand', handMethodId: 'hose' };
  const said = (modes: (mode: Mode) => readonly Mode[]): readonly string[] =>
    judgePlan(withModes(smallProblem(), BIRCH, modes), plan as Plan).violations.map((each) => each.message);
  const longer = (mode: Mode): Mode => ({
    ...mode,
    beforeMs: mode.beforeMs + 10 * SECOND,
    afterMs: mode.afterMs + 10 * SECOND,
  });
  const right = said((mode) => [mode]);
  expect(right.length).toBeGreaterThan(0);
  expect(said((mode) => [longer(mode), mode])).toEqual(right);
  expect(said((mode) => [mode, longer(mode)])).toEqual(right);
  expect(said((mode) => [longer(mode)]).length).toBe(right.length + 2);
});
