import type { Book, Product, Property, Round, Treatment } from '../../book/index.ts';
import { type ProductRate, productRates, rateWords } from '../../demand/index.ts';

/** What rounds before this one, as the book has them, put down of one product on a property. */
type Earlier = { readonly round: Round; readonly lastDate: string; readonly rates: readonly ProductRate[] };

/** Whether a label lets a treatment be done on a property in a round that follows others. */
export type LabelAnswer =
  | { readonly kind: 'allowed' }
  /** `words` with the arithmetic. */
  | { readonly kind: 'refused'; readonly words: string }
  /** Not before this day of the calendar. */
  | { readonly kind: 'later'; readonly date: string; readonly words: string };

const ALLOWED: LabelAnswer = { kind: 'allowed' };
const MS_PER_DAY = 86_400_000;
/** Sums of decimals may pass a limit by their last binary digit; that much is not a breach. */
const DUST = 1e-9;

/**
 * Asks the labels of a treatment's products about the rounds of the book that begin before this one: the sum of a calendar year, and the
 * fewest days between two applications. Every earlier round counts as done everywhere it was meant for, on its last day, and as if
 * it had met the same ground: that errs on the safe side.
 */
export function labelHistory(book: Book, round: Round): (property: Property, treatment: Treatment) => LabelAnswer {
  const before = roundsBefore(book, round).map((other) => {
    const skipped = new Set(other.skipped.map((each) => each.propertyId));
    const wanted = other.propertyIds === 'all' ? null : new Set(other.propertyIds);
    const treats = (id: string): boolean => !skipped.has(id) && (wanted === null || wanted.has(id));
    return { treats, round: other, lastDate: lastDate(other), rates: productRatesOf(book, other) };
  });
  const own = productRatesOf(book, round);
  return (property, treatment) => {
    if (before.length === 0) return ALLOWED;
    const earlier = before.filter((each) => each.treats(property.id));
    const answers = productRates(book, treatment).flatMap(({ productId }) => {
      const product = book.products.find((each) => each.id === productId);
      if (product === undefined) return [];
      return [yearAnswer(product, round, earlier, rateIn(own, productId)), daysAnswer(product, round, earlier)];
    });
    const refused = answers.find((each) => each.kind === 'refused');
    if (refused !== undefined) return refused;
    const later = answers.flatMap((each) => (each.kind === 'later' ? [each] : []));
    return later.sort((left, right) => (left.date < right.date ? 1 : -1))[0] ?? ALLOWED;
  };
}

/** Rounds that begin before this one; of two that begin on the same day, the one that stands first. */
function roundsBefore(book: Book, round: Round): readonly Round[] {
  const own = book.rounds.indexOf(round);
  const ours = firstDate(round);
  return book.rounds.filter((other, index) => {
    const theirs = firstDate(other);
    return index !== own && (theirs < ours || (theirs === ours && index < own));
  });
}

function productRatesOf(book: Book, round: Round): readonly ProductRate[] {
  const treatments = round.treatmentIds.flatMap((id) => book.treatments.filter((each) => each.id === id));
  return treatments.flatMap((each) => productRates(book, each));
}

function rateIn(rates: readonly ProductRate[], productId: string): number {
  return rates.reduce((sum, each) => sum + (each.productId === productId ? each.amountPer1000SqFt : 0), 0);
}

function yearAnswer(product: Product, round: Round, earlier: readonly Earlier[], own: number): LabelAnswer {
  const most = product.label.mostPerYear;
  if (most === undefined) return ALLOWED;
  const years = new Set(round.dates.map(yearOf));
  const same = earlier
    .filter((each) => each.round.dates.some((date) => years.has(yearOf(date))))
    .map((each) => ({ name: nameOf(each.round), rate: rateIn(each.rates, product.id) }))
    .filter((each) => each.rate > 0);
  const sum = same.reduce((all, each) => all + each.rate, own);
  if (same.length === 0 || sum <= most * (1 + DUST)) return ALLOWED;
  const rate = (amount: number): string => rateWords(product.unit, amount);
  const parts = [...same.map((each) => `${rate(each.rate)} in ${each.name}`), `${rate(own)} now`];
  const words = `${product.name}: ${parts.join(' + ')} = ${rate(sum)} per 1,000 ft² in the year, its label allows ${rate(most)}`;
  return { kind: 'refused', words };
}

function daysAnswer(product: Product, round: Round, earlier: readonly Earlier[]): LabelAnswer {
  const least = product.label.leastDaysBetween;
  if (least === undefined) return ALLOWED;
  const applied = earlier.filter((each) => rateIn(each.rates, product.id) > 0);
  const last = applied.reduce<Earlier | null>(
    (latest, each) => (latest === null || each.lastDate > latest.lastDate ? each : latest),
    null,
  );
  if (last === null) return ALLOWED;
  const date = daysAfter(last.lastDate, least);
  if (date <= firstDate(round)) return ALLOWED;
  const words = `${product.name}: ${nameOf(last.round)} ends on ${last.lastDate}, its label asks for ${least} days in between, so not before ${date}`;
  if (date > lastDate(round)) return { kind: 'refused', words: `${words}; this round ends on ${lastDate(round)}` };
  return { kind: 'later', date, words };
}

function nameOf(round: Round): string {
  return `round ${round.name === '' ? round.id : round.name}`;
}

function yearOf(date: string): string {
  return date.slice(0, 4);
}

function firstDate(round: Round): string {
  return round.dates.toSorted()[0] ?? '';
}

function lastDate(round: Round): string {
  return round.dates.toSorted().at(-1) ?? '';
}

/** The day so many days after another one; the date itself where the calendar does not have it. */
function daysAfter(date: string, days: number): string {
  const ms = Date.parse(`${date}T00:00:00Z`);
  return Number.isNaN(ms) ? date : new Date(ms + days * MS_PER_DAY).toISOString().slice(0, 10);
}
