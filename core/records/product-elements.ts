import type { Product } from '../book/index.ts';
import { methodName } from '../reach/index.ts';
import {
  formatArea,
  formatLargeArea,
  formatProductAmount,
  formatProductRate,
  formatShare,
  formatVolume,
  LITRES_PER_GALLON,
} from '../units/index.ts';
import { asWritten, known, knownOr, missing, notAsked } from './answers.ts';
import type { Answer, ProductFacts, RecordElement } from './types.ts';

/** Elements about each product that was applied. A new one is an entry here. */
export const PRODUCT_ELEMENTS: readonly RecordElement<ProductFacts>[] = [
  {
    id: 'product',
    words: 'Product',
    askedBy: ['7-cfr-110.3', '40-cfr-171.303', 'south-dakota', 'maryland', 'kentucky'],
    canType: true,
    fill: ({ product }) => knownOr(product?.name, 'name of the product, in the Shed'),
  },
  {
    id: 'maker',
    words: 'Maker',
    askedBy: ['south-dakota'],
    canType: true,
    fill: ({ product }) => knownOr(product?.maker, 'maker of the product, in the Shed'),
  },
  { id: 'common-name', words: 'Active ingredients', askedBy: ['maryland'], canType: true, fill: commonName },
  {
    id: 'registration',
    words: 'EPA registration number',
    askedBy: ['7-cfr-110.3', '40-cfr-171.303', 'maryland'],
    canType: true,
    fill: (each) =>
      ofPesticide(each, each.product?.label.registration, 'registration number of the label, in the Shed'),
  },
  {
    id: 'restricted-use',
    words: 'Restricted use',
    askedBy: ['7-cfr-110.3', '40-cfr-171.303'],
    canType: true,
    fill: (each) =>
      ofPesticide(each, yesNo(each.product?.label.restrictedUse), 'whether the label says restricted use, in the Shed'),
  },
  {
    id: 'amount',
    words: 'Total amount',
    askedBy: ['7-cfr-110.3', '40-cfr-171.303', 'south-dakota', 'maryland', 'kentucky'],
    canType: false,
    fill: (each) => measured(each, (product) => amountWords(each, product, each.applied.amount)),
  },
  { id: 'rate', words: 'Rate', askedBy: ['kentucky'], canType: false, fill: rate },
  {
    id: 'concentration',
    words: 'Concentration',
    askedBy: ['south-dakota', 'kentucky'],
    canType: false,
    fill: concentration,
  },
  {
    id: 'mix',
    words: 'Mix put out',
    askedBy: ['kentucky'],
    canType: false,
    fill: (each) =>
      each.applied.mixGal > 0
        ? asWritten(each.applied.isMeasured, formatVolume(each.applied.mixGal, each.facts.book.units), USED)
        : notAsked('no liquid'),
  },
  {
    id: 'area',
    words: 'Area treated',
    askedBy: ['7-cfr-110.3', '40-cfr-171.303', 'south-dakota', 'maryland', 'kentucky'],
    canType: false,
    fill: area,
  },
  {
    id: 'target',
    words: 'Target or reason',
    askedBy: ['south-dakota', 'maryland', 'kentucky'],
    canType: true,
    fill: ({ treatment }) => knownOr(treatment?.target, 'target of the treatment, in the Shed'),
  },
  { id: 'equipment', words: 'Equipment', askedBy: ['maryland'], canType: true, fill: equipment },
  { id: 'analysis', words: 'Analysis', askedBy: ['kentucky'], canType: true, fill: analysis },
  {
    id: 'reentry',
    words: 'Keep off until',
    askedBy: [],
    canType: true,
    fill: (each) => ofPesticide(each, each.product?.label.reentry, 'what the label says, in the Shed'),
  },
];

/** Null where the book does not say; seed is none. */
function isPesticide({ product }: ProductFacts): boolean | null {
  if (product === undefined) return null;
  if (product.pesticide !== undefined) return product.pesticide;
  if (product.form === 'seed') return false;
  const signs = product.label.registration.trim() !== '' || product.label.restrictedUse !== undefined;
  return signs || (product.actives ?? []).length > 0 ? true : null;
}

function ofPesticide(facts: ProductFacts, text: string | undefined, lacks: string): Answer {
  if (text !== undefined && text.trim() !== '') return known(text.trim());
  const pesticide = isPesticide(facts);
  if (pesticide === false) return notAsked('no pesticide');
  return missing(pesticide === null ? `${lacks}; or that it is no pesticide` : lacks);
}

function commonName(facts: ProductFacts): Answer {
  const names = (facts.product?.actives ?? []).map((each) => each.name).join(', ');
  return ofPesticide(facts, names, 'active ingredients of the product, in the Shed');
}

function yesNo(value: boolean | undefined): string | undefined {
  return value === undefined ? undefined : value ? 'yes' : 'no';
}

function amountWords({ facts }: ProductFacts, product: Product, amount: number): string {
  return formatProductAmount(amount, product.unit, facts.book.units);
}

const USED = 'what was used, in Under way';

/** A figure in the product's unit; a product that is gone has none. */
function measured({ applied, product }: ProductFacts, words: (product: Product) => string): Answer {
  if (product === undefined) return missing('the product, which is no longer in the book, and with it the unit');
  return asWritten(applied.isMeasured, words(product), USED);
}

function rate(each: ProductFacts): Answer {
  const { amount, areaSqFt } = each.applied;
  if (areaSqFt <= 0) return missing('ground that was treated');
  const per1000 = (amount * 1000) / areaSqFt;
  return measured(each, (product) => formatProductRate(per1000, product.unit, each.facts.book.units));
}

/** What one gallon or litre of the mix held. */
function concentration(each: ProductFacts): Answer {
  const { amount, mixGal } = each.applied;
  if (mixGal <= 0) return notAsked('no liquid');
  const perGal = amount / mixGal;
  return measured(each, (product) =>
    each.facts.book.units === 'us'
      ? `${amountWords(each, product, perGal)} in 1 gal of mix`
      : `${amountWords(each, product, perGal / LITRES_PER_GALLON)} in 1 L of mix`,
  );
}

function area({ applied, facts }: ProductFacts): Answer {
  const { areaSqFt } = applied;
  if (areaSqFt <= 0) return missing('ground that was treated');
  const text = `${formatArea(areaSqFt, facts.book.units)} (${formatLargeArea(areaSqFt, facts.book.units)})`;
  return asWritten(facts.isWritten, text, 'nothing is written down of this visit yet');
}

/** As the visit has it; one from before visits said so: as a plan at hand has it. */
function equipment({ facts, applied }: ProductFacts): Answer {
  if (applied.equipment.length > 0) return known(applied.equipment.join('; '));
  const tasks = facts.stop?.tasks.filter(
    (task) => task.treatmentId === applied.treatmentId && applied.zoneIds.includes(task.zoneId),
  );
  const names = new Set(tasks?.map((task) => methodName(facts.book, task.method)));
  if (names.size === 0) return missing('what it was done with: type it into the record');
  return known([...names].join('; '));
}

function analysis(each: ProductFacts): Answer {
  const printed = each.product?.analysis;
  if (printed !== undefined) {
    const { nitrogen, phosphate, potash } = printed;
    return known(`${[nitrogen, phosphate, potash].map((share) => formatShare(share)).join(', ')} (N, P2O5, K2O)`);
  }
  if (each.product?.form === 'seed') return notAsked('seed');
  return isPesticide(each) === true
    ? notAsked('no nutrients')
    : missing('printed analysis of the product, in the Shed');
}
