import type { Book } from '../../book/index.ts';
import type { Plan, PlanLoad } from '../../plan/result/index.ts';
import { plannedAmounts, type SeasonOptions } from '../ledger/index.ts';
import type { Use } from './types.ts';

/** Products that go into one load, with those of the mix below the reach of the pump. By product id, in its unit. */
export function productsOf({ products, volumeGal, sumpGal }: PlanLoad): ReadonlyMap<string, number> {
  const share = volumeGal > 0 ? 1 + sumpGal / volumeGal : 1;
  const sums = new Map<string, number>();
  for (const { productId, amount } of products) sums.set(productId, (sums.get(productId) ?? 0) + amount * share);
  return sums;
}

/** What the days of a plan take, from its loads; what is left in tanks in the evening is part of it. */
export function usesOfPlan(plan: Plan): readonly Use[] {
  return plan.days.flatMap((day) => {
    const sums = new Map<string, number>();
    for (const load of day.loads)
      for (const [id, amount] of productsOf(load)) sums.set(id, (sums.get(id) ?? 0) + amount);
    return [...sums].map(
      ([productId, amount]): Use => ({
        roundId: plan.roundId,
        roundName: plan.roundName,
        date: day.date,
        productId,
        amount,
        from: 'plan',
      }),
    );
  });
}

/**
 * What rounds will take that have no plan yet, from rates and ground: all of it on the first of their days from today on. Rounds whose days
 * are all past take nothing.
 *
 * @param planned ids of the rounds that have a plan
 */
export function usesOfRounds(
  book: Book,
  options: SeasonOptions,
  planned: ReadonlySet<string>,
  today: string,
): readonly Use[] {
  return plannedAmounts(book, options).flatMap(({ roundId, roundName, productId, amount }) => {
    const days = book.rounds.find((each) => each.id === roundId)?.dates.filter((each) => each >= today) ?? [];
    const [date] = days.toSorted();
    if (date === undefined || planned.has(roundId)) return [];
    return [{ roundId, roundName, date, productId, amount, from: 'rates' } as const];
  });
}
