import { describe, expect, it } from 'vitest';
import type { Book, Treatment } from '../../../core/book/index.ts';
import { productRates } from '../../../core/demand/index.ts';
import { byId, sampleBook } from '../reach/sample.ts';

const rates = (treatmentId: string, change: Partial<Treatment> = {}, book: Book = sampleBook()) =>
  productRates(book, { ...byId(book.treatments, treatmentId), ...change } as Treatment).map((each) => [
    each.productId,
    each.amountPer1000SqFt,
  ]);

describe('what one application puts down on 1,000 ft2', () => {
  it('spraying: the parts of the mix', () => {
    expect(rates('spray')).toEqual([
      ['liquid', 0.4],
      ['powder', 0.2],
    ]);
  });

  it('spraying a mix of several: the treatment’s own, none that the book lacks', () => {
    const book = sampleBook();
    const parts = [{ productId: 'gone', amountPer1000SqFt: 1 }, ...byId(book.mixes, 'mix').parts];
    const [mix] = book.mixes;
    if (mix === undefined) throw new Error('the sample has no mix');
    const other = { ...mix, id: 'other', parts: [{ productId: 'powder', amountPer1000SqFt: 9 }] };
    const with2 = { ...book, mixes: [other, { ...mix, parts }] };
    expect(rates('spray', {}, with2)).toEqual([
      ['liquid', 0.4],
      ['powder', 0.2],
    ]);
    expect(rates('spray', { mixId: 'unknown' } as Partial<Treatment>, with2)).toEqual([]);
  });

  it('spreading by a nutrient: 0.9 lb of it from a product that holds 20 % is 4.5 lb', () => {
    const [[productId, amount] = []] = rates('feed');
    expect(productId).toBe('feed');
    expect(amount).toBeCloseTo(4.5, 12);
  });

  it('a dry product measured in ounces: 16 for each pound', () => {
    const rate = { kind: 'product', lbPer1000SqFt: 2 } as const;
    expect(rates('feed', { productId: 'powder', rate } as Partial<Treatment>)).toEqual([['powder', 32]]);
  });

  it('nothing for a product measured by volume, without the analysis asked for, or that the book lacks', () => {
    const pounds = { kind: 'product', lbPer1000SqFt: 1 } as const;
    const potash = { kind: 'nutrient', nutrient: 'potash', lbPer1000SqFt: 1 } as const;
    expect(rates('feed', { productId: 'liquid', rate: pounds } as Partial<Treatment>)).toEqual([]);
    expect(rates('feed', { rate: potash } as Partial<Treatment>)).toEqual([]);
    expect(rates('feed', { productId: 'gone' } as Partial<Treatment>)).toEqual([]);
  });

  it('seeding: the seed, and the starter where there is one', () => {
    expect(rates('sow')).toEqual([
      ['fescue', 6],
      ['feed', 3],
    ]);
    const { starter: _, ...plain } = byId(sampleBook().treatments, 'sow') as Treatment & { starter?: unknown };
    expect(productRates(sampleBook(), plain as Treatment)).toEqual([{ productId: 'fescue', amountPer1000SqFt: 6 }]);
  });

  it('aerating puts down nothing', () => {
    expect(rates('cores')).toEqual([]);
  });
});
