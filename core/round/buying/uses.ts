import type { Book } from '../../book/index.ts';
import type { Plan, PlanLoad } from '../../plan/result/index.ts';
import type { PlannedAmount } from '../ledger/index.ts';
import { isRestOfDay } from './rest-of-day.ts';
import type { Use } from './types.ts';

/** Products that go into one load, with those of the mix below the reach of the pump. By product id, in its unit. */
export function productsOf({ products, volumeGal, sumpGal }: PlanLoad): ReadonlyMap<string, number> {
  const share = volumeGal > 0 ? 1 + sumpGal / volumeGal : 1;
  const sums = new Map<string, number>();
  for (const { productId, amount } of products) sums.set(productId, (sums.get(productId) ?? 0) + amount * share);
  return sums;
}

/**
 * What the days of a plan take, from its loads; what is left in tanks in the evening is part of it, and what is aboard already on a day
 * under way is not.
 */
export function usesOfPlan(book: Book, plan: Plan): readonly Use[] {
  return plan.days.flatMap((day) => {
    const sums = new Map<string, number>();
    const isTaken = isRestOfDay(book, day) ? ({ startSec }: PlanLoad) => startSec > day.startSec : () => true;
    for (const load of day.loads.filter(isTaken))
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

/** Rounds that have no plan yet and a day to come, with the first of those days. */
export function roundsToCome(book: Book, planned: ReadonlySet<string>, today: string): ReadonlyMap<string, string> {
  return new Map(
    book.rounds.flatMap(({ id, dates }) => {
      const [date] = dates.filter((each) => each >= today).toSorted();
      return date === undefined || planned.has(id) ? [] : [[id, date] as const];
    }),
  );
}

/**
 * What rounds without a plan will take, from rates and ground: all of it on the first of their days from today on.
 *
 * @param toCome see `roundsToCome`
 * @param sums what they have planned, of all properties
 */
export function usesOfSums(toCome: ReadonlyMap<string, string>, sums: readonly PlannedAmount[]): readonly Use[] {
  return sums.flatMap(({ roundId, roundName, productId, amount }) => {
    const date = toCome.get(roundId);
    return date === undefined ? [] : [{ roundId, roundName, date, productId, amount, from: 'rates' } as const];
  });
}
