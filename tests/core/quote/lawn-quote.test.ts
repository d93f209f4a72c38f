import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { type Book, bookSchema } from '../../../core/book/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { lawnQuote } from '../../../core/quote/index.ts';

/** An invented company with one lawn of 10,000 ft2, a sprayer with a boom of 8.25 ft at 4 mph that loses nothing. */
function company(more: object = {}): Book {
  return v.parse(bookSchema, {
    format: 'swardway-book',
    version: 1,
    id: 'invented',
    name: 'Invented company',
    invented: true,
    prices: { wagePerHour: 30, perMile: 0.8 },
    estimate: {
      steps: [{ upToSqFt: null, dollarsPer1000SqFt: 6 }],
      roundsPerSeason: 5,
      overheadShare: 0.2,
      carrierDollarsPerGal: 0.01,
      milesPerVisit: 2,
      drivingMinPerVisit: 6,
    },
    properties: [
      {
        id: 'elm',
        name: 'Elm',
        parking: [-89.4, 40],
        zones: [{ id: 'lawn', name: 'lawn', shape: { kind: 'stated', areaSqFt: 10_000 } }],
      },
    ],
    machines: [
      {
        id: 'rider',
        name: 'Rider',
        what: 'ride-on',
        transitWidthIn: 35,
        emptyWeightLb: 700,
        maxSlopeDeg: 15,
        compartments: [{ kind: 'tank', id: 'tank', name: 'tank', capacityGal: 20 }],
        heads: [
          {
            id: 'boom',
            name: 'boom',
            purpose: 'spray',
            swathFt: 8.25,
            speedMph: 4,
            fieldEfficiency: 1,
            compartmentIds: ['tank'],
          },
        ],
      },
    ],
    rigs: [
      {
        id: 'north',
        name: 'North',
        homeId: 'shop',
        shiftStartMin: 420,
        shiftMin: 480,
        machines: [{ machineId: 'rider', ride: 'ramp', unloadMin: 2, loadMin: 3 }],
        stopMin: 4,
        payloadLb: 2000,
      },
    ],
    fillPoints: [{ id: 'shop', name: 'Shop', what: 'shop', at: [-89.4, 40] }],
    products: [{ id: 'wet', name: 'Wet', form: 'liquid', unit: 'fl-oz', pricePerUnit: 0.5, label: {} }],
    mixes: [
      { id: 'mix', name: 'Mix', carrierGalPer1000SqFt: 0.4, parts: [{ productId: 'wet', amountPer1000SqFt: 1.5 }] },
    ],
    treatments: [{ id: 'spray', name: 'Spray', kind: 'spray', mixId: 'mix' }],
    ...more,
  }) as Book;
}

function quote(book: Book) {
  const [property] = book.properties;
  if (property === undefined) throw new Error('no lawn');
  return lawnQuote(book, property, measureProperty(property));
}

describe('lawnQuote', () => {
  /**
   * By hand: capacity 4 x 8.25 / 8.25 = 4 acres an hour, so 10,000 / 43,560 / 4 h = 3.4435 min of treating; with 5 min of
   * unloading and loading, 4 at the stop and 6 of driving 18.4435 min; at $30 an hour $9.2218. Miles 2 x 0.80 = $1.60.
   * Product 15 fl oz x 0.50 = $7.50. Carrier 4 gal x 0.01 = $0.04. Together $18.3618, overhead a fifth: $3.6724.
   */
  const minutes = (10_000 / 43_560 / 4) * 60 + 15;
  const direct = (minutes / 60) * 30 + 1.6 + 7.5 + 0.04;

  it('adds up work, miles, product, carrier and overhead', () => {
    const [visit] = quote(company()).visits;
    expect(visit?.minutes).toBeCloseTo(minutes, 9);
    expect(visit?.lines.map((each) => each.what)).toEqual(['Work', 'Miles', 'Wet', 'Carrier', 'Overhead']);
    expect(visit?.lines.map((each) => Math.round(each.dollars * 100) / 100)).toEqual([9.22, 1.6, 7.5, 0.04, 3.67]);
    expect(visit?.costDollars).toBeCloseTo(direct * 1.2, 9);
  });

  it('shows the arithmetic of each line', () => {
    expect(quote(company()).visits[0]?.lines.map((each) => each.arithmetic)).toEqual([
      '3.44 treating + 5 set-up + 4 at the stop + 6 driving = 18.44 min × $30.00 per hour',
      '2 mi × $0.80',
      '15 fl oz × $0.50 per fl oz',
      '4.0 gal × $0.01 per gal',
      '20 % of $18.36',
    ]);
  });

  it('holds cost against price, for a visit and for the season', () => {
    const found = quote(company());
    expect(found.price?.dollars).toBe(60);
    expect(found.visits[0]?.marginDollars).toBeCloseTo(60 - direct * 1.2, 9);
    expect(found.visits[0]?.marginShare).toBeCloseTo(1 - (direct * 1.2) / 60, 9);
    expect(found.season).toMatchObject({ visits: 5, price: { dollars: 300, arithmetic: '5 × $60.00' } });
    expect(found.season?.cost.dollars).toBeCloseTo(5 * direct * 1.2, 9);
    expect(found.season?.marginDollars).toBeCloseTo(300 - 5 * direct * 1.2, 9);
  });

  it('has no prices of its own: without an estimate there is a cost and no price', () => {
    const { estimate: _, ...bare } = company();
    const found = quote(bare as Book);
    expect([found.price, found.visits[0]?.priceDollars, found.visits[0]?.marginShare]).toEqual([null, null, null]);
    expect(found.season?.price).toBeNull();
  });

  it('says so where something was not entered', () => {
    const words = quote(company({ prices: {}, estimate: {} })).visits[0]?.lines.map((each) => each.arithmetic) ?? [];
    expect(words[0]).toContain('no wage entered');
    expect(words[1]).toBe('no miles entered');
    expect(words[3]).toContain('no price entered');
  });

  it('pays the whole crew, and takes the rig that does it for less', () => {
    const [rig] = company().rigs;
    const crowd = { ...rig, id: 'crowd', name: 'Crowd', crew: 3 };
    expect(quote(company({ rigs: [crowd, rig] })).visits[0]?.work).toMatchObject({ rigName: 'North', crew: 1 });
    const [visit] = quote(company({ rigs: [crowd] })).visits;
    expect(visit?.lines[0]?.dollars).toBeCloseTo((minutes / 60) * 30 * 3, 9);
    expect(visit?.lines[0]?.arithmetic).toContain('crew of 3');
  });

  it('keeps what cannot be done, with the reason', () => {
    const steep = company().properties.map((each) => ({
      ...each,
      zones: each.zones.map((zone) => ({ ...zone, slopeDeg: 20 })),
    }));
    const [visit] = quote(company({ properties: steep })).visits;
    expect(visit?.work.zones[0]?.chosen).toBeNull();
    expect(visit?.work.remarks.join()).toMatch(/lawn: .*20/);
    expect(visit?.work.treatingMin).toBe(0);
  });

  it('takes only the treatments of a usual season where they are named, and their mean', () => {
    const treatments = [
      { id: 'spray', name: 'Spray', kind: 'spray', mixId: 'mix' },
      { id: 'again', name: 'Again', kind: 'spray', mixId: 'mix' },
      { id: 'rare', name: 'Rare', kind: 'spray', mixId: 'mix' },
    ];
    const found = quote(company({ treatments, estimate: { treatmentIds: ['spray', 'again'], roundsPerSeason: 4 } }));
    expect(found.visits.map((each) => each.work.treatmentId)).toEqual(['spray', 'again']);
    expect(found.season?.cost.arithmetic).toContain('mean of 2 treatments');
  });
});
