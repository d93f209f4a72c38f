import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { type Book, bookSchema } from '../../../core/book/index.ts';
import { buildProblem } from '../../../core/plan/problem/index.ts';
import { explainPlan } from '../../../core/plan/result/index.ts';
import { solve } from '../../../core/plan/search/index.ts';
import { SHEETS, sheetText } from '../../../core/reports/index.ts';

const OUNCES_PER_GALLON = 128;

/** A book with one lawn of a stated area and one way to treat it. Invented, not for use. */
function bookOf(areaSqFt: number, tool: object, work: object): Book {
  return v.parse(bookSchema, {
    format: 'swardway-book',
    version: 1,
    id: 'worked',
    name: 'Worked examples',
    invented: true,
    properties: [
      {
        id: 'lawn',
        name: 'Lawn',
        parking: [-89.41, 40],
        zones: [{ id: 'turf', name: 'turf', shape: { kind: 'stated', areaSqFt } }],
      },
    ],
    handMethods: [{ id: 'tool', name: 'Tool', what: 'hose', minutesPer1000SqFt: 0.2, ...tool }],
    rigs: [
      {
        id: 'rig',
        name: 'Rig',
        homeId: 'shop',
        shiftStartMin: 420,
        shiftMin: 720,
        machines: [],
        handMethodIds: ['tool'],
        bagPlaces: 50,
        payloadLb: 100_000,
      },
    ],
    fillPoints: [{ id: 'shop', name: 'Shop', what: 'shop', at: [-89.4, 40], waterGpm: 100 }],
    rounds: [{ id: 'round', name: 'Round', treatmentIds: ['work'], dates: ['2027-03-15'], rigIds: ['rig'] }],
    ...work,
  }) as Book;
}

const sprayed = (product: object, carrierGalPer1000SqFt: number, amountPer1000SqFt: number) => ({
  products: [{ id: 'product', name: 'Product', label: {}, ...product }],
  mixes: [{ id: 'mix', name: 'Mix', carrierGalPer1000SqFt, parts: [{ productId: 'product', amountPer1000SqFt }] }],
  treatments: [{ id: 'work', name: 'Work', kind: 'spray', mixId: 'mix' }],
});

/** Every ticket of the day that such a book is planned to. */
function ticketsOf(book: Book): readonly string[] {
  const problem = buildProblem(book, 'round');
  if (!problem.ok) throw new Error(problem.error.detail);
  const plan = explainPlan(book, problem.value, solve(problem.value, { seed: 1, iterations: 20 }));
  const kind = SHEETS.find((each) => each.id === 'load-tickets');
  const [day] = plan.days;
  if (kind?.scope !== 'day' || day === undefined) throw new Error('no tickets');
  expect(plan.unplaced).toEqual([]);
  return sheetText(kind.make({ scope: 'day', book, plan, day }))
    .split(/^(?=Load \d+ of \d+: )/m)
    .slice(1);
}

/** The row of a ticket that begins with a name: its cells. */
function row(ticket: string, name: string): readonly string[] {
  const line = ticket.split('\n').find((each) => each.startsWith(`${name}  `)) ?? '';
  return line.trim().split(/\s{2,}/);
}

const number = (cell: string | undefined): number => Number((cell ?? '').replace(/[^\d.]/g, ''));

describe('what stands on a ticket is the arithmetic of the handbooks', () => {
  // No source: 200 gal at 2 gal/1,000 ft2 cover 1,000 x 200 / 2 = 100,000 ft2 with 0.37 x 100 = 37 fl oz; of 130,000 ft2 are then
  // left 30,000 ft2: 60 gal with 11.1 fl oz.
  test('a large job in two tanks: product and water by the ground of each', () => {
    const tank = { drawsFrom: { kind: 'rig', capacityGal: 200 } };
    const tickets = ticketsOf(bookOf(130_000, tank, sprayed({ form: 'liquid', unit: 'fl-oz' }, 2, 0.37)));
    const found = tickets.map((ticket) => {
      const covers = number(/Must cover\s+([\d,]+) ft²/.exec(ticket)?.[1]);
      const [, rate, amount] = row(ticket, 'Product');
      const water = number(row(ticket, 'Water')[1]);
      expect(rate).toBe('0.37 fl oz/1,000 ft²');
      expect(number(amount)).toBeCloseTo(covers * 0.00037, 1);
      expect(water).toBeCloseTo(covers * 0.002 - number(amount) / OUNCES_PER_GALLON, 1);
      return { covers, ounces: number(amount) };
    });
    expect(found.toSorted((one, other) => other.covers - one.covers)).toEqual([
      { covers: 100_000, ounces: 37 },
      { covers: 30_000, ounces: 11.1 },
    ]);
  });

  // Limited Lawn and Ornamental practice questions, 2024: 3 fl oz for each gallon, a tank of 4 gal: 12 fl oz.
  test('a backpack: ounces for each gallon', () => {
    const tank = { what: 'backpack', drawsFrom: { kind: 'own-tank', capacityGal: 4 } };
    const [ticket = '', ...more] = ticketsOf(bookOf(4000, tank, sprayed({ form: 'liquid', unit: 'fl-oz' }, 1, 3)));
    expect(more).toEqual([]);
    expect(row(ticket, 'Product')).toEqual(['Product', '3 fl oz/1,000 ft²', '12 fl oz']);
    expect(row(ticket, 'In the tank when filled')).toEqual(['In the tank when filled', '4.0 gal']);
    // 12 fl oz are 0.094 gal: 3.906 gal of water, 3 gal and 116 fl oz.
    expect(row(ticket, 'Water')).toEqual(['Water', '3.9 gal', '3 gal 116 fl oz']);
  });

  // Calculating dilutions (Core Manual text): 2 lb for 100 gal, a tank of 500 gal: 10 lb.
  test('a dry product for a large tank takes up no water', () => {
    const tank = { minutesPer1000SqFt: 0.5, drawsFrom: { kind: 'rig', capacityGal: 500 } };
    const [ticket = ''] = ticketsOf(bookOf(500_000, tank, sprayed({ form: 'dry', unit: 'lb' }, 1, 0.02)));
    expect(row(ticket, 'Product')).toEqual(['Product', '0.02 lb/1,000 ft²', '10 lb']);
    expect(row(ticket, 'Water')).toEqual(['Water', '500.0 gal']);
  });

  // University of Nebraska-Lincoln, Lawn Fertilizer Calculations: 1 lb nitrogen from 28-3-6 is 3.57 lb for 1,000 ft2, 21.43 lb for 6,000.
  test('a fertiliser by its nitrogen, in bags and pounds', () => {
    const spreader = { what: 'hand-spreader', drawsFrom: { kind: 'own-hopper', capacityLb: 50 } };
    const book = bookOf(6000, spreader, {
      products: [
        {
          id: 'product',
          name: 'Product',
          form: 'granular',
          unit: 'lb',
          bagLb: 20,
          analysis: { nitrogen: 0.28, phosphate: 0.03, potash: 0.06 },
          label: {},
        },
      ],
      treatments: [
        {
          id: 'work',
          name: 'Work',
          kind: 'spread',
          productId: 'product',
          rate: { kind: 'nutrient', nutrient: 'nitrogen', lbPer1000SqFt: 1 },
        },
      ],
    });
    const [ticket = ''] = ticketsOf(book);
    // 21.43 lb are one bag of 20 lb and 1.43 lb, 1 lb 6.9 oz.
    expect(row(ticket, 'Product')).toEqual([
      'Product',
      '3.57 lb/1,000 ft²',
      '21.4 lb',
      '1 bag of 20 lb and 1 lb 6.9 oz',
    ]);
  });
});
