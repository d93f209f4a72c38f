import { useEffect, useMemo, useState } from 'react';
import type { Book } from '../../core/book/index.ts';
import { bandAreaSqFt } from '../../core/measure/index.ts';
import { roundsToCome, type Use, usesOfSums } from '../../core/round/buying/index.ts';
import {
  type Ground,
  type LawnYear,
  openLedger,
  plannedSums,
  type SeasonLedger,
  type SeasonOptions,
} from '../../core/round/ledger/index.ts';
import { quantity } from '../../core/units/index.ts';
import { useBook } from './book.ts';
import { measureOf } from './measures.ts';
import { type KnownPlan, usePlans } from './plans.ts';
import { inSlices } from './slices.ts';

/** The ground of the lawns of the open book, measured once and kept. */
export const MEASURED_GROUND: Ground = {
  areaSqFt: (property, zoneId) => measureOf(property).zones.find((each) => each.zoneId === zoneId)?.areaSqFt ?? null,
  bandSqFt: (property, zone, { widthFt, along }) => bandAreaSqFt(property, zone, quantity(widthFt), along),
};

/** How the season is read on screen: by measured ground, and by the days of the plans that there are. */
export function seasonOptions(plans: Readonly<Record<string, KnownPlan>>): SeasonOptions {
  const days = new Map<string, ReadonlyMap<string, string>>();
  for (const [roundId, { plan }] of Object.entries(plans)) {
    const own = new Map<string, string>();
    for (const day of plan.days) for (const stop of day.stops) own.set(stop.propertyId, day.date);
    days.set(roundId, own);
  }
  return { ground: MEASURED_GROUND, plannedDay: (roundId, propertyId) => days.get(roundId)?.get(propertyId) };
}

/** Years in which anything was recorded or is planned, latest first. */
export function seasonYears(book: Book): readonly string[] {
  const dates = [...book.visits.map((each) => each.on), ...book.rounds.flatMap((each) => each.dates)];
  return [...new Set(dates.map((each) => each.slice(0, 4)))].toSorted().toReversed();
}

/** The ledger, or the share of it that is reckoned. */
export type LedgerSoFar = { readonly ledger: SeasonLedger | null; readonly share: number };

/**
 * The season's ledger of the open book, kept up with every edit. It is reckoned lawn by lawn in short parts between which the window can
 * draw; the one before stays until the new one is whole. Nothing is reckoned while the year is null.
 */
export function useSeasonLedger(year: string | null): LedgerSoFar {
  const book = useBook((state) => state.open?.book ?? null);
  const plans = usePlans((state) => state.plans);
  const options = useMemo(() => seasonOptions(plans), [plans]);
  const [found, setFound] = useState<LedgerSoFar>({ ledger: null, share: 0 });
  useEffect(() => {
    if (book === null || year === null) return;
    return inSlices(
      ledgerSteps(book, year, options),
      (share) => setFound(({ ledger }) => ({ ledger, share })),
      (ledger) => setFound({ ledger, share: 1 }),
    );
  }, [book, year, options]);
  return found;
}

function* ledgerSteps(book: Book, year: string, options: SeasonOptions): Generator<number, SeasonLedger, undefined> {
  const ledger = openLedger(book, year, options);
  const lawns: LawnYear[] = [];
  for (const property of book.properties) {
    yield lawns.length / book.properties.length;
    lawns.push(ledger.lawn(property));
  }
  return ledger.close(lawns);
}

/**
 * What rounds without a plan will take from a day on, from rates and ground; reckoned in short parts like the ledger. Null until it is
 * known.
 */
export function useUnplannedUses(from: string): readonly Use[] | null {
  const book = useBook((state) => state.open?.book ?? null);
  const plans = usePlans((state) => state.plans);
  const [uses, setUses] = useState<readonly Use[] | null>(null);
  useEffect(() => {
    if (book === null) return;
    return inSlices(unplannedSteps(book, plans, from), () => undefined, setUses);
  }, [book, plans, from]);
  return uses;
}

function* unplannedSteps(
  book: Book,
  plans: Readonly<Record<string, KnownPlan>>,
  from: string,
): Generator<null, readonly Use[], undefined> {
  const toCome = roundsToCome(book, new Set(Object.keys(plans)), from);
  const sums = plannedSums(book, seasonOptions(plans), new Set(toCome.keys()));
  for (const property of toCome.size === 0 ? [] : book.properties) {
    yield null;
    sums.add(property);
  }
  return usesOfSums(toCome, sums.close());
}
