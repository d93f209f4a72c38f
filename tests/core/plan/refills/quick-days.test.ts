import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { RefillPlacer, type Visit } from '../../../../core/plan/refills/index.ts';
import { FAMILIES, type Family, shuffledVisits } from '../oracle/families.ts';
import { randomProblem } from '../random-problem.ts';
import { relabelled } from './relabel.ts';
import { replay } from './replay.ts';

/** What brute force has found for the same days; ../oracle/refills.test.ts holds the list against it. */
const proved = JSON.parse(readFileSync(new URL('../oracle/proved-costs.json', import.meta.url), 'utf8')) as Record<
  string,
  readonly (number | null)[]
>;

/** Seeds of days with refills that are placed in a few milliseconds, so that each change of the sources can be held against them. */
const QUICK: Readonly<Record<string, readonly number[]>> = {
  thirsty: [3, 12, 20, 22, 27, 29, 33, 37],
  'dry and wet': [5, 6, 8, 10, 18, 26, 28, 29],
  'uneven flow': [2, 4, 9, 11, 12, 13, 21, 25],
  windows: [5, 21, 32, 36, 40],
  'hours of treating': [6, 8, 18, 24, 26, 34, 37],
  'a break passed by': [339],
  'two persons': [3, 7, 13, 14, 15, 17, 29, 44],
  'two persons, thirsty': [8, 12, 13, 29],
  'two persons, windows': [5, 18, 19, 23, 24, 25, 29],
  'ends elsewhere': [3, 6, 8, 13, 17, 18, 29],
  'bags on the machine': [1, 11, 24, 27],
  payload: [15, 21, 23, 28, 29, 32, 33, 35],
};

/** The cost of a day placed with all care; what is decided holds when it is played again. */
function costOf(problem: Problem, visits: readonly Visit[]): number {
  const placement = new RefillPlacer(problem).place(0, visits, 'careful');
  if (placement.kind === 'impossible') return Number.POSITIVE_INFINITY;
  expect(replay(problem, placement.outcome)).toEqual([]);
  return placement.outcome.cost;
}

function provedCost({ name, seeds: [first] }: Family, seed: number): number {
  return proved[name]?.[seed - first] ?? Number.POSITIVE_INFINITY;
}

describe.each(FAMILIES)('quick days of $name', (family) => {
  it.each(QUICK[family.name] ?? [])('cost what brute force has found, seed %i', (seed) => {
    const problem = randomProblem(seed, family.shape);
    expect(Math.abs(costOf(problem, shuffledVisits(problem, seed)) - provedCost(family, seed))).toBeLessThan(1);
  });

  it.each(QUICK[family.name] ?? [])('cost the same with other numbers, seed %i', (seed) => {
    const plain = randomProblem(seed, family.shape);
    expect(Math.abs(costOf(relabelled(plain), shuffledVisits(plain, seed)) - provedCost(family, seed))).toBeLessThan(1);
  });
});
