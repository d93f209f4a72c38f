import { describe, expect, it } from 'vitest';
import {
  buildTravelTable,
  type DriveTable,
  describeTravel,
  type Place,
  readDriveTable,
  travelKindOf,
  travelNotes,
  writeDriveTable,
} from '../../../core/travel/index.ts';
import { sampleBook } from '../reach/sample.ts';

const settings = sampleBook().travel;
const shop: Place = { id: 'shop', at: [-83, 40] };
const near: Place = { id: 'near', at: [-83.01, 40] };
const island: Place = { id: 'island', at: [-83.02, 40.01] };
const places = [shop, near, island];

/** Roads between the shop and `near`; `island` is 640 m from the next one. */
const roads: DriveTable = {
  madeFrom: 'test',
  credit: 'whose roads they are: Ångström & sons',
  at: places.map((each) => each.at),
  durationSec: Int32Array.from([0, 100, -1, 130, 0, -1, -1, -1, 0]),
  distanceM: Int32Array.from([0, 900, -1, -1, 0, -1, -1, -1, 0]),
  offRoad: [{ row: 2, kind: 'too-far', nearestM: 640 }],
};

describe('travel by road', () => {
  it('goes before the estimate, pair by pair, and the gaps stay marked as estimates', () => {
    const table = buildTravelTable(places, settings, undefined, roads);
    const estimate = buildTravelTable(places, settings, undefined);
    expect(table.durationSec[1]).toBe(100);
    expect(table.durationSec[3]).toBe(130);
    expect(table.distanceM[1]).toBe(900);
    // The way back has no distance: that alone is an estimate.
    expect(table.distanceM[3]).toBe(estimate.distanceM[3]);
    expect(Array.from(table.estimated)).toEqual([0, 0, 1, 0, 0, 1, 1, 1, 0]);
    expect(Array.from(table.distanceEstimated)).toEqual([0, 0, 1, 1, 0, 1, 1, 1, 0]);
    expect([table.roadPairs, table.matrixPairs]).toEqual([2, 0]);
    expect(travelKindOf(table)).toBe('mixed');
    expect(travelKindOf(buildTravelTable([shop, near], settings, undefined, roads))).toBe('roads');
    expect(travelKindOf(estimate)).toBe('estimate');
  });

  it('a place that was moved since, or that the table never had, is an estimate', () => {
    const moved = { ...near, at: [-83.0101, 40] } as const;
    const table = buildTravelTable([shop, moved], settings, undefined, roads);
    expect(travelKindOf(table)).toBe('estimate');
    // Two records at one position are one place to a road.
    const twin = buildTravelTable([shop, { id: 'other', at: near.at }], settings, undefined, roads);
    expect(twin.durationSec[1]).toBe(100);
  });

  it('an imported table goes first', () => {
    const matrix = { source: 'times.csv', placeIds: ['shop', 'near'], durationSec: [[0, 77]], distanceM: [[0, 700]] };
    const table = buildTravelTable([shop, near], settings, matrix, roads);
    expect([table.durationSec[1], table.durationSec[2]]).toEqual([77, 130]);
    expect([table.matrixPairs, table.roadPairs]).toEqual([1, 1]);
    expect(describeTravel(table, settings, matrix, roads)).toContain('1 are from the imported table times.csv');
  });

  it('says how many pairs are by road and how many are not, and which place is off the road', () => {
    const table = buildTravelTable(places, settings, undefined, roads);
    const notes = travelNotes(table, settings, undefined, roads, (id) => `property ${id}`);
    expect(notes.map((each) => [each.severity, each.code, each.where])).toEqual([
      ['note', 'travel-estimated', 'travel'],
      ['warning', 'place-off-road', 'property island'],
    ]);
    expect(notes[0]?.message).toContain('by road (whose roads they are: Ångström & sons) for 2 of 6 pairs');
    expect(notes[0]?.message).toContain('4 are an estimate: straight line × 1.4, not roads');
    expect(notes[1]?.message).toContain('640 m away');
    const whole = buildTravelTable([shop, near], settings, undefined, roads);
    expect(travelNotes(whole, settings, undefined, roads, String)).toEqual([]);
    expect(describeTravel(whole, settings, undefined, roads)).toBe(
      'Travel is by road (whose roads they are: Ångström & sons)',
    );
    const lost = { ...roads, trouble: 'The engine did not answer.' };
    expect(travelNotes(whole, settings, undefined, lost, String).map((each) => each.code)).toEqual(['roads-trouble']);
  });
});

describe('a file of drive times', () => {
  const bytes = writeDriveTable(roads);

  it('gives the table back', () => {
    const read = readDriveTable(bytes, 'book.drives');
    expect(read.ok && { ...read.value, durationSec: [...read.value.durationSec] }).toEqual({
      ...roads,
      durationSec: [...roads.durationSec],
      distanceM: roads.distanceM,
    });
  });

  it('is refused when it was cut anywhere, or any byte of its figures was changed', () => {
    for (let length = 0; length < bytes.length; length += 1) {
      expect(readDriveTable(bytes.slice(0, length), 'cut').ok).toBe(false);
    }
    const figures = bytes.length - 18 * 4;
    for (let at = figures; at < bytes.length; at += 1) {
      const changed = bytes.slice();
      changed[at] = (changed[at] ?? 0) ^ 1;
      expect(readDriveTable(changed, 'changed').ok).toBe(false);
    }
    expect(
      readDriveTable(
        Uint8Array.from('SWARDWAY-DRIVES-1\n\xff\xff\xff\xff', (each) => each.charCodeAt(0)),
        'x',
      ).ok,
    ).toBe(false);
  });
});
