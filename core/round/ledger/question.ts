import type { Book, Property, Round, Treatment, Zone } from '../../book/index.ts';
import { addDays } from '../../units/index.ts';
import { type Asked, type Bar, countsBefore } from './asked.ts';
import { countsFor, isOver, limitsOf } from './limits.ts';
import { readSeason } from './season.ts';
import { seedingBars } from './seeding.ts';
import type { Application, Ground, Limit } from './types.ts';
import { sourceWords, sumWords } from './words.ts';

/** Whether labels and caps let a treatment be done on a zone in a round, with all that was done and is planned before it. */
export type LabelAnswer =
  | { readonly kind: 'allowed' }
  /** On no day of the round; `words` with the arithmetic. */
  | { readonly kind: 'refused'; readonly words: string }
  /** Only on these days of the round, which are fewer than all. */
  | { readonly kind: 'some-days'; readonly dates: readonly string[]; readonly words: string };

const ALLOWED: LabelAnswer = { kind: 'allowed' };

/**
 * Asks labels and caps about one round of a book. For each treatment of a zone: the sum of each calendar year (labels, nutrients, active
 * ingredients), the fewest days between two applications, and the days between a product and seed on the same ground.
 *
 * What is recorded counts as it was written down, wherever its round stands. What rounds that begin before this one have planned counts
 * as done on the last of their days until it is recorded. Every application counts as if it had met the same ground of its zone, and a
 * record of a zone that the lawn no longer has counts on all of its zones: both err on the safe side. What is recorded of this round
 * itself is the same application, and not counted twice.
 */
export function askLabels(
  book: Book,
  round: Round,
  ground: Ground,
): (property: Property, zone: Zone, treatment: Treatment) => LabelAnswer {
  const season = readSeason(book, { ground, plannedGround: false });
  const limits = limitsOf(book).filter((each) => each.kind !== 'product-application');
  const rank = season.rankOf(round.id);
  let last: { readonly property: Property; readonly others: readonly Application[] } | null = null;
  return (property, zone, treatment) => {
    if (last?.property !== property) {
      const others = season.at(property).filter((each) => each.roundId !== round.id);
      last = { property, others };
    }
    const onZone = last.others.filter((each) => isOn(each, property, zone));
    const own = season.ownRates(round, property, zone);
    const asked: Asked = { season, round, rank, property, zone, treatment, others: onZone, own };
    return answer(round, [...yearBars(asked, limits), ...dayBars(asked), ...seedingBars(asked)]);
  };
}

function isOn(application: Application, property: Property, zone: Zone): boolean {
  return application.zoneId === zone.id || !property.zones.some((each) => each.id === application.zoneId);
}

function answer(round: Round, bars: readonly Bar[]): LabelAnswer {
  const days = round.dates.toSorted();
  const barred = bars.filter((each) => days.some((date) => each.bars(date)));
  if (barred.length === 0) return ALLOWED;
  const dates = days.filter((date) => !barred.some((each) => each.bars(date)));
  if (dates.length > 0) return { kind: 'some-days', dates, words: barred.map((each) => each.words).join('; ') };
  // One that closes every day says enough; else all of them do it together.
  const [whole] = barred.filter((each) => days.every((date) => each.bars(date)));
  const told = whole === undefined ? barred : [whole];
  const ends = { early: `; this round ends on ${days.at(-1)}`, late: `; this round begins on ${days[0]}` };
  const words = told.map((each) => `${each.words}${each.side === undefined ? '' : ends[each.side]}`).join('; ');
  return { kind: 'refused', words };
}

function yearBars(asked: Asked, limits: readonly Limit[]): readonly Bar[] {
  const rates = asked.own.get(asked.treatment.id) ?? new Map<string, number>();
  const years = [...new Set(asked.round.dates.map(yearOf))];
  return limits
    .filter((limit) => countsFor(limit, { rates }) > 0)
    .flatMap((limit) => years.flatMap((year) => yearBar(asked, limit, year)));
}

function yearBar(asked: Asked, limit: Limit, year: string): readonly Bar[] {
  const earlier = asked.others
    .filter((each) => countsBefore(asked, each) && each.years.includes(year))
    .map((each) => ({ from: `in ${sourceWords(each)}`, amount: countsFor(limit, each) }))
    .filter((each) => each.amount > 0);
  const now = [...asked.own.values()].reduce((sum, rates) => sum + countsFor(limit, { rates }), 0);
  const parts = [...earlier, { from: 'now', amount: now }];
  const sum = parts.reduce((total, each) => total + each.amount, 0);
  if (!isOver(limit, sum)) return [];
  return [{ words: sumWords(limit, parts, year), bars: (date) => yearOf(date) === year }];
}

/** The fewest days that a label asks for between two applications of its product. */
function dayBars(asked: Asked): readonly Bar[] {
  return [...(asked.own.get(asked.treatment.id) ?? [])].flatMap(([productId]) => {
    const product = asked.season.recipes.products.get(productId);
    const least = product?.label.leastDaysBetween;
    if (product === undefined || least === undefined) return [];
    const end = asked.round.dates.toSorted().at(-1) ?? '';
    const before = asked.others
      .filter((each) => countsBefore(asked, each) && (each.rates.get(productId) ?? 0) > 0)
      .filter((each) => each.status === 'planned' || each.first <= end)
      .toSorted((one, other) => (one.last < other.last ? 1 : -1))[0];
    if (before === undefined) return [];
    const from = addDays(before.last, least);
    const done = before.status === 'recorded' ? `${sourceWords(before)}` : `${before.roundName} ends on ${before.last}`;
    const words = `${product.name}: ${done}, its label asks for ${least} days in between, so not before ${from}`;
    return [{ words, side: 'early', bars: (date) => date < from }];
  });
}

function yearOf(date: string): string {
  return date.slice(0, 4);
}
