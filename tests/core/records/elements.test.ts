import { describe, expect, test } from 'vitest';
import type { Book, Visit } from '../../../core/book/index.ts';
import {
  type Draft,
  draftRecord,
  entriesOfDay,
  type Filled,
  missingOf,
  PRODUCT_ELEMENTS,
  type RuleId,
  VISIT_ELEMENTS,
  visitsWithoutRecord,
} from '../../../core/records/index.ts';
import { DONE, draftOf, recordBook, recordDay, SUBJECT } from './record-book.ts';

/**
 * What each rule asks for, paragraph by paragraph, and the elements that hold it. 7 CFR 110.3 as printed in the edition of 2006; the
 * commercial rule as summed up by a compliance library; the states as the sources named in docs/methods/records.md have them.
 */
const ASKED: readonly (readonly [rule: RuleId, paragraph: string, elements: readonly string[]])[] = [
  ['7-cfr-110.3', '(a)(1) brand or product name, EPA registration number', ['product', 'registration']],
  ['7-cfr-110.3', '(a)(2) total amount', ['amount']],
  ['7-cfr-110.3', '(a)(3) location, size of area, crop or site', ['location', 'area', 'site']],
  ['7-cfr-110.3', '(a)(4) month, day, year', ['date']],
  ['7-cfr-110.3', '(a)(5) name and certification number', ['applicator', 'certification']],
  ['7-cfr-110.3', 'holds for restricted-use products', ['restricted-use']],
  ['40-cfr-171.303', '1 name and address of the customer', ['customer', 'customer-address']],
  ['40-cfr-171.303', '2 location', ['location']],
  ['40-cfr-171.303', '3 size of area', ['area']],
  ['40-cfr-171.303', 'crop or site (from memory)', ['site']],
  ['40-cfr-171.303', '4 time and date', ['time', 'date']],
  ['40-cfr-171.303', '5 brand or product name', ['product']],
  ['40-cfr-171.303', '6 EPA registration number', ['registration']],
  ['40-cfr-171.303', '7 total amount for each location and application', ['amount']],
  ['40-cfr-171.303', '8 certified applicator, number, helpers', ['applicator', 'certification', 'helpers']],
  ['40-cfr-171.303', 'holds for restricted-use products', ['restricted-use']],
  ['south-dakota', 'product name and maker', ['product', 'maker']],
  ['south-dakota', 'amount with concentration', ['amount', 'concentration']],
  ['south-dakota', 'location, area, site, pest', ['location', 'area', 'site', 'target']],
  ['south-dakota', 'date, time', ['date', 'time']],
  ['south-dakota', 'wind direction and speed, temperature', ['wind-speed', 'wind-from', 'temperature']],
  ['south-dakota', 'applicator, customer', ['applicator', 'certification', 'customer', 'customer-address']],
  ['maryland', 'common name, registration number', ['product', 'common-name', 'registration']],
  ['maryland', 'amount, address, area, site, pest', ['amount', 'address', 'area', 'site', 'target']],
  ['maryland', 'date, time', ['date', 'time']],
  ['maryland', 'wind, weather, equipment', ['wind-speed', 'wind-from', 'sky', 'equipment']],
  ['maryland', 'applicator, owner or tenant', ['applicator', 'certification', 'customer', 'customer-address']],
  ['kentucky', 'name, gallons, rate, concentration', ['product', 'amount', 'mix', 'rate', 'concentration']],
  ['kentucky', 'address, area, reason, date', ['address', 'area', 'target', 'date']],
  ['kentucky', 'applicator, customer', ['applicator', 'certification', 'customer', 'customer-address']],
  ['kentucky', 'fertiliser rate and analysis', ['rate', 'analysis']],
];

const all = (draft: Draft): readonly Filled[] => [
  ...draft.elements,
  ...draft.products.flatMap((each) => each.elements),
];
const isHeld = ({ answer }: Filled): boolean => answer.kind === 'known' || answer.kind === 'not-asked';

describe('what rules ask for', () => {
  const full = all(draftOf(recordBook()));
  const bare = draftOf({ ...recordBook(), properties: [], products: [], applicators: [] }, null);
  const named = missingOf(bare);

  test.each(ASKED)('%s, %s: held, or named as missing', (rule, _paragraph, ids) => {
    for (const id of ids) {
      const elements = full.filter((each) => each.id === id);
      expect(elements.length, id).toBeGreaterThan(0);
      for (const each of elements) {
        expect(isHeld(each), id).toBe(true);
        expect(each.askedBy, id).toContain(rule);
      }
      const empty = all(bare).filter((each) => each.id === id);
      for (const each of empty) {
        const isNamed = named.some((lack) => lack.elementId === id);
        expect(isHeld(each) || isNamed, id).toBe(true);
      }
    }
  });

  test('no element says that a rule asks for it where the table above does not', () => {
    for (const { id, askedBy } of [...VISIT_ELEMENTS, ...PRODUCT_ELEMENTS])
      for (const rule of askedBy) {
        const found = ASKED.some(([asking, , ids]) => asking === rule && ids.includes(id));
        expect(found, `${rule} ${id}`).toBe(true);
      }
  });

  test('a full record lacks nothing', () => {
    expect(missingOf(draftOf(recordBook()))).toEqual([]);
  });
});

function textsOf(elements: readonly Filled[]): Readonly<Record<string, string>> {
  return Object.fromEntries(elements.map(({ id, answer }) => [id, 'text' in answer ? answer.text : answer.kind]));
}

describe('a record of what was written down', () => {
  const draft = draftOf(recordBook());

  test('holds the visit', () => {
    expect(textsOf(draft.elements)).toEqual({
      date: '2027-03-16',
      time: '9:10 am to 9:38 am',
      location: '1 Birch Lane, Fairview; 40.00000, -89.40000 (latitude, longitude)',
      address: '1 Birch Lane, Fairview',
      site: 'residential lawn',
      customer: 'A. Birch',
      'customer-address': '1 Birch Lane, Fairview',
      applicator: 'Kim Example',
      certification: 'C-1234',
      helpers: 'not-asked',
      'wind-speed': '5.0 mph',
      'wind-from': '315° NW',
      temperature: '58 °F',
      sky: 'clear',
    });
  });

  test('holds each product, with what 17 gallons on 8,000 ft2 come to', () => {
    // 0.5 fl oz in 2 gal: 0.25 fl oz in a gallon, 4.25 fl oz in 17 gal; on 8,000 ft2 that is 0.531 fl oz for 1,000.
    const [early, feed] = draft.products;
    expect(early).toMatchObject({ productId: 'early', amount: 4.25, unit: 'fl-oz', areaSqFt: 8000 });
    expect(early?.zoneIds).toEqual(['front', 'back']);
    expect(textsOf(early?.elements ?? [])).toMatchObject({
      product: 'Early 4',
      'common-name': 'Holdanil',
      registration: '0000-00-A',
      'restricted-use': 'yes',
      amount: '4.25 fl oz',
      rate: '0.531 fl oz/1,000 ft²',
      concentration: '0.25 fl oz in 1 gal of mix',
      mix: '17.0 gal',
      area: '8,000 ft² (0.184 ac)',
      target: 'crabgrass',
      equipment: 'Rider, boom',
      analysis: 'not-asked',
      reentry: 'the spray has dried',
    });
    expect(feed).toMatchObject({ amount: 12.75, unit: 'oz' });
    expect(textsOf(feed?.elements ?? [])).toMatchObject({
      registration: 'not-asked',
      'restricted-use': 'not-asked',
      analysis: '20 %, 0 %, 10 % (N, P2O5, K2O)',
    });
  });

  test('names the uncertified person who applied and the one who supervised', () => {
    const base = recordBook();
    const lee = { ...base.applicators[0]!, id: 'lee', name: 'Lee Example', licence: '', certified: false, rigIds: [] };
    const visit: Visit = { ...DONE, applicatorId: 'lee', supervisorId: 'kim', helpers: ['Pat Example'] };
    const book = { ...base, applicators: [...base.applicators, lee], visits: [visit] };
    expect(textsOf(draftOf(book).elements)).toMatchObject({
      applicator: 'Kim Example',
      certification: 'C-1234',
      helpers: 'Lee Example, Pat Example',
    });
    const alone = draftOf({ ...book, visits: [{ ...DONE, applicatorId: 'lee' }] });
    expect(missingOf(alone).map((each) => each.elementId)).toEqual(['applicator', 'certification']);
  });
});

const lacking = (book: Book, day = recordDay()): readonly string[] =>
  missingOf(draftOf(book, day)).map((each) => `${each.product === '' ? '' : `${each.product}: `}${each.elementId}`);

describe('what is missing is named', () => {
  test('without what was used, planned amounts stand and are named', () => {
    const { outcome } = DONE;
    const tasks = outcome.kind === 'done' ? outcome.tasks.map(({ usedGal: _, ...rest }) => rest) : [];
    const book = recordBook([{ ...DONE, outcome: { kind: 'done', tasks } }]);
    expect(draftOf(book).products[0]).toMatchObject({ amount: 4 });
    const figures = ['amount', 'rate', 'concentration', 'mix'];
    expect(lacking(book)).toEqual([...figures.map((id) => `Early 4: ${id}`), ...figures.map((id) => `Feed 20: ${id}`)]);
    const half = outcome.kind === 'done' ? [outcome.tasks[0]!, tasks[1]!] : [];
    expect(lacking(recordBook([{ ...DONE, outcome: { kind: 'done', tasks: half } }]))).toContain('Early 4: amount');
  });

  test('without times and weather', () => {
    const { arriveMin: _, leaveMin: __, conditions: ___, ...bare } = DONE;
    expect(lacking(recordBook([bare]))).toEqual(['time', 'wind-speed', 'wind-from', 'temperature', 'sky']);
    const still = recordBook([{ ...DONE, conditions: { windMph: 0, airF: 58, sky: 'clear' } }]);
    expect(lacking(still)).toEqual([]);
  });

  test('a product without a label, and who asks for it', () => {
    const book = recordBook();
    const plain = { id: 'early', name: 'Early 4', form: 'liquid', unit: 'fl-oz' } as const;
    const label = { registration: '', needsAgitation: false, note: '' };
    const products = [{ ...plain, pricePerUnit: 0, label, note: '' }, book.products[1]!];
    const found = missingOf(draftOf({ ...book, products }));
    expect(found.map((each) => each.elementId)).toEqual([
      'maker',
      'common-name',
      'registration',
      'restricted-use',
      'analysis',
      'reentry',
    ]);
    expect(found.find((each) => each.elementId === 'registration')).toMatchObject({
      askedBy: '7 CFR 110.3, 40 CFR 171.303, Maryland',
      lacks: expect.stringContaining('or that it is no pesticide'),
    });
  });

  test('a product that is gone keeps its amount and says that its unit is not known', () => {
    const [early] = draftOf({ ...recordBook(), products: [] }).products;
    expect(early).toBeUndefined();
    const outcome = {
      kind: 'done' as const,
      tasks: [
        { zoneId: 'front', treatmentId: 'spray', treatedSqFt: 5000, products: [{ productId: 'gone', amount: 3 }] },
      ],
    };
    const [gone] = draftOf(recordBook([{ ...DONE, outcome }])).products;
    expect(gone).toMatchObject({ name: 'gone', amount: 3 });
    expect(gone).not.toHaveProperty('unit');
    expect(gone?.elements.find((each) => each.id === 'amount')?.answer.kind).toBe('missing');
  });

  test('two applicators on one rig: nobody is guessed', () => {
    const book = recordBook();
    const [kim] = book.applicators;
    const applicators = [kim!, { ...kim!, id: 'lee', name: 'Lee Example' }];
    expect(lacking({ ...book, applicators })).toEqual(['applicator', 'certification', 'helpers']);
  });
});

describe('what there is a record of', () => {
  test('a planned stop is drawn up as planned, all figures of it named', () => {
    const draft = draftOf(recordBook([]));
    expect(draft.isWritten).toBe(false);
    expect(draft.products[0]).toMatchObject({ amount: 4, areaSqFt: 8000 });
    const ids = missingOf(draft).map((each) => each.elementId);
    expect(ids).toEqual(expect.arrayContaining(['date', 'time', 'wind-speed', 'amount', 'area']));
  });

  test('a lawn left out, and one that nobody planned, have none', () => {
    const skipped: Visit = { ...DONE, outcome: { kind: 'skipped', reason: 'gate locked' } };
    expect(draftRecord(recordBook([skipped]), SUBJECT, recordDay())).toBeNull();
    expect(draftRecord(recordBook([]), SUBJECT, null)).toBeNull();
    expect(draftRecord(recordBook([]), { ...SUBJECT, propertyId: 'oak' }, recordDay())).toBeNull();
    expect(draftRecord(recordBook([]), { ...SUBJECT, on: '2027-03-17' }, recordDay())).toBeNull();
  });
});

describe('what there is to record on a day', () => {
  const gone: Visit = { ...DONE, id: 'visit-2', propertyId: 'oak' };

  test('the stops of the plan, and what was done and is not in the plan any more', () => {
    const book = recordBook([DONE, gone, { ...gone, id: 'visit-3', rigId: 'south' }]);
    expect(entriesOfDay(book, 'spring', recordDay()).map((each) => [each.subject.propertyId, each.number])).toEqual([
      ['birch', 1],
      ['oak', null],
    ]);
    expect(entriesOfDay(book, 'autumn', { ...recordDay(), stops: [] })).toEqual([]);
  });

  test('visits without a record are those that were done', () => {
    const skipped: Visit = { ...DONE, id: 'visit-4', on: '2027-03-20', outcome: { kind: 'skipped', reason: 'dog' } };
    expect(visitsWithoutRecord(recordBook([DONE, gone, skipped])).map((each) => each.id)).toEqual([
      'visit-1',
      'visit-2',
    ]);
  });

  test('what it was done with is what the visit says, whatever plan there is', () => {
    const tasks = DONE.outcome.kind === 'done' ? DONE.outcome.tasks : [];
    const named = tasks.map((each, index) => ({ ...each, equipment: index === 0 ? ['Rider, boom'] : ['Old reel'] }));
    const book = recordBook([{ ...DONE, outcome: { kind: 'done', tasks: named } }]);
    for (const day of [recordDay(), null])
      expect(textsOf(draftOf(book, day).products[0]?.elements ?? []).equipment).toBe('Rider, boom; Old reel');
    expect(textsOf(draftOf(recordBook(), null).products[0]?.elements ?? []).equipment).toBe('missing');
  });
});
