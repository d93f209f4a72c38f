import { describe, expect, test } from 'vitest';
import type { Book, HandMethod, Round } from '../../../../core/book/index.ts';
import { type Mode, type Problem, visitMs } from '../../../../core/plan/problem/index.ts';
import { type StrandOp, secondMethods } from '../../../../core/plan/problem/strands.ts';
import { problemOf, sampleBook } from '../../../support/samples.ts';

const residential = sampleBook('residential-day');

const hose = (zoneId: string, rank = 6): StrandOp => ({ zoneId, rank, handMethodId: 'hose', mayRunBeside: true });
const spreader = (zoneId: string, rank = 4): StrandOp => ({ ...hose(zoneId, rank), handMethodId: 'spreader' });
const ride = (zoneId: string, rank = 6): StrandOp => ({ zoneId, rank, handMethodId: '', mayRunBeside: false });

describe('the hand methods of the second person', () => {
  test.each<[string, readonly StrandOp[], readonly string[]]>([
    ['another zone than the machine', [ride('front'), hose('back')], ['hose']],
    ['the same zone with work of the same rank', [ride('front'), hose('front')], ['hose']],
    ['hand trim of what a machine leaves comes after it', [ride('front'), { ...hose('front'), trims: true }], []],
    ['the same zone, but what the machine spreads comes first', [ride('front', 4), hose('front')], []],
    ['the same zone, but the machine has to wait for it', [ride('front'), spreader('front')], []],
    ['one of two zones has to wait: not half a method', [ride('front', 4), hose('front'), hose('back')], []],
    ['nobody rides', [hose('back'), spreader('back')], []],
    ['a method that may not run beside', [ride('front'), { ...hose('back'), mayRunBeside: false }], []],
    [
      'both methods on a zone of their own, in order',
      [ride('front'), spreader('back'), hose('back')],
      ['spreader', 'hose'],
    ],
    // The hose waits for the machine at the front, so it is the first person's, and then the spreader waits for it at the back.
    [
      'what waits for the first person by way of another method',
      [ride('front', 4), hose('front'), spreader('back'), hose('back')],
      [],
    ],
  ])('%s', (_, ops, expected) => {
    expect([...secondMethods(ops)].sort()).toEqual([...expected].sort());
  });
});

function withCrew(crew: number, hand: Partial<HandMethod> = {}): Problem {
  const book: Book = {
    ...residential,
    rigs: residential.rigs.map((rig) => ({ ...rig, crew })),
    handMethods: residential.handMethods.map((each) => ({ ...each, ...hand })),
  };
  return problemOf(book);
}

const modesOf = (problem: Problem): readonly Mode[] => problem.jobs.flatMap((job) => job.modes.flat());
const isShared = (mode: Mode): boolean => mode.ops.some((op) => op.second);
const quickest = (problem: Problem): number[] =>
  problem.jobs.map((job) => Math.min(...job.modes.flat().map((mode) => visitMs(mode))));

describe('a crew of two', () => {
  const one = withCrew(1);
  const two = withCrew(2);

  test('one person does one thing after the other', () => {
    expect(modesOf(one).filter(isShared)).toEqual([]);
    for (const mode of modesOf(one))
      expect(visitMs(mode)).toBe(mode.beforeMs + mode.afterMs + mode.ops.reduce((sum, op) => sum + op.serviceMs, 0));
  });

  test('two share stops out, none of which takes longer than with one', () => {
    const shared = modesOf(two).filter(isShared);
    expect(shared.length).toBeGreaterThan(0);
    for (const mode of shared) {
      const strand = (second: boolean): number =>
        mode.ops.filter((op) => op.second === second).reduce((sum, op) => sum + op.serviceMs, 0);
      expect(visitMs(mode) - mode.beforeMs - mode.afterMs).toBe(Math.max(strand(true), strand(false)));
      expect(mode.ops.filter((op) => op.second).every((op) => op.method.kind === 'hand')).toBe(true);
      expect(mode.ops.some((op) => !op.second && op.method.kind === 'machine')).toBe(true);
    }
    const times = quickest(two);
    const before = quickest(one);
    for (const [job, ms] of times.entries()) expect(ms).toBeLessThanOrEqual(before[job] as number);
    expect(times.some((ms, job) => ms < (before[job] as number))).toBe(true);
  });

  test('all work of the one comes before all of the other', () => {
    for (const mode of modesOf(two)) {
      const changes = mode.ops.filter((op, index) => index > 0 && op.second !== mode.ops[index - 1]?.second);
      expect(changes.length).toBeLessThanOrEqual(1);
    }
  });

  test('a method that is not allowed beside the machine, or draws on it, is never the second person’s', () => {
    expect(modesOf(withCrew(2, { besideMachine: false })).filter(isShared)).toEqual([]);
    const machine = residential.machines.find((each) => each.compartments.some((other) => other.kind === 'tank'));
    const tank = machine?.compartments.find((each) => each.kind === 'tank');
    const drawsFrom = { kind: 'machine', machineId: machine?.id ?? '', compartmentId: tank?.id ?? '' } as const;
    expect(modesOf(withCrew(2, { drawsFrom })).filter(isShared)).toEqual([]);
  });
});

describe('the order of work on the same ground', () => {
  const mixed = sampleBook('mixed-day');
  const withOrder = (workOrder: Round['workOrder']): Problem =>
    problemOf({ ...mixed, rounds: mixed.rounds.map((round) => ({ ...round, workOrder })) });
  const kindsOf = (problem: Problem): string[][] =>
    modesOf(problem).map((mode) => [
      ...new Set(mode.ops.map((op) => problem.stocks[problem.materials[op.material]?.stock ?? 0]?.kind ?? '')),
    ]);

  test('is dry before wet unless the round says otherwise', () => {
    expect(kindsOf(withOrder(undefined))).toContainEqual(['dry', 'water']);
    expect(kindsOf(withOrder(undefined))).not.toContainEqual(['water', 'dry']);
    expect(kindsOf(withOrder(['spray']))).toContainEqual(['water', 'dry']);
    expect(kindsOf(withOrder(['spray']))).not.toContainEqual(['dry', 'water']);
  });

  test('ranks follow it', () => {
    const rank = (problem: Problem, treatmentId: string): number | undefined =>
      problem.tasks.find((each) => each.treatmentId === treatmentId)?.rank;
    const [dry, wet] = ['spread', 'spray'].map((kind) => mixed.treatments.find((each) => each.kind === kind)?.id ?? '');
    const usual = withOrder(undefined);
    const turned = withOrder(['spray', 'spread']);
    expect(rank(usual, dry ?? '')).toBeLessThan(rank(usual, wet ?? '') as number);
    expect(rank(turned, dry ?? '')).toBeGreaterThan(rank(turned, wet ?? '') as number);
  });
});
