import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../../core/base/index.ts';
import { AreaPlan, areasOf } from '../../../../core/plan/search/areas.ts';
import { DayModel } from '../../../../core/plan/search/model.ts';
import { nearest } from '../../../../core/plan/search/near.ts';
import { Part } from '../../../../core/plan/search/part.ts';
import { layOutSlots } from '../../../../core/plan/search/slots.ts';
import { layOutJobs } from '../../../../core/plan/search/tables.ts';
import { RouteValues } from '../../../../core/plan/search/values.ts';
import { Search } from '../../../../core/routing/engine/index.ts';
import { randomProblem } from '../random-problem.ts';

const problem = randomProblem(3, { jobs: 60, rigs: 2, days: 6, stations: 1, zones: 1, largest: 12, hours: 5 });
const table = layOutJobs(problem);
const pinned = new Int32Array(table.jobs).fill(-1);
const slots = layOutSlots(table, pinned);
const near = nearest(table);
const values = new RouteValues(table);
const found = (() => {
  const search = new Search(new DayModel(table, slots, near), { seed: 1, iterations: 50 });
  search.run();
  return search.found();
})();

describe('areas of a plan', () => {
  it('hold every day once, and enough jobs as long as there are some', () => {
    const areas = areasOf(found.routes, near, 15, createRandom(5));
    const routes = areas.flat().map((each) => each.route);
    expect([...routes].sort((one, other) => one - other)).toEqual(found.routes.map((each) => each.route));
    expect(areas.length).toBeGreaterThan(1);
  });

  it('searched by themselves never make the plan worse, and keep every job once', () => {
    const plan = new AreaPlan(values, slots, near, found);
    let before = plan.whole(0);
    const first = before;
    expect(before.cost).toBeCloseTo(found.cost, -1);
    for (const area of areasOf(plan.routes, near, 20, createRandom(7))) {
      const { jobs, slotNumbers } = plan.open(area);
      const part = new Part(problem, jobs, slotNumbers, pinned);
      const search = new Search(new DayModel(part.table, part.slots, part.near), {
        seed: 2,
        iterations: 400,
        start: part.into(area),
      });
      search.run();
      plan.take(slotNumbers, jobs, part.outOf(search.found()));
      const after = plan.whole(0);
      expect(after.absent.length).toBeLessThanOrEqual(before.absent.length);
      if (after.absent.length === before.absent.length) expect(after.cost).toBeLessThanOrEqual(before.cost);
      const all = [...after.routes.flatMap((each) => each.customers), ...after.absent];
      expect(all.sort((one, other) => one - other)).toEqual(Array.from({ length: table.jobs }, (_, job) => job + 1));
      before = after;
    }
    expect(before.cost).not.toBe(first.cost);
  });
});
