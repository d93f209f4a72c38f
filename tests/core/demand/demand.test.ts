import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book, Label, Mix, Product, Treatment } from '../../../core/book/index.ts';
import { type DemandQuestion, demandFor, totalDemand } from '../../../core/demand/index.ts';
import { byId, measured, sampleBook } from '../reach/sample.ts';

type Change = {
  readonly book?: Book;
  readonly areaSqFt?: number | null;
  readonly plannable?: boolean;
  readonly bandSqFt?: number | null;
  readonly treatment?: Treatment;
};

function question(treatmentId: string, change: Change = {}): DemandQuestion {
  const book = change.book ?? sampleBook();
  const property = byId(book.properties, 'elm');
  const zone = byId(property.zones, 'front');
  const areaSqFt = change.areaSqFt === undefined ? 5000 : change.areaSqFt;
  return {
    book,
    property,
    zone,
    zoneMeasure: measured(zone, areaSqFt, change.plannable ?? true),
    treatment: change.treatment ?? byId(book.treatments, treatmentId),
    bandSqFt: change.bandSqFt ?? null,
  };
}

function withLabel(productId: string, label: Partial<Label>): Book {
  const book = sampleBook();
  const relabel = (each: Product): Product =>
    each.id === productId ? { ...each, label: { ...each.label, ...label } } : each;
  return { ...book, products: book.products.map(relabel) };
}

function covering(treatmentId: string, coverage: Treatment['coverage'], book = sampleBook()): Treatment {
  return { ...byId(book.treatments, treatmentId), coverage };
}

describe('spraying', () => {
  it('takes carrier and products by the thousand square feet, unrounded', () => {
    const { demands, issues } = demandFor(question('spray', { areaSqFt: 5001 }));
    expect(issues).toEqual([]);
    expect(demands).toHaveLength(1);
    const [demand] = demands;
    expect(demand).toMatchObject({
      what: 'spray',
      materialId: 'mix',
      step: 0,
      passes: 1,
      weightLb: 0,
      treatedSqFt: 5001,
    });
    expect(demand?.volumeGal).toBeCloseTo(2.5005, 12);
    expect(demand?.products.map((each) => [each.productId, each.unit])).toEqual([
      ['liquid', 'fl-oz'],
      ['powder', 'oz'],
    ]);
    expect(demand?.products[0]?.amount).toBeCloseTo(2.0004, 12);
    expect(demand?.products[1]?.amount).toBeCloseTo(1.0002, 12);
  });

  it('says which mix or product is missing', () => {
    const book = sampleBook();
    const noMix = demandFor(question('spray', { book: { ...book, mixes: [] } }));
    const noProduct = demandFor(question('spray', { book: { ...book, products: [] } }));
    for (const result of [noMix, noProduct]) {
      expect(result.demands).toEqual([]);
      expect(result.issues.map((each) => [each.code, each.severity])).toEqual([['reference-missing', 'error']]);
      expect(result.issues[0]?.where).toBe('property Elm 1, zone front');
    }
    expect(noMix.issues[0]?.message).toContain('mix');
    expect(noProduct.issues[0]?.message).toContain('liquid');
  });
});

describe('coverage', () => {
  it('spots take their share of ground, water and product at the same rate', () => {
    const treatment = covering('spray', { kind: 'spot', share: 0.1 });
    const [demand] = demandFor(question('spray', { treatment })).demands;
    expect(demand?.treatedSqFt).toBeCloseTo(500, 12);
    expect(demand?.volumeGal).toBeCloseTo(0.25, 12);
    expect(demand?.products[0]?.amount).toBeCloseTo(0.2, 12);
  });

  it('the label counts on the sprayed ground: spots do not thin a rate that is over it', () => {
    const treatment = covering('spray', { kind: 'spot', share: 0.1 });
    const book = withLabel('liquid', { mostPerApplication: 0.39 });
    const result = demandFor(question('spray', { treatment, book }));
    expect(result.demands).toEqual([]);
    expect(result.issues.map((each) => each.code)).toEqual(['label-limit-broken']);
  });

  it('a band takes its strip, at most the zone, and nothing without an edge', () => {
    const treatment = covering('feed', { kind: 'band', widthFt: 2, along: ['paving'] });
    const strip = demandFor(question('feed', { treatment, bandSqFt: 240 }));
    expect(strip.demands[0]).toMatchObject({ treatedSqFt: 240 });
    expect(strip.demands[0]?.weightLb).toBeCloseTo(4.5 * 0.24, 12);
    expect(demandFor(question('feed', { treatment, bandSqFt: 9999 })).demands[0]?.treatedSqFt).toBe(5000);
    const none = demandFor(question('feed', { treatment, bandSqFt: 0 }));
    expect(none.demands).toEqual([]);
    expect(none.issues.map((each) => [each.code, each.severity])).toEqual([['band-without-edge', 'note']]);
  });
});

describe('spreading', () => {
  it('by nutrient: 0.9 lb N from 20 % is 4.5 lb for 1,000 ft2', () => {
    const [demand] = demandFor(question('feed')).demands;
    expect(demand).toMatchObject({ what: 'spread', materialId: 'feed', volumeGal: 0, passes: 1 });
    expect(demand?.weightLb).toBeCloseTo(22.5, 12);
    expect(demand?.products).toEqual([{ productId: 'feed', amount: demand?.weightLb, unit: 'lb' }]);
  });

  it('by product, measured in ounces: pounds in the hopper, ounces of product', () => {
    const book = sampleBook();
    const rate = { kind: 'product', lbPer1000SqFt: 2 } as const;
    const treatment: Treatment = { ...covering('feed', { kind: 'whole' }), kind: 'spread', productId: 'powder', rate };
    const [demand] = demandFor(question('feed', { treatment, book })).demands;
    expect(demand?.weightLb).toBeCloseTo(10, 12);
    expect(demand?.products).toEqual([{ productId: 'powder', amount: 160, unit: 'oz' }]);
  });

  it('names the analysis that is missing and the product that is no dry one', () => {
    const potash = { kind: 'nutrient', nutrient: 'potash', lbPer1000SqFt: 1 } as const;
    const pounds = { kind: 'product', lbPer1000SqFt: 1 } as const;
    const base = covering('feed', { kind: 'whole' });
    const lacking: Treatment = { ...base, kind: 'spread', productId: 'feed', rate: potash };
    const unanalysed: Treatment = { ...base, kind: 'spread', productId: 'fescue', rate: potash };
    const wet: Treatment = { ...base, kind: 'spread', productId: 'liquid', rate: pounds };
    const gone: Treatment = { ...base, kind: 'spread', productId: 'gone', rate: pounds };
    const results = [lacking, unanalysed, wet, gone].map((treatment) => demandFor(question('feed', { treatment })));
    expect(results.map((each) => each.issues.map((found) => found.code))).toEqual([
      ['analysis-missing'],
      ['analysis-missing'],
      ['product-not-dry'],
      ['reference-missing'],
    ]);
    expect(results.every((each) => each.demands.length === 0)).toBe(true);
    expect(results.map((each) => each.issues[0]?.message)).toEqual([
      'Feed is to be spread by its potash, but its analysis names none. Enter the printed analysis or a product rate.',
      'Fescue is to be spread by its potash, but its analysis names none. Enter the printed analysis or a product rate.',
      'Liquid is measured in fluid ounces and cannot be spread by weight. Choose a dry product.',
      'Treatment Feed takes product gone, which the book does not have. Choose one from the shed.',
    ]);
  });
});

describe('aerating and seeding', () => {
  it('aerating takes ground and passes only', () => {
    const [demand] = demandFor(question('cores')).demands;
    expect(demand).toMatchObject({
      what: 'aerate',
      materialId: '',
      treatedSqFt: 5000,
      volumeGal: 0,
      weightLb: 0,
      passes: 2,
    });
    expect(demand?.products).toEqual([]);
  });

  it('seed and starter are two steps; the rate is for all passes together', () => {
    const { demands } = demandFor(question('sow'));
    expect(demands.map((each) => [each.step, each.what, each.materialId, each.passes])).toEqual([
      [0, 'seed', 'fescue', 2],
      [1, 'spread', 'feed', 1],
    ]);
    expect(demands[0]?.weightLb).toBeCloseTo(30, 12);
    expect(demands[1]?.weightLb).toBeCloseTo(15, 12);
  });

  it('a starter over its label leaves the seed, and says so', () => {
    const { demands, issues } = demandFor(question('sow', { book: withLabel('feed', { mostPerApplication: 2.9 }) }));
    expect(demands.map((each) => each.what)).toEqual(['seed']);
    expect(issues.map((each) => each.code)).toEqual(['label-limit-broken']);
  });
});

describe('label limits', () => {
  it('shows the arithmetic of a broken rate', () => {
    const { demands, issues } = demandFor(
      question('spray', { book: withLabel('liquid', { mostPerApplication: 0.32 }) }),
    );
    expect(demands).toEqual([]);
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({
      code: 'label-limit-broken',
      severity: 'error',
      where: 'property Elm 1, zone front',
    });
    expect(issues[0]?.message).toContain('0.4 fl oz per 1,000 ft² asked, 0.32 fl oz allowed in an application');
    expect(issues[0]?.message).toContain('25 % too much');
  });

  it.each([
    [{ mostPerApplication: 0.4 }, 0],
    [{ mostPerApplication: 0.399 }, 1],
    [{ mostPerYear: 0.4 }, 0],
    [{ mostPerYear: 0.3 }, 1],
    [{ leastCarrierGalPer1000SqFt: 0.5 }, 0],
    [{ leastCarrierGalPer1000SqFt: 0.51 }, 1],
    [{ mostCarrierGalPer1000SqFt: 0.5 }, 0],
    [{ mostCarrierGalPer1000SqFt: 0.49 }, 1],
  ])('%o: %i broken', (label, count) => {
    const result = demandFor(question('spray', { book: withLabel('liquid', label) }));
    expect(result.issues.filter((each) => each.code === 'label-limit-broken')).toHaveLength(count);
    expect(result.demands).toHaveLength(1 - count);
  });

  it('a limit met exactly is kept in spite of binary fractions', () => {
    const book = withLabel('liquid', { mostPerApplication: 0.3 });
    const parts = [0.1, 0.2].map((amountPer1000SqFt) => ({ productId: 'liquid', amountPer1000SqFt }));
    const mixes = book.mixes.map((each): Mix => ({ ...each, parts }));
    expect(0.1 + 0.2).toBeGreaterThan(0.3);
    expect(demandFor(question('spray', { book: { ...book, mixes } })).issues).toEqual([]);
  });

  it('a product named twice in a mix counts with its sum', () => {
    const book = withLabel('liquid', { mostPerApplication: 0.5 });
    const parts = [0.3, 0.3].map((amountPer1000SqFt) => ({ productId: 'liquid', amountPer1000SqFt }));
    const mixes = book.mixes.map((each): Mix => ({ ...each, parts }));
    expect(demandFor(question('spray', { book: { ...book, mixes } })).issues.map((each) => each.code)).toEqual([
      'label-limit-broken',
    ]);
  });
});

describe('zones without an area', () => {
  it('give demands of zero, so that the work is not lost, and a warning', () => {
    const result = demandFor(question('sow', { areaSqFt: null, plannable: false }));
    expect(result.demands.map((each) => [each.what, each.treatedSqFt, each.weightLb])).toEqual([
      ['seed', 0, 0],
      ['spread', 0, 0],
    ]);
    expect(result.issues.map((each) => [each.code, each.severity])).toEqual([['zone-not-measured', 'warning']]);
  });

  it('a faulty outline keeps its figures with the warning; a zone of 0 ft2 needs nothing', () => {
    const faulty = demandFor(question('spray', { plannable: false }));
    expect(faulty.demands).toHaveLength(1);
    expect(faulty.issues.map((each) => each.code)).toEqual(['zone-not-measured']);
    expect(demandFor(question('spray', { areaSqFt: 0 }))).toEqual({ demands: [], issues: [] });
  });
});

describe('properties', () => {
  const treatmentId = fc.constantFrom('spray', 'feed', 'cores', 'sow');
  const areaSqFt = fc.double({ min: 1, max: 1e6, noNaN: true });

  it('twice the ground takes twice of everything', () => {
    fc.assert(
      fc.property(treatmentId, areaSqFt, (id, area) => {
        const once = totalDemand(demandFor(question(id, { areaSqFt: area })).demands);
        const twice = totalDemand(demandFor(question(id, { areaSqFt: 2 * area })).demands);
        expect(twice.treatedSqFt).toBeCloseTo(2 * once.treatedSqFt, 6);
        expect(twice.volumeGal).toBeCloseTo(2 * once.volumeGal, 6);
        expect(twice.weightLb).toBeCloseTo(2 * once.weightLb, 6);
        once.products.forEach((each, index) => {
          expect(twice.products[index]?.amount).toBeCloseTo(2 * each.amount, 6);
        });
      }),
    );
  });

  it('spots and the rest of the zone make up the whole', () => {
    fc.assert(
      fc.property(areaSqFt, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (area, share) => {
        const part = (size: number): number => {
          const treatment = covering('spray', { kind: 'spot', share: size });
          return totalDemand(demandFor(question('spray', { areaSqFt: area, treatment })).demands).volumeGal;
        };
        const whole = totalDemand(demandFor(question('spray', { areaSqFt: area })).demands).volumeGal;
        expect((part(share) + part(1 - share)) / whole).toBeCloseTo(1, 9);
      }),
    );
  });
});
