import { ok, type Result } from '../../base/index.ts';
import { BLANKS, blank } from './blanks.ts';
import { PER_ACRE } from './boom-rules.ts';
import { type Entries, type Finding, NO_FINDING, type Rule, type Sheet, type Values } from './sheet.ts';
import { shown, shownWithUnit } from './shown.ts';
import { SOURCES } from './sources.ts';

/** What goes into a tank, how much ground it covers, and the last tank of a job. */
export const mixSheet: Sheet = {
  kind: 'mix',
  words: 'product and ground of a tank, of a gallon and of a whole job with its last tank; percent strength',
  blanks: [
    blank('tank-gal', 'volume', 'mix in a full tank that can be sprayed, gal'),
    ...[BLANKS.galPer1000, BLANKS.gpa, BLANKS.areaSqFt],
    blank('tank-area-ft2', 'area', 'ground that a full tank covers, ft²'),
    blank('job-gal', 'volume', 'mix for the whole area, gal'),
    blank('product-per-1000', 'product', 'product on 1,000 ft², in its unit', { unit: 'product/1000ft2' }),
    blank('product-per-acre', 'product', 'product on an acre, in its unit', { unit: 'product/acre' }),
    blank('product-per-gal', 'product', 'product in a gallon of mix', { unit: 'product/gal' }),
    blank('product-per-100-gal', 'product', 'product in 100 gallons of mix', { unit: 'product/100gal' }),
    blank('product-per-tank', 'product', 'product in a full tank'),
    blank('job-product', 'product', 'product for the whole area'),
    blank('ai-lb-per-acre', 'lb-per-acre', 'active ingredient wanted, lb per acre'),
    blank('ai-share', 'share', 'active ingredient in the product, a share: 80 % or 0.8'),
    BLANKS.lbPerAcre,
    blank('strength', 'share', 'wanted strength of the mix: 0.75 %'),
    blank('concentrate', 'share', 'strength of the product as it comes'),
    blank('concentrate-gal', 'volume', 'liquid product for that strength, gal'),
    blank('concentrate-lb', 'weight', 'dry product for that strength, lb'),
    blank('full-tanks', 'number', 'full tanks', { unit: 'tanks', onlyFound: true }),
    blank('last-tank-gal', 'volume', 'mix in the last tank, gal', { onlyFound: true }),
    blank('last-tank-product', 'product', 'product in the last tank', { onlyFound: true }),
  ],
  rules,
  after: lastTank,
};

function rules({ productUnit = 'fl-oz' }: Entries): readonly Rule[] {
  const perGallon = (left: string, factor: number, above: readonly string[]): Rule => ({
    ...{ left, factor, above, below: [] },
    source: SOURCES.dilutions,
  });
  const strength: Rule =
    productUnit === 'fl-oz'
      ? {
          left: 'concentrate-gal',
          factor: 1,
          above: ['tank-gal', 'strength'],
          below: ['concentrate'],
          source: SOURCES.army,
        }
      : {
          left: 'concentrate-lb',
          factor: 8.34,
          above: ['tank-gal', 'strength'],
          below: ['concentrate'],
          source: SOURCES.army,
        };
  return [
    PER_ACRE,
    { ...PER_ACRE, left: 'product-per-acre', above: ['product-per-1000'] },
    { left: 'tank-area-ft2', factor: 1000, above: ['tank-gal'], below: ['gal-per-1000'], source: SOURCES.arithmetic },
    {
      left: 'job-gal',
      factor: 1,
      over: 1000,
      above: ['gal-per-1000', 'area-ft2'],
      below: [],
      source: SOURCES.arithmetic,
    },
    {
      left: 'product-per-gal',
      factor: 1,
      above: ['product-per-1000'],
      below: ['gal-per-1000'],
      source: SOURCES.turfTrade,
    },
    perGallon('product-per-100-gal', 100, ['product-per-gal']),
    perGallon('product-per-tank', 1, ['product-per-gal', 'tank-gal']),
    {
      left: 'job-product',
      factor: 1,
      over: 1000,
      above: ['product-per-1000', 'area-ft2'],
      below: [],
      source: SOURCES.arithmetic,
    },
    { left: 'lb-per-acre', factor: 1, above: ['ai-lb-per-acre'], below: ['ai-share'], source: SOURCES.whatWhenHow },
    strength,
  ];
}

/** Whole tanks first; the last one is mixed for the ground that is left. */
function lastTank(values: Values, { productUnit = 'fl-oz' }: Entries): Result<Finding> {
  const tankGal = values['tank-gal'];
  const jobGal = values['job-gal'];
  if (tankGal === undefined || jobGal === undefined) return ok(NO_FINDING);
  const full = Math.floor(jobGal / tankGal + 1e-9);
  const left = Math.max(0, jobGal - full * tankGal);
  const lastGal = left < 1e-6 * tankGal ? 0 : left;
  const perGal = values['product-per-gal'];
  const product: Values = perGal === undefined ? {} : { 'last-tank-product': perGal * lastGal };
  const words = perGal === undefined ? '' : ` with ${shownWithUnit(perGal * lastGal, productUnit)}`;
  return ok({
    values: { 'full-tanks': full, 'last-tank-gal': lastGal, ...product },
    lines: [`${shown(jobGal)} gal = ${full} × ${shown(tankGal)} gal + a last tank of ${shown(lastGal)} gal${words}`],
    used: [],
    sources: [SOURCES.arithmetic],
  });
}
