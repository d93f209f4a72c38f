import { expect, it } from 'vitest';
import { Shortlist } from '../../../../core/plan/search/shortlist.ts';
import type { State } from '../../../../core/plan/search/state.ts';

function plan(cost: number, codes: readonly number[], absent: readonly number[] = []): State {
  return { routes: [codes], costs: [cost], lengths: [0], absent, cost };
}

it('keeps the best different plans, fewest left out first', () => {
  const list = new Shortlist(3);
  for (const each of [plan(5, [1, 2]), plan(3, [2, 1]), plan(3, [2, 1]), plan(1, [1], [2]), plan(4, [1, 2, 0])])
    list.add(each);
  expect(list.list().map((each) => each.cost)).toEqual([3, 4, 5]);
  list.add(plan(2, [0, 1, 2]));
  list.add(plan(9, [0, 2, 1]));
  expect(list.list().map((each) => each.cost)).toEqual([2, 3, 4]);
});
