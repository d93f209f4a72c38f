import { expect, test } from 'vitest';
import type {
  Book,
  HandMethod,
  Head,
  Machine,
  Mix,
  Prices,
  Product,
  Rig,
  Treatment,
} from '../../../core/book/index.ts';
import { absurd } from '../../../core/checks/absurd.ts';
import { SAMPLE_NAMES, sampleBook } from '../../support/samples.ts';

/** The bounds are the program's own; common practice, no source. At a bound nothing is said, past it one warning. */

const book = sampleBook('mixed-day');
const base = { id: 'other', name: 'Other', coverage: { kind: 'whole' }, flagFirst: [], flagMin: 0 } as const;

const first = <T>(list: readonly T[]): T => {
  const [item] = list;
  if (item === undefined) throw new Error('the sample lacks it');
  return item;
};

type Change = (value: number) => Book;

const machine = (change: (value: number, machine: Machine) => Partial<Machine>): Change => {
  const [one, ...rest] = book.machines;
  return (value) => ({ ...book, machines: [{ ...one!, ...change(value, one!) }, ...rest] });
};
const head = (change: (value: number) => Partial<Head>): Change =>
  machine((value, { heads: [one, ...rest] }) => ({ heads: [{ ...one!, ...change(value) }, ...rest] }));
const compartment = (kind: 'tank' | 'hopper'): Change =>
  machine((value, { compartments }) => ({
    compartments: compartments.map((each) => {
      if (each.kind !== kind) return each;
      return each.kind === 'tank' ? { ...each, capacityGal: value } : { ...each, capacityLb: value };
    }),
  }));
const hand = (change: (value: number) => Partial<HandMethod>): Change => {
  const [one, ...rest] = book.handMethods;
  return (value) => ({ ...book, handMethods: [{ ...one!, ...change(value) }, ...rest] });
};
const rig = (change: (value: number, rig: Rig) => Partial<Rig>): Change => {
  const [one, ...rest] = book.rigs;
  return (value) => ({ ...book, rigs: [{ ...one!, ...change(value, one!) }, ...rest] });
};
const point = (change: (value: number) => Partial<Book['fillPoints'][number]>): Change => {
  const [one, ...rest] = book.fillPoints;
  return (value) => ({ ...book, fillPoints: [{ ...one!, ...change(value) }, ...rest] });
};
const mix = (change: (value: number) => Partial<Mix>): Change => {
  return (value) => ({ ...book, mixes: [{ ...first(book.mixes), ...change(value) }] });
};
const rateOf = (unit: Product['unit']): Change => {
  const products = book.products.map((each) => (each.id === 'forecrop' ? { ...each, unit } : each));
  const changed = mix((value) => ({ parts: [{ productId: 'forecrop', amountPer1000SqFt: value }] }));
  return (value) => ({ ...changed(value), products });
};
const product = (change: (value: number) => Partial<Product>): Change => {
  const [one, ...rest] = book.products;
  return (value) => ({ ...book, products: [{ ...one!, ...change(value) }, ...rest] });
};
const treatment = (make: (value: number) => Treatment): Change => {
  return (value) => ({ ...book, treatments: [make(value)] });
};
const prices = (change: (value: number) => Partial<Prices>): Change => {
  return (value) => ({ ...book, prices: { ...book.prices, ...change(value) } });
};
const seed = { ...base, kind: 'seed', productId: 'greenmeal', lbPer1000SqFt: 4, passes: 1 } as const;
const perProduct = (value: number) => ({ kind: 'product', lbPer1000SqFt: value }) as const;

const rigTank = (capacityGal: number) => ({ kind: 'rig', capacityGal, sumpGal: 0, agitated: true }) as const;
const ownTank = (capacityGal: number) => ({ kind: 'own-tank', capacityGal, sumpGal: 0, agitated: true }) as const;

/** Name, change, the bound, a figure past it, place and words. */
const FIGURES: readonly (readonly [string, Change, number, number, string, RegExp])[] = [
  ['width', machine((transitWidthIn) => ({ transitWidthIn })), 120, 121, 'machine Stand-on 35', /121 in\./],
  ['weight', machine((emptyWeightLb) => ({ emptyWeightLb })), 20_000, 69_000, 'machine Stand-on 35', /69,000 lb\./],
  ['tank', compartment('tank'), 2000, 18_500, 'machine Stand-on 35, tank', /18,500 gal\. .*more than 2,000 gal/],
  ['hopper', compartment('hopper'), 5000, 5000.5, 'machine Stand-on 35, hopper', /5,000\.5 lb\./],
  ['speed', head((speedMph) => ({ speedMph })), 20, 40, 'machine Stand-on 35, head boom', /40 mph.*more than 20 mph/],
  ['wide swath', head((swathFt) => ({ swathFt })), 60, 96, 'machine Stand-on 35, head boom', /96 ft/],
  [
    'narrow swath',
    head((swathFt) => ({ swathFt })),
    0.5,
    0.08,
    'machine Stand-on 35, head boom',
    /0\.08 ft.*less than 0\.5/,
  ],
  ['swap', head((swapMin) => ({ swapMin })), 240, 900, 'machine Stand-on 35, head boom', /900 min/],
  [
    'delivered',
    head((each) => ({ deliveredGalPer1000SqFt: each })),
    20,
    22,
    'machine Stand-on 35, head boom',
    /22 gal per/,
  ],
  ['reel', hand((each) => ({ drawsFrom: rigTank(each) })), 2000, 5000, 'hand method Hose reel 200 ft', /5,000 gal/],
  ['backpack', hand((each) => ({ drawsFrom: ownTank(each) })), 200, 400, 'hand method Hose reel 200 ft', /400 gal/],
  [
    'hand hopper',
    hand((capacityLb) => ({ drawsFrom: { kind: 'own-hopper', capacityLb } })),
    1000,
    4000,
    'hand method Hose reel 200 ft',
    /4,000 lb/,
  ],
  [
    'slow hand',
    hand((each) => ({ minutesPer1000SqFt: each })),
    60,
    190,
    'hand method Hose reel 200 ft',
    /190 min per 1,000/,
  ],
  [
    'fast hand',
    hand((each) => ({ minutesPer1000SqFt: each })),
    0.1,
    0.05,
    'hand method Hose reel 200 ft',
    /less than 0\.1/,
  ],
  ['set up', hand((setUpMin) => ({ setUpMin })), 240, 241, 'hand method Hose reel 200 ft', /241 min/],
  ['hose', hand((reachFt) => ({ reachFt })), 2000, 2400, 'hand method Hose reel 200 ft', /2,400 ft/],
  ['shift', rig((shiftMin) => ({ shiftMin })), 1080, 1100, 'rig Rig North', /18\.33 h.*more than 18 h/],
  ['overtime', rig((overtimeMin) => ({ overtimeMin })), 720, 900, 'rig Rig North', /15 h/],
  ['nurse tank', rig((nurseTankGal) => ({ nurseTankGal })), 5000, 6500, 'rig Rig North', /6,500 gal/],
  ['nurse flow', rig((nurseFlowGpm) => ({ nurseFlowGpm })), 1000, 2000, 'rig Rig North', /2,000 gal per minute/],
  ['payload', rig((payloadLb) => ({ payloadLb })), 60_000, 360_000, 'rig Rig North', /360,000 lb/],
  ['refill', rig((refillMin) => ({ refillMin })), 240, 300, 'rig Rig North', /refill: 300 min/],
  ['zone refill', rig((midZoneMin) => ({ midZoneMin })), 240, 300, 'rig Rig North', /inside a zone: 300 min/],
  ['stop', rig((stopMin) => ({ stopMin })), 240, 300, 'rig Rig North', /every stop: 300 min/],
  ['break', rig((breakMin) => ({ breakMin })), 240, 300, 'rig Rig North', /Break: 300 min/],
  ['morning', rig((morningMin) => ({ morningMin })), 240, 420, 'rig Rig North', /420 min/],
  ['evening', rig((eveningMin) => ({ eveningMin })), 240, 900, 'rig Rig North', /900 min/],
  [
    'unload',
    rig((unloadMin, { machines }) => ({ machines: machines.map((each) => ({ ...each, unloadMin })) })),
    240,
    300,
    'rig Rig North',
    /unload stand-on-35: 300 min/,
  ],
  ['water', point((waterGpm) => ({ waterGpm })), 1000, 3000, 'fill point Shop on Quarry Road', /3,000 gal per minute/],
  ['visit', point((visitMin) => ({ visitMin })), 240, 480, 'fill point Shop on Quarry Road', /480 min/],
  [
    'carrier',
    mix((each) => ({ carrierGalPer1000SqFt: each })),
    20,
    43.56,
    'mix Spring mix (invented)',
    /43\.56 gal per 1,000/,
  ],
  ['rinse', mix((rinseMin) => ({ rinseMin })), 240, 600, 'mix Spring mix (invented)', /600 min/],
  ['ounces by volume', rateOf('fl-oz'), 640, 641, 'mix Spring mix (invented)', /641 fl oz per 1,000 ft².*check.*unit/],
  ['pounds in a mix', rateOf('lb'), 100, 130.68, 'mix Spring mix (invented)', /130\.68 lb per 1,000 ft².*check.*unit/],
  ['ounces by weight', rateOf('oz'), 1600, 1700, 'mix Spring mix (invented)', /1,700 oz/],
  [
    'pounds spread',
    treatment((each) => ({ ...base, kind: 'spread', productId: 'greenmeal', rate: perProduct(each) })),
    100,
    200,
    'treatment Other',
    /Rate of Greenmeal.*200 lb per 1,000 ft²/,
  ],
  [
    'pounds of nitrogen, of which the product has a fifth',
    treatment((each) => ({
      ...base,
      kind: 'spread',
      productId: 'greenmeal',
      rate: { kind: 'nutrient', nutrient: 'nitrogen', lbPer1000SqFt: each },
    })),
    20,
    30.5,
    'treatment Other',
    // 30.5 / 0.2.
    /152\.5 lb/,
  ],
  ['seed', treatment((each) => ({ ...seed, lbPer1000SqFt: each })), 100, 174, 'treatment Other', /Seed: 174 lb/],
  [
    'starter',
    treatment((each) => ({ ...seed, starter: { productId: 'greenmeal', rate: perProduct(each), passes: 1 } })),
    100,
    101,
    'treatment Other',
    /101 lb/,
  ],
  ['passes', treatment((passes) => ({ ...base, kind: 'aerate', passes })), 20, 44, 'treatment Other', /Passes: 44\./],
  [
    'band',
    treatment((widthFt) => ({
      ...base,
      kind: 'aerate',
      passes: 1,
      coverage: { kind: 'band', widthFt, along: ['paving'] },
    })),
    60,
    96,
    'treatment Other',
    /96 ft/,
  ],
  [
    'price',
    product((pricePerUnit) => ({ pricePerUnit })),
    5000,
    9000,
    'product Forecrop 3 (invented)',
    /9,000 dollars per fl oz/,
  ],
  ['bag', product((bagLb) => ({ bagLb })), 3000, 50_000, 'product Forecrop 3 (invented)', /50,000 lb/],
  ['wage', prices((wagePerHour) => ({ wagePerHour })), 500, 2800, 'prices', /Wage: 2,800 dollars an hour/],
  ['miles', prices((perMile) => ({ perMile })), 100, 850, 'prices', /850 dollars a mile/],
  ['factor', prices((overtimeFactor) => ({ overtimeFactor })), 10, 150, 'prices', /Overtime factor: 150\./],
  ['late', prices((perDayLate) => ({ perDayLate })), 10_000, 1e21, 'prices', /1e\+21 dollars/],
  ['rig day', prices((perRigDay) => ({ perRigDay })), 10_000, 30_000, 'prices', /30,000 dollars/],
];

test.each(FIGURES)(
  '%s: at the bound nothing, past it one warning with place and remedy',
  (_name, change, at, past, where, words) => {
    expect(absurd.find(change(at))).toEqual([]);
    const found = absurd.find(change(past));
    expect(found.map((each) => [each.code, each.severity, each.where])).toEqual([['figure-absurd', 'warning', where]]);
    expect(found[0]?.message).toMatch(words);
    expect(found[0]?.message).toMatch(/check the figure and its unit\.$/);
  },
);

test.each(SAMPLE_NAMES)('nothing in %s is past a bound', (name) => {
  expect(absurd.find(sampleBook(name))).toEqual([]);
});

test('a product that is not in the book is left to the rule about references', () => {
  const parts = [{ productId: 'nothing', amountPer1000SqFt: 1e6 }];
  expect(absurd.find({ ...book, mixes: [{ ...first(book.mixes), parts }] })).toEqual([]);
});
