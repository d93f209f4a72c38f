import { expect, it } from 'vitest';
import type { Problem } from '../../../../core/plan/problem/index.ts';
import { COST, DONE, TIME } from '../../../../core/plan/refills/labels.ts';
import { Outlook } from '../../../../core/plan/refills/outlook.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';
import { LEG_M, smallProblem } from '../judge/small-problem.ts';

const [ACRE_SEED, ACRE_SPRAY, BIRCH, CEDAR] = [0, 1, 2, 3];
const SEC = 1000;
/** The quickest event of any kind: a refill from the rig, or a visit to the hydrant. */
const EVENT_MS = 240 * SEC;

function outlookOf(change: (problem: Problem) => Problem = (problem) => problem) {
  const search = new RefillSearch(change(smallProblem()), 0);
  const { model, chain, labels, steps } = search;
  chain.load([0, 1, 2], [0, 0, 0], 3);
  return { outlook: new Outlook(model, chain, labels), at: labels.first(chain, 0, 0), chain, labels, steps };
}

it('what is missing is filled in as few events as the vessels allow', () => {
  const { outlook, at, chain, steps, labels } = outlookOf();
  // Of 5,100 parts 2,000 are in the tank. Mix one needs 4,500: two more tanks full; then one of the other mix.
  const before = 3100 * 30 + 3 * EVENT_MS;
  expect(outlook.restMs(at, ACRE_SEED, ACRE_SEED)).toBe((chain.leastMs[0] as number) + before);
  steps.work(at, ACRE_SEED, 1000);
  // Inside an op only its time is counted, and the refills after it are not.
  expect(outlook.restMs(at, ACRE_SEED, ACRE_SEED)).toBe((chain.leastMs[0] as number) - 300 * SEC);
  steps.work(at, ACRE_SEED, 4000);
  labels.data[at + DONE] = 0;
  expect(outlook.restMs(at, ACRE_SPRAY, ACRE_SEED)).toBe((chain.leastMs[1] as number) + before);
  steps.work(at, ACRE_SPRAY, 3000);
  // The head was swapped before the first foot.
  const half = (chain.leastMs[1] as number) - 900 * SEC - 300 * SEC;
  expect(outlook.restMs(at, ACRE_SPRAY, ACRE_SPRAY)).toBe(half);
  steps.work(at, ACRE_SPRAY, 6000);
  labels.data[at + DONE] = 0;
  // 200 parts are left of the tank, and free; 2,700 are needed: still two.
  const after = (3300 - 200) * 30 + 3 * EVENT_MS;
  expect(outlook.restMs(at, BIRCH, ACRE_SPRAY)).toBe(
    (chain.leastMs[1] as number) - (chain.workMs[1] as number) + after,
  );
  steps.refillFromRig(at, BIRCH, 0);
  // Full again, but nothing in it is free: the 200 parts from home are.
  expect(outlook.restMs(at, BIRCH, BIRCH)).toBe((chain.leastMs[2] as number) + after - EVENT_MS);
  steps.refillFromRig(at, CEDAR, 1);
  expect(outlook.restMs(at, CEDAR, CEDAR)).toBe((chain.leastMs[3] as number) + 600 * 30);
});

it('bags beside a hopper are filled with it', () => {
  const { outlook, at, chain } = outlookOf((small) => {
    const bags = {
      id: 'bags',
      kind: 'dry' as const,
      capacityParts: 500,
      fillMsPerPart: 0,
      pours: { into: 1, msPerPart: 4 },
    };
    const rigs = small.rigs.map((rig) => ({
      ...rig,
      compartments: [...rig.compartments.map((each, c) => (c === 1 ? { ...each, capacityParts: 1000 } : each)), bags],
    }));
    return { ...small, rigs };
  });
  // 4,000 parts of seed, 1,000 in the hopper and 500 beside it: two more times both, and 3,000 filled or poured.
  const tank = 3100 * 30 + 3 * EVENT_MS;
  expect(outlook.restMs(at, ACRE_SEED, ACRE_SEED)).toBe((chain.leastMs[0] as number) + tank + 3000 * 2);
});

it('a wait lies ahead until an op is through', () => {
  const opens = 20 * 3600 * SEC;
  const { outlook, chain } = outlookOf((small) => ({
    ...small,
    jobs: small.jobs.map((each, j) => (j === 2 ? { ...each, openMs: opens } : each)),
  }));
  const wait = chain.waitBefore[ACRE_SPRAY] as number;
  expect(outlook.waitMs(ACRE_SPRAY, ACRE_SPRAY)).toBe(wait + 1800 * SEC);
  expect(outlook.waitMs(BIRCH, ACRE_SPRAY)).toBe(wait + 1800 * SEC + 300 * SEC);
});

it('the least cost has pay, ways and overtime', () => {
  const { outlook, at, chain, labels } = outlookOf();
  const shiftEnd = (7 + 4) * 3600 * SEC;
  labels.data[at + TIME] = shiftEnd - 1000;
  labels.data[at + COST] = 77;
  const metres = 4 * LEG_M;
  expect(chain.leastM[ACRE_SEED]).toBe(metres - LEG_M);
  const way = (metres - LEG_M) * 300_000;
  expect(outlook.cost(at, ACRE_SEED, 1000)).toBe(77 + 1000 * 5000 + way);
  expect(outlook.cost(at, ACRE_SEED, 3000)).toBe(77 + 3000 * 5000 + way + 2000 * 2500);
});

it('the guess counts half a refill for an empty vessel, and three for an empty stock', () => {
  const { outlook, at, chain, labels, steps } = outlookOf();
  const refill = EVENT_MS * 5000;
  expect(outlook.guess(at)).toBe(0);
  steps.work(at, ACRE_SEED, 4000);
  labels.data[at + COST] = 1000;
  expect(outlook.guess(at)).toBeCloseTo(1000 + (4000 / 10_000) * 0.5 * refill, 3);
  labels.data[at + DONE] = 0;
  steps.work(at, ACRE_SPRAY, 6000);
  labels.data[at + DONE] = 0;
  steps.refillFromRig(at, BIRCH, 0);
  steps.work(at, BIRCH, 1000);
  labels.data[at + COST] = 0;
  // 100 parts of the nurse tank's 3,000, for 200 were left of home's; and 300 of the tank's 2,000 since it was filled.
  expect(chain.op[BIRCH]).toBe(2);
  expect(outlook.guess(at)).toBeCloseTo(((300 / 2000) * 0.5 + (100 / 3000) * 3) * refill, 3);
});
