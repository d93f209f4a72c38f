import { expect, test } from 'vitest';
import { insertionsOf, routesBySlot } from '../../../../core/plan/explain/insertions.ts';
import { Legs } from '../../../../core/plan/explain/legs.ts';
import { Trials } from '../../../../core/plan/explain/trials.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { randomProblem } from '../random-problem.ts';

test('a look at a day is a look at the day of its own slot, however slots are numbered', () => {
  const whole = randomProblem(3, { jobs: 6, rigs: 2, days: 2, stations: 1, zones: 1, hours: 14, heavy: 0 });
  // The first rig does not work on the first day, so that slot 0 is the second rig's.
  const problem = { ...whole, slots: whole.slots.slice(1) };
  const solution = solve(problem, { seed: 1, iterations: 20 });
  const rest = { ...solution, routes: solution.routes.map((route) => ({ ...route, visits: route.visits.slice(1) })) };
  const facts = { problem, legs: new Legs(problem), routes: routesBySlot(rest) };
  const trials = new Trials(facts, 1000);
  const removed = solution.routes.flatMap((route) => route.visits.slice(0, 1)).map((visit) => visit.job);
  let looked = 0;
  for (const job of removed) {
    for (const rig of problem.rigs.keys()) {
      for (const insertion of insertionsOf(facts, job, rig).filter((each) => each.allowed)) {
        const placed = trials.place(problem, job, insertion);
        if (placed === null) continue;
        looked += 1;
        expect(Math.abs(trials.roughPaidMs(problem, job, insertion) - placed.paidMs)).toBeLessThan(1000);
      }
    }
  }
  expect(looked).toBeGreaterThan(3);
});
