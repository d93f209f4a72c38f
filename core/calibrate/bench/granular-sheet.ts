import { ok, type Result } from '../../base/index.ts';
import { BLANKS, blank } from './blanks.ts';
import { PRODUCT_PER_ACRE } from './boom-rules.ts';
import { type Finding, NO_FINDING, type Sheet, type Values } from './sheet.ts';
import { shown } from './shown.ts';
import { SOURCES } from './sources.ts';

/** Pounds of a dry product from its analysis, for an area, and the bags to buy. */
export const granularSheet: Sheet = {
  kind: 'granular',
  words: 'pounds of a dry product from nutrient or active ingredient and its analysis; total, bags, rate of one pass',
  blanks: [
    blank('nutrient-lb-per-1000', 'lb-per-1000', 'nutrient wanted, lb per 1,000 ft²'),
    blank('nutrient-share', 'share', 'nutrient in the printed analysis: 20 % or 0.2'),
    blank('ai-lb-per-acre', 'lb-per-acre', 'active ingredient wanted, lb per acre'),
    blank('ai-share', 'share', 'active ingredient in the product, a share: 80 % or 0.8'),
    ...[BLANKS.lbPer1000, BLANKS.lbPerAcre, BLANKS.areaSqFt],
    blank('total-lb', 'weight', 'product for the area, lb'),
    blank('bag-lb', 'weight', 'pounds in a bag', { most: 4000 }),
    ...[BLANKS.passes, BLANKS.lbPerPass],
    blank('bags', 'number', 'bags to buy', { unit: 'bags', onlyFound: true }),
  ],
  rules: () => [
    {
      left: 'lb-per-1000',
      factor: 1,
      above: ['nutrient-lb-per-1000'],
      below: ['nutrient-share'],
      source: SOURCES.umass,
    },
    { left: 'lb-per-acre', factor: 1, above: ['ai-lb-per-acre'], below: ['ai-share'], source: SOURCES.army },
    PRODUCT_PER_ACRE,
    {
      left: 'total-lb',
      factor: 1,
      over: 1000,
      above: ['lb-per-1000', 'area-ft2'],
      below: [],
      source: SOURCES.nebraska,
    },
    { left: 'lb-per-1000-per-pass', factor: 1, above: ['lb-per-1000'], below: ['passes'], source: SOURCES.umass },
  ],
  after: bagsToBuy,
};

function bagsToBuy(values: Values): Result<Finding> {
  const totalLb = values['total-lb'];
  const bagLb = values['bag-lb'];
  if (totalLb === undefined || bagLb === undefined) return ok(NO_FINDING);
  const bags = Math.ceil(totalLb / bagLb - 1e-9);
  const lines = [`bags: ${shown(totalLb)} / ${shown(bagLb)} = ${shown(totalLb / bagLb)}, so ${shown(bags)}`];
  return ok({ values: { bags }, lines, used: ['bag-lb'], sources: [SOURCES.arithmetic] });
}
