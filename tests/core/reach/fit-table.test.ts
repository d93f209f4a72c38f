import { describe, expect, it } from 'vitest';
import type { PropertyMeasure } from '../../../core/measure/index.ts';
import { fitTable, machineFullLb, methodsFor, treatingMinutes } from '../../../core/reach/index.ts';
import { quantity } from '../../../core/units/index.ts';
import { BOOM, byId, hand, measured, sampleBook, TINES } from './sample.ts';

const book = sampleBook();
const spray = byId(book.treatments, 'spray');
const measures: readonly PropertyMeasure[] = book.properties.map((property) => ({
  propertyId: property.id,
  name: property.name,
  zones: property.zones.map((zone) => measured(zone, zone.id === 'front' ? 5000 : 3000)),
  exclusionsSqFt: quantity<'ft2'>(0),
  treatableSqFt: quantity<'ft2'>(8000),
  errorSqFt: null,
  issues: [],
}));
const site = { farthestFt: (_: unknown, zone: { readonly id: string }) => (zone.id === 'front' ? 60 : 90) };

describe('methodsFor', () => {
  it('lists heads of the purpose, then hand methods that do such work', () => {
    expect(methodsFor(book, spray)).toEqual([BOOM, hand('reel'), hand('pack'), hand('lance')]);
    expect(methodsFor(book, byId(book.treatments, 'cores'))).toEqual([TINES]);
    expect(methodsFor(book, byId(book.treatments, 'sow'))).toEqual([hand('crank')]);
  });
});

describe('treatingMinutes', () => {
  it('a machine by its field capacity: 4 mph x 8 ft x 0.65 / 8.25 acres an hour', () => {
    expect(treatingMinutes(book, BOOM, 5000)).toBeCloseTo((5000 / 43560 / ((4 * 8 * 0.65) / 8.25)) * 60, 10);
  });

  it('a hand method by its minutes for 1,000 ft2; passes multiply; unknown methods have none', () => {
    expect(treatingMinutes(book, hand('reel'), 5000)).toBe(10);
    expect(treatingMinutes(book, hand('reel'), 5000, 3)).toBe(30);
    expect(treatingMinutes(book, hand('gone'), 5000)).toBeNull();
  });

  it('a hose also by its handling: seconds on the zone, and for each 50 ft of the way that are begun', () => {
    const handMethods = book.handMethods.map((each) => ({ ...each, standSec: 30, moveSec: 15 }));
    const handled = { ...book, handMethods };
    expect(treatingMinutes(handled, hand('reel'), 5000, 1, 120)).toBeCloseTo(10 + (30 + 3 * 15) / 60, 9);
    expect(treatingMinutes(handled, hand('reel'), 5000, 1, Number.POSITIVE_INFINITY)).toBeCloseTo(10.5, 9);
    expect(treatingMinutes(handled, BOOM, 5000, 1, 120)).toBe(treatingMinutes(book, BOOM, 5000));
  });
});

describe('fitTable', () => {
  it('has zones as rows, methods as columns, minutes where it fits and the reason where not', () => {
    const table = fitTable(book, measures, spray, byId(book.rigs, 'ash'), site);
    expect(table.columns.map((each) => each.name)).toEqual(['Heron, boom', 'reel', 'backpack', 'lance']);
    expect(table.rows.map((each) => each.name)).toEqual(['Elm 1, front', 'Elm 1, back']);
    const reasons = table.rows.map((row) => row.cells.map((cell) => cell.answer.reason));
    expect(reasons).toEqual([
      ['fits', 'fits', 'fits', 'hose-too-short'],
      ['gate-tight', 'hose-too-short', 'fits', 'hose-too-short'],
    ]);
    for (const cell of table.rows.flatMap((row) => row.cells)) {
      expect(cell.minutes === null).toBe(!cell.answer.can);
    }
    expect(table.rows[0]?.cells[1]?.minutes).toBe(10);
    expect(table.rows[1]?.cells[2]?.minutes).toBe(18);
  });

  it('counts the share of spots, ground handed in, and passes', () => {
    const spots = fitTable(book, measures, { ...spray, coverage: { kind: 'spot', share: 0.1 } }, null, site);
    expect(spots.rows[0]).toMatchObject({ treatedSqFt: 500 });
    expect(spots.rows[0]?.cells[1]?.minutes).toBe(1);
    const band = fitTable(book, measures, spray, null, { ...site, treatedSqFt: () => 700 });
    expect(band.rows[0]?.cells[1]?.minutes).toBeCloseTo(1.4, 12);
    const cores = fitTable(book, measures, byId(book.treatments, 'cores'), null, site);
    expect(cores.rows[0]?.cells[0]?.minutes).toBeCloseTo(treatingMinutes(book, TINES, 10_000) ?? 0, 10);
  });

  it('leaves out what was not measured, and hears of wet ground', () => {
    expect(fitTable(book, [], spray, null, site).rows).toEqual([]);
    const soft = {
      ...book,
      properties: book.properties.map((each) => ({
        ...each,
        zones: each.zones.map((zone) => ({ ...zone, wetLimitLb: 600 })),
      })),
    };
    const wet = fitTable(soft, measures, spray, null, { ...site, wetGround: true });
    expect(wet.rows[0]?.cells[0]?.answer.reason).toBe('too-heavy-when-wet');
  });
});

it('a full machine weighs itself, its water at 8.34 lb a gallon and its dry goods', () => {
  expect(machineFullLb(byId(book.machines, 'heron'))).toBeCloseTo(786.8, 10);
});
