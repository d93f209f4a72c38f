import { describe, expect, it } from 'vitest';
import type { AreaGeometry, Property } from '../../../core/book/index.ts';
import { applyAction } from '../../../core/edit/index.ts';
import { applyIntake } from '../../../core/intake/index.ts';
import { withPastMeasure } from '../../../core/measure/index.ts';
import { exclusion, HOME, polygonFt, property, stated, zone } from '../measure/lawns.ts';
import { boxShape, type Drawn, emptyOne, layerOf, look, pointShape, sourceOf, taken } from './sources.ts';

const corners = (west: number, south: number, east: number, north: number) =>
  [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
  ] as const;
const drawn = (...box: [number, number, number, number]): AreaGeometry => polygonFt(corners(...box));

/** A property of the book about which its crew knows more than any file. */
const elm = (more: Partial<Property> = {}): Property =>
  property(
    [
      zone('front', drawn(0, 0, 100, 100), { slopeDeg: 4, gateIds: [] }),
      zone('back', drawn(100, 0, 200, 100), { slopeDeg: 9, gateIds: ['side'] }),
    ],
    [exclusion('house', drawn(40, 40, 60, 60), { what: 'building', keepAwayFt: 2 })],
    {
      id: 'elm',
      name: 'Elm Court 1',
      cautions: ['pets'],
      note: 'ring first',
      gates: [{ id: 'side', name: 'side gate', clearWidthIn: 34, locked: true }],
      ...more,
    },
  );
const lawns = (...features: readonly Drawn[]) => sourceOf(layerOf(features));

describe('merging into a property of the book', () => {
  it('keeps what the file does not speak of', () => {
    const book = emptyOne([elm()]);
    const source = lawns({
      id: 'front',
      geometry: boxShape(0, 0, 120, 100),
      attributes: { property: 'elm', role: 'zone', address: '1 Elm Court' },
    });
    const preview = look(source, book);
    expect(preview.counts).toMatchObject({ changed: 1, new: 0 });
    const [after] = taken(book, preview).properties;
    expect(after).toMatchObject({
      name: 'Elm Court 1',
      address: '1 Elm Court',
      note: 'ring first',
      cautions: ['pets'],
    });
    expect(after?.gates).toEqual(elm().gates);
    expect(after?.exclusions).toEqual(elm().exclusions);
    expect(after?.zones[1]).toEqual(elm().zones[1]);
    expect(after?.zones[0]).toMatchObject({ id: 'front', slopeDeg: 4, shape: { drawnOver: 'file' } });
    expect(preview.rows[0]?.words).toBe('address 1 Elm Court; outline of front');
  });

  it('keeps the earlier total where the area changed, and only there', () => {
    const book = emptyOne([elm({ measuredOn: '2025-03-02' })]);
    const tools = { keepPast: (before: Property, after: Property) => withPastMeasure(before, after, '2027-04-01') };
    const larger = lawns({
      id: 'front',
      geometry: boxShape(0, 0, 100, 120),
      attributes: { property: 'elm', role: 'zone' },
    });
    const [after] = look(larger, book, {}, tools).properties;
    // Two squares of 100 ft on slopes of 4 and 9 degrees; the first less 20 ft by 20 ft grown by 2 ft with round corners.
    const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);
    const earlier = (10_000 - (576 - (4 - Math.PI) * 4)) / cos(4) + 10_000 / cos(9);
    expect(after?.after.pastMeasures).toMatchObject([{ on: '2025-03-02' }]);
    expect(after?.after.pastMeasures?.[0]?.treatableSqFt).toBeCloseTo(earlier, 0);
    const renamed = lawns({ id: 'elm', attributes: { id: 'elm', name: 'Elm Court One' } });
    expect(look(renamed, book, {}, tools).properties[0]?.after).not.toHaveProperty('pastMeasures');
  });

  it('holds a stated area beside an outline, and puts an outline in the place of a stated area', () => {
    const one = (zones: Property['zones']) => emptyOne([property(zones, [], { id: 'p' })]);
    const table = lawns({ id: 'p', attributes: { area: '9,000 sq ft' } });
    const kept = look(table, one([zone('lawn', drawn(0, 0, 100, 100))])).properties[0]?.after.zones[0];
    expect(kept).toMatchObject({ shape: { kind: 'drawn' }, statedAreaSqFt: 9000 });
    const outline = lawns({ id: 'p', geometry: boxShape(0, 0, 100, 100) });
    const redrawn = look(outline, one([stated('lawn', 9500)])).properties[0]?.after.zones;
    expect(redrawn).toMatchObject([{ id: 'lawn', shape: { kind: 'drawn' }, statedAreaSqFt: 9500 }]);
    const restated = look(table, one([stated('lawn', 9500)]));
    expect(restated.properties[0]?.after.zones[0]?.shape).toEqual({
      kind: 'stated',
      areaSqFt: 9000,
      method: 'from file',
    });
    expect(restated.rows[0]?.words).toBe('area of lawn 9,500 → 9,000 ft²');
  });

  it('changes the width of the only gate, and leaves several gates alone', () => {
    const file = lawns({ id: 'elm', attributes: { gate: 48 } });
    const one = look(file, emptyOne([elm()])).properties[0];
    expect(one?.after.gates).toEqual([{ id: 'side', name: 'side gate', clearWidthIn: 48, locked: true }]);
    expect(one?.words).toEqual(['gate side gate 34 → 48 in']);
    const two = elm({ gates: [...elm().gates, { id: 'b', name: 'b', clearWidthIn: 60, locked: false }] });
    const left = look(file, emptyOne([two]));
    expect(left.counts.same).toBe(1);
    expect(left.rows[0]?.words).toContain('not taken');
  });

  it('leaves a parking point where it was put by hand', () => {
    const file = lawns({ id: 'elm', geometry: pointShape(20, -20) });
    expect(look(file, emptyOne([elm({ placedBy: 'hand' })])).counts.same).toBe(1);
    const moved = look(file, emptyOne([elm()])).properties[0];
    expect(moved?.after).toMatchObject({ placedBy: 'file' });
    expect(moved?.words).toEqual(['parking point']);
  });
});

describe('finding the property by place', () => {
  const file = lawns({ id: 'county-7', geometry: boxShape(5, 5, 105, 105) });

  it('joins an outline that has more than half of its ground in common', () => {
    const book = emptyOne([property([zone('lawn', drawn(0, 0, 100, 100))], [], { id: 'p' })]);
    expect(look(file, book, { mergeBy: 'place' }).properties).toMatchObject([{ kind: 'changed', after: { id: 'p' } }]);
    expect(look(file, book, { mergeBy: 'id' }).properties).toMatchObject([{ kind: 'new', after: { id: 'county-7' } }]);
    const far = lawns({ id: 'county-7', geometry: boxShape(60, 0, 160, 100) });
    expect(look(far, book, { mergeBy: 'place' }).properties).toMatchObject([{ kind: 'new' }]);
  });

  it('warns of a new one that lies on a property with another id', () => {
    const book = emptyOne([property([zone('lawn', drawn(0, 0, 100, 100))], [], { id: 'p', name: 'Elm' })]);
    const [row] = look(file, book).rows;
    expect(row?.kind).toBe('new');
    expect(row?.issues.map((each) => each.code)).toEqual(['duplicate-property']);
    expect(row?.issues[0]?.message).toContain('Elm (p)');
    expect(look(lawns({ id: 'q', geometry: boxShape(500, 0, 600, 99) }), book).rows[0]?.issues).toEqual([]);
  });

  it('warns of a known id that comes from far away', () => {
    const book = emptyOne([property([zone('lawn', drawn(0, 0, 100, 100))], [], { id: '7', name: 'Elm' })]);
    const codesAt = (west: number) =>
      look(lawns({ id: '7', geometry: boxShape(west, 0, west + 100, 100) }), book).rows[0]?.issues.map(
        (each) => each.code,
      );
    // 300 m are 984 ft.
    expect(codesAt(900)).toEqual([]);
    expect(codesAt(1100)).toEqual(['far-from-its-id']);
  });

  it('takes numbers of records that a program counted for no ids', () => {
    const source = { ...lawns({ id: '1', geometry: boxShape(0, 0, 100, 100) }), formatId: 'geopackage' };
    const book = emptyOne([property([zone('lawn', drawn(5000, 0, 5100, 100))], [], { id: '1' })]);
    expect(look(source, book).properties).toMatchObject([{ kind: 'new', after: { id: 'lawn-1' } }]);
  });

  it('goes by place for records without an id, and by address for those without a place', () => {
    const book = emptyOne([elm(), property([], [], { id: 'oak', address: '9 Oak Row.' })]);
    const parked = { type: 'Point' as const, coordinates: [...HOME] };
    expect(look(lawns({ geometry: parked, attributes: { name: 'Elm' } }), book).properties).toMatchObject([
      { kind: 'changed', after: { id: 'elm', name: 'Elm' } },
    ]);
    const addressed = look(lawns({ attributes: { address: '9 OAK ROW', area: 5000 } }), book);
    expect(addressed.properties).toMatchObject([{ kind: 'changed', after: { id: 'oak' } }]);
  });

  it('takes no property of the book twice', () => {
    const book = emptyOne([property([zone('lawn', drawn(0, 0, 100, 100))], [], { id: 'p' })]);
    const twice = lawns({ geometry: boxShape(0, 0, 100, 101) }, { geometry: boxShape(0, 0, 100, 100) });
    expect(look(twice, book).properties.map((each) => [each.kind, each.after.id])).toEqual([
      ['new', 'lawn-1'],
      ['same', 'p'],
    ]);
  });
});

describe('places', () => {
  const row = { attributes: { id: 'k1', address: '12 Elm Court', area: 5000 } };

  it('rejects a row without one, unless its address has one', () => {
    expect(look(lawns(row)).rows[0]).toMatchObject({ kind: 'rejected', issues: [{ code: 'no-place' }] });
    const findPlace = (address: string) => (address === '12 Elm Court' ? HOME : null);
    expect(look(lawns(row), emptyOne(), {}, { findPlace }).properties).toMatchObject([
      { after: { parking: HOME, placedBy: 'address-range' } },
    ]);
  });

  it('rejects a second row with the same id', () => {
    const at = { geometry: pointShape(0, 0) };
    const preview = look(lawns({ ...row, ...at }, { ...row, ...at }));
    expect(preview.rows.map((each) => each.kind)).toEqual(['new', 'rejected']);
    expect(preview.rows[1]?.words).toContain('record 1');
  });

  it('gives a new property another id than a fill point has', () => {
    const shop = { id: 'shop', name: 'Shop', at: HOME } as never;
    const book = { ...emptyOne(), fillPoints: [shop] };
    expect(look(lawns({ id: 'shop', geometry: boxShape(0, 0, 9, 9) }), book).properties[0]?.after.id).toBe('shop-2');
  });
});

describe('parts on several layers', () => {
  const lots = layerOf(
    [
      { geometry: boxShape(0, 0, 100, 100), attributes: { pid: '7', site_addr: '7 Elm Court', OWNER1: 'X' } },
      { geometry: boxShape(100, 0, 200, 100), attributes: { pid: '8', site_addr: '8 Elm Court', OWNER1: 'Y' } },
      { geometry: boxShape(200, 0, 300, 100), attributes: { pid: '9', site_addr: '9 Elm Court', OWNER1: 'Z' } },
    ],
    'tax parcels',
  );
  const turf = layerOf(
    [{ geometry: boxShape(10, 10, 90, 90) }, { geometry: boxShape(110, 10, 190, 90) }],
    'turf zones',
  );
  const paving = layerOf(
    [
      { geometry: boxShape(20, 20, 30, 30), attributes: { kind: 'driveway' } },
      { geometry: boxShape(80, 20, 120, 30), attributes: { kind: 'walkway' } },
      { geometry: boxShape(900, 20, 920, 30), attributes: { kind: 'walkway' } },
    ],
    'paving to exclude',
  );

  it('makes properties of lots that have turf, joins what lies on two to both, and rejects the rest with reasons', () => {
    const preview = look(sourceOf(lots, turf, paving));
    expect(preview.rows.map((each) => each.kind)).toEqual([
      'new',
      'new',
      'rejected',
      'part',
      'part',
      'part',
      'part',
      'rejected',
    ]);
    expect(preview.properties.map(({ after }) => [after.id, after.address, after.exclusions.length])).toEqual([
      ['7', '7 Elm Court', 2],
      ['8', '8 Elm Court', 1],
    ]);
    expect(preview.properties[0]?.after.exclusions[0]?.what).toBe('paving');
    expect(preview.rows[6]?.words).toBe('exclusion that meets 2 properties, joined to each: 7 Elm Court, 8 Elm Court');
    expect(JSON.stringify(preview.properties)).not.toContain('OWNER1');
  });

  it('adds exclusions and lots to properties that only the book has', () => {
    const book = emptyOne([elm()]);
    const preview = look(sourceOf(paving, layerOf([{ geometry: boxShape(-10, -10, 210, 110) }], 'lots')), book);
    expect(preview.properties).toMatchObject([{ kind: 'changed', after: { id: 'elm' } }]);
    expect(preview.properties[0]?.after.parcel).toBeDefined();
    expect(preview.properties[0]?.after.exclusions).toHaveLength(3);
    expect(preview.counts).toMatchObject({ found: 4, changed: 1, part: 2, rejected: 1 });
  });
});

describe('applyIntake', () => {
  const source = lawns({ id: 'a', geometry: boxShape(0, 0, 50, 50) }, { id: 'b', geometry: boxShape(60, 0, 90, 50) });

  it('is one step that undo takes back whole', () => {
    const book = emptyOne([elm()]);
    const action = applyIntake(book, look(source, book));
    if (!action.ok) throw new Error(action.error.detail);
    expect(action.value.label).toBe('Add 2 lawns from file');
    const done = applyAction(book, action.value);
    if (!done.ok) throw new Error(done.error.detail);
    const back = applyAction(done.value.book, done.value.inverse);
    expect(back.ok && back.value.book).toEqual(book);
  });

  it('is refused where the lawns of the book have changed, and takes an equal copy for the same', () => {
    const book = emptyOne([elm()]);
    const preview = look(source, book);
    expect(applyIntake(structuredClone(book), preview).ok).toBe(true);
    const other = { ...book, properties: [elm({ note: 'moved' })] };
    expect(applyIntake(other, preview)).toMatchObject({ ok: false, error: { code: 'book-changed' } });
    expect(applyIntake(emptyOne(), preview)).toMatchObject({ ok: false, error: { code: 'book-changed' } });
  });

  it('has nothing to do the second time', () => {
    const book = taken(emptyOne(), look(source));
    const again = look(source, book);
    expect(again.counts).toMatchObject({ same: 2, found: 2 });
    expect(applyIntake(book, again)).toMatchObject({ ok: false, error: { code: 'nothing-to-do' } });
  });
});
