import type { Book, Estimate, Property, Treatment } from '../book/index.ts';
import { type PropertyMeasure, treatableGround } from '../measure/index.ts';
import { type PassesOf, zonePassesWith } from '../passes/index.ts';
import { formatMoney } from '../units/index.ts';
import { lawnWork } from './lawn-work.ts';
import { visitPrice } from './price.ts';
import type { LawnQuote, MoneyLine, SeasonQuote, VisitPrice, VisitQuote } from './types.ts';
import { visitCost } from './visit-cost.ts';

/** An estimate that holds nothing: the program has no prices of its own. */
export const NO_ESTIMATE: Estimate = {
  steps: [],
  leastPerVisit: 0,
  roundsPerSeason: 1,
  overheadShare: 0,
  carrierDollarsPerGal: 0,
  milesPerVisit: 0,
  drivingMinPerVisit: 0,
};

/**
 * What a lawn costs and brings: every treatment as a visit of its own, the price of a visit by the owner's steps, and a season
 * of as many visits as the owner makes. Dollars; costs are not rounded, prices are whole cents.
 * @param passes passes of machines over zones; reckoned where they are not known, unless another source is handed in
 */
export function lawnQuote(
  book: Book,
  property: Property,
  measure: PropertyMeasure,
  passes: PassesOf = zonePassesWith(treatableGround),
): LawnQuote {
  const estimate = book.estimate ?? NO_ESTIMATE;
  const areaSqFt = measure.treatableSqFt ?? 0;
  const price = areaSqFt === 0 ? null : visitPrice(estimate, areaSqFt, book.units);
  const visits = lawnWork(book, property, measure, quotedTreatments(book), passes).map((work): VisitQuote => {
    const cost = visitCost(work, book.prices, estimate, book.units);
    return {
      work,
      minutes: cost.minutes,
      lines: cost.lines,
      costDollars: cost.dollars,
      priceDollars: price?.dollars ?? null,
      ...marginOf(price?.dollars ?? null, cost.dollars),
    };
  });
  return { areaSqFt, visits, price, season: seasonOf(estimate, visits, price) };
}

/** The treatments that a quote is made of: those named for the season, else all of the book. */
function quotedTreatments(book: Book): readonly Treatment[] {
  const named = book.estimate?.treatmentIds;
  return named === undefined ? book.treatments : book.treatments.filter((each) => named.includes(each.id));
}

function marginOf(price: number | null, cost: number): Pick<VisitQuote, 'marginDollars' | 'marginShare'> {
  if (price === null) return { marginDollars: null, marginShare: null };
  return { marginDollars: price - cost, marginShare: price === 0 ? null : (price - cost) / price };
}

/** A season of so many visits; where there are several treatments each visit costs their mean. */
function seasonOf(estimate: Estimate, visits: readonly VisitQuote[], price: VisitPrice | null): SeasonQuote | null {
  if (visits.length === 0) return null;
  const count = estimate.roundsPerSeason;
  const mean = visits.reduce((sum, each) => sum + each.costDollars, 0) / visits.length;
  const of = visits.length === 1 ? '' : ` (mean of ${visits.length} treatments)`;
  const cost: MoneyLine = {
    what: 'Cost',
    arithmetic: `${count} × ${formatMoney(mean)}${of}`,
    dollars: count * mean,
  };
  const asked: MoneyLine | null =
    price === null
      ? null
      : { what: 'Price', arithmetic: `${count} × ${formatMoney(price.dollars)}`, dollars: count * price.dollars };
  return { visits: count, cost, price: asked, ...marginOf(asked?.dollars ?? null, cost.dollars) };
}
