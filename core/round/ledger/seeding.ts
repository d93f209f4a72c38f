import type { Product } from '../../book/index.ts';
import { addDays } from '../../units/index.ts';
import { type Asked, type Bar, countsBefore } from './asked.ts';
import type { Application } from './types.ts';
import { sourceWords } from './words.ts';

/** Seed on a zone: days between which it was or will be sown. */
type Sowing = {
  readonly first: string;
  readonly last: string;
  /** "round Overseed (recorded 2027-09-01)", "seeded on 2027-09-01". */
  readonly words: string;
  /** True where its place in time is known or comes before the round that is asked about. */
  readonly before: boolean;
};

/**
 * Days that have to lie between a product and seed on the same ground, both ways: seed not before the product's day + n, the product not
 * before the day of seed + m. Where seed is still to come on a day that is known, or in a later round, the product has to be down n days
 * before it, or before the last day of that round.
 */
export function seedingBars(asked: Asked): readonly Bar[] {
  const { season, treatment } = asked;
  const own = [...(asked.own.get(treatment.id) ?? [])].flatMap(([id]) => season.recipes.products.get(id) ?? []);
  const sowings = sowingsOf(asked);
  return [
    ...own.flatMap((product) => [
      ...sameRoundBar(asked, product),
      ...sowings.flatMap((each) => productBars(product, each)),
    ]),
    ...(treatment.kind === 'seed' ? asked.others.flatMap((each) => seedBars(asked, each)) : []),
  ];
}

function sowingsOf(asked: Asked): readonly Sowing[] {
  const { seededOn } = asked.property;
  const entered =
    seededOn === undefined ? [] : [{ first: seededOn, last: seededOn, words: `seed on ${seededOn}`, before: true }];
  const applied = asked.others
    .filter((each) => each.seeds)
    .map((each) => ({
      first: each.first,
      last: each.last,
      words: `${sourceWords(each)} sows${each.status === 'planned' ? ` from ${each.first} to ${each.last}` : ''}`,
      before: countsBefore(asked, each),
    }));
  return [...entered, ...applied];
}

/** Seed and product in one round may come on one day. */
function sameRoundBar({ own, season, treatment }: Asked, product: Product): readonly Bar[] {
  const days = Math.max(product.label.daysBeforeSeeding ?? 0, product.label.daysAfterSeeding ?? 0);
  const sows = [...own.keys()].some((id) => {
    const other = season.recipes.treatments.get(id);
    if (other?.kind !== 'seed') return false;
    return id !== treatment.id || other.productId !== product.id;
  });
  if (days === 0 || !sows) return [];
  const words = `${product.name}: this round sows the same ground, 0 days apart, its label asks for ${days} days between it and seed`;
  return [{ words, bars: () => true }];
}

/** Bars on the days of a product that come from one sowing. */
function productBars(product: Product, sowing: Sowing): readonly Bar[] {
  const { daysAfterSeeding: after, daysBeforeSeeding: before } = product.label;
  const bars: Bar[] = [];
  if (after !== undefined && sowing.before) {
    const from = addDays(sowing.last, after);
    const words = `${product.name}: ${sowing.words}, its label asks for ${after} days after seed, so not before ${from}`;
    bars.push({ words, side: 'early', bars: (date) => date >= sowing.first && date < from });
  }
  if (before !== undefined) {
    const until = addDays(sowing.before ? sowing.first : sowing.last, -before);
    const words = `${product.name}: ${sowing.words}, its label asks for ${before} days before seed, so not after ${until}`;
    bars.push({ words, side: 'late', bars: (date) => date <= sowing.last && date > until });
  }
  return bars;
}

/** Bars on the days of seed that come from a product that lies on the ground before it. */
function seedBars(asked: Asked, application: Application): readonly Bar[] {
  if (!countsBefore(asked, application)) return [];
  return [...application.rates.keys()].flatMap((id) => {
    const product = asked.season.recipes.products.get(id);
    const days = product?.label.daysBeforeSeeding;
    if (product === undefined || days === undefined) return [];
    const from = addDays(application.last, days);
    const done =
      application.status === 'recorded'
        ? sourceWords(application)
        : `${application.roundName} ends on ${application.last}`;
    const words = `${product.name}: ${done}, its label asks for ${days} days before seed, so no seed before ${from}`;
    return [{ words, side: 'early', bars: (date) => date >= application.first && date < from }];
  });
}
