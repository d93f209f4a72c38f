import type { Issue } from '../base/index.ts';
import type { Book, Mix, Product, SpreadRate, Treatment } from '../book/index.ts';
import { spreadLbPer1000 } from '../demand/index.ts';
import { carrier, type Figure, outOfBounds, pause, wage } from './bounds.ts';
import { named } from './rule.ts';

/*
 * Products, mixes, treatments and prices. The bounds are our own and have no source. Those of rates are no advice and no
 * limit: they only tell where ounces may have been taken for pounds, or an acre for 1,000 ft2. Limits stand on the label.
 */

/** Per 1,000 ft2. Ounces are by weight: as much as the pounds, sixteen to one. */
const MOST_RATE: Readonly<Record<Product['unit'], number>> = { lb: 100, oz: 1600, 'fl-oz': 640 };
const UNIT_WORDS: Readonly<Record<Product['unit'], string>> = { lb: ' lb', oz: ' oz', 'fl-oz': ' fl oz' };

export function productFigures(product: Product): readonly Issue[] {
  return outOfBounds(named('product', product), [
    { what: 'Weight of one bag', value: product.bagLb, unit: ' lb', most: 3000 },
    { what: 'Days between two applications', value: product.label.leastDaysBetween, unit: '', most: 400 },
    dollars('Price', product.pricePerUnit, ` per${UNIT_WORDS[product.unit]}`, 5000),
  ]);
}

export function mixFigures({ products }: Book, mix: Mix): readonly Issue[] {
  return outOfBounds(named('mix', mix), [
    carrier('Carrier', mix.carrierGalPer1000SqFt),
    pause('Time to rinse', mix.rinseMin),
    { what: 'Water to rinse', value: mix.rinseGal, unit: ' gal', most: 1000 },
    { what: 'Most left over', value: mix.reserveGal, unit: ' gal', most: 1000 },
    ...mix.parts.flatMap(({ productId, amountPer1000SqFt }) => {
      const product = products.find((each) => each.id === productId);
      return product === undefined ? [] : [rate(product.name, amountPer1000SqFt, product.unit)];
    }),
  ]);
}

export function treatmentFigures(book: Book, treatment: Treatment): readonly Issue[] {
  const { coverage } = treatment;
  return outOfBounds(named('treatment', treatment), [
    pause('Time to flag', treatment.flagMin),
    {
      what: 'Width of the band',
      value: coverage.kind === 'band' ? coverage.widthFt : undefined,
      unit: ' ft',
      most: 60,
    },
    ...dryFigures(book, treatment),
  ]);
}

function dryFigures(book: Book, treatment: Treatment): readonly Figure[] {
  switch (treatment.kind) {
    case 'spray':
      return [];
    case 'aerate':
      return [passes('Passes', treatment.passes)];
    case 'spread':
      return [spread(book, treatment)];
    case 'seed': {
      const { starter } = treatment;
      const seed = [rate('Seed', treatment.lbPer1000SqFt, 'lb'), passes('Passes', treatment.passes)];
      return starter === undefined
        ? seed
        : [...seed, spread(book, starter), passes('Passes of starter', starter.passes)];
    }
  }
}

/** Pounds of product; pounds of the nutrient where the analysis does not say what they take. */
function spread({ products }: Book, part: { readonly productId: string; readonly rate: SpreadRate }): Figure {
  const product = products.find((each) => each.id === part.productId);
  const pounds = product === undefined ? null : spreadLbPer1000(part.rate, product);
  return rate(product?.name ?? part.productId, pounds ?? part.rate.lbPer1000SqFt, 'lb');
}

function rate(what: string, value: number, unit: Product['unit']): Figure {
  return { what: `Rate of ${what}`, value, unit: `${UNIT_WORDS[unit]} per 1,000 ft²`, most: MOST_RATE[unit] };
}

function passes(what: string, value: number): Figure {
  return { what, value, unit: '', most: 20 };
}

export function priceFigures({ prices }: Book): readonly Issue[] {
  return outOfBounds('prices', [
    wage('Wage', prices.wagePerHour),
    { what: 'Overtime factor', value: prices.overtimeFactor, unit: '', most: 10 },
    dollars('Driving', prices.perMile, ' a mile', 100),
    dollars('A day late', prices.perDayLate, '', 10_000),
    dollars('A day of a rig', prices.perRigDay, '', 10_000),
  ]);
}

function dollars(what: string, value: number, per: string, most: number): Figure {
  return { what, value, unit: ` dollars${per}`, most };
}
