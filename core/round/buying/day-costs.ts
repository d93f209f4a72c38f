import type { Book } from '../../book/index.ts';
import type { PlanDay } from '../../plan/result/index.ts';
import { daysBetween, milesCostPerM, NANO_PER_DOLLAR, overtimePerMs, wagePerMs } from '../../units/index.ts';
import { isRestOfDay } from './rest-of-day.ts';
import { productsOf } from './uses.ts';

/** What one stop of a day costs, nano-dollars, its share of what serves the whole day included. */
export type StopCost = {
  readonly propertyId: string;
  readonly name: string;
  readonly paidMs: number;
  readonly wage: number;
  readonly overtime: number;
  readonly miles: number;
  readonly fixed: number;
  readonly late: number;
  readonly product: number;
};

type Own = { ownMs: number; metres: number };

/**
 * Splits a day into its stops. A stop's own time is the way to it, by fill points too, with waiting, and all work there; refills, morning,
 * break, evening and the way home serve the whole day and are shared by own time, as are overtime and the fixed cost of the day. Miles of the
 * way to a stop, and of trips from its middle, are its own; those of the way home are shared. Product goes to the ground that its load
 * covers. A late stop is late by itself.
 *
 * @param lastDay the last day on which a property is not late, null for none
 */
export function stopCosts(
  book: Book,
  day: PlanDay,
  lastDay: (propertyId: string) => string | null,
): readonly StopCost[] {
  const rig = book.rigs.find((each) => each.id === day.rigId);
  const { prices } = book;
  const perMs = wagePerMs((rig?.wagePerHour ?? prices.wagePerHour) * (rig?.crew ?? 1));
  const overPerMs = overtimePerMs(perMs, prices.overtimeFactor);
  const perM = milesCostPerM(prices.perMile);
  const perDay = isRestOfDay(book, day) ? 0 : Math.round(prices.perRigDay * NANO_PER_DOLLAR);
  const { own, shared } = splitDay(day);
  const sumMs = own.reduce((sum, each) => sum + each.ownMs, 0);
  const paidMs = Math.round(day.paidSec * 1000);
  const products = productCosts(book, day);
  const daysLate = (propertyId: string): number => {
    const last = lastDay(propertyId);
    return last === null ? 0 : Math.max(0, daysBetween(last, day.date));
  };
  return day.stops.map((stop, index) => {
    const { ownMs = 0, metres = 0 } = own[index] ?? {};
    const share = sumMs > 0 ? ownMs / sumMs : 1 / day.stops.length;
    const ms = ownMs + share * (paidMs - sumMs);
    return {
      propertyId: stop.propertyId,
      name: stop.name,
      paidMs: ms,
      wage: ms * perMs,
      overtime: share * Math.round(day.overtimeSec * 1000) * overPerMs,
      miles: (metres + share * shared.metres) * perM,
      fixed: share * perDay,
      late: Math.round(prices.perDayLate * NANO_PER_DOLLAR * daysLate(stop.propertyId)),
      product: products[index] ?? 0,
    };
  });
}

/** Own time and way of every stop. A stop begins where the one before it packed up, or with the end of the morning. */
function splitDay(day: PlanDay): { readonly own: readonly Own[]; readonly shared: Own } {
  const own: Own[] = day.stops.map(() => ({ ownMs: 0, metres: 0 }));
  const shared: Own = { ownMs: 0, metres: 0 };
  let stop = 0;
  let from = day.startSec;
  for (const each of day.activities) {
    const into = own[stop] ?? shared;
    const isShared =
      each.kind === 'morning' || each.kind === 'refill' || each.kind === 'break' || each.kind === 'evening';
    // Two persons' work overlaps: what counts is how far the clock has come.
    const ms = Math.max(0, Math.round((each.endSec - from) * 1000));
    from = Math.max(from, each.endSec);
    (isShared ? shared : into).ownMs += ms;
    if (each.kind === 'drive') into.metres += each.distanceM;
    if (each.kind === 'pack-up') stop += 1;
  }
  return { own, shared };
}

/** Product of every stop by the ground that each load covers there; a load that covers none is shared by all. nano-dollars */
function productCosts(book: Book, day: PlanDay): readonly number[] {
  const costs = day.stops.map(() => 0);
  for (const load of day.loads) {
    const worth = [...productsOf(load)].reduce((sum, [id, amount]) => {
      const price = book.products.find((each) => each.id === id)?.pricePerUnit ?? 0;
      return sum + amount * price * NANO_PER_DOLLAR;
    }, 0);
    const ground = day.stops.map((stop) => coveredAt(load, stop.propertyId, day));
    const whole = ground.reduce((sum, each) => sum + each, 0);
    for (const [index, area] of ground.entries())
      costs[index] = (costs[index] ?? 0) + worth * (whole > 0 ? area / whole : 1 / costs.length);
  }
  return costs;
}

/** Ground of a load at one stop; where a property is visited twice on one day the visits count alike. ft2 */
function coveredAt(load: PlanDay['loads'][number], propertyId: string, { stops }: PlanDay): number {
  const area = load.covers.reduce((sum, each) => sum + (each.propertyId === propertyId ? each.areaSqFt : 0), 0);
  return area / stops.filter((each) => each.propertyId === propertyId).length;
}
