import fc from 'fast-check';
import type { Geometry, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import type { AreaGeometry, Property } from '../../../../core/book/index.ts';
import {
  findGroundReader,
  GROUND_READ_OPTIONS,
  type GroundSource,
  measureGeojson,
  type SourceFeature,
  WRITERS,
} from '../../../../core/formats/index.ts';
import { measureProperty } from '../../../../core/measure/index.ts';
import { areaSqMOf } from '../../../support/ground.ts';
import { properties } from './properties.ts';

const OPTIONS = { title: 'Spring <& autumn>', measure: measureProperty };

function written(id: string, list: readonly Property[]): string {
  const writer = WRITERS.find((each) => each.id === id);
  if (writer === undefined) throw new Error('no such writer');
  return writer.write(list, OPTIONS);
}

async function readBack(id: string, list: readonly Property[]): Promise<GroundSource> {
  const bytes = new TextEncoder().encode(written(id, list));
  const reader = findGroundReader(bytes, `file.${id}`);
  if (!reader.ok || reader.value.id !== id) throw new Error('taken for something else');
  const source = await reader.value.read(bytes, `file.${id}`, GROUND_READ_OPTIONS);
  if (!source.ok) throw new Error(`${source.error.where}: ${source.error.detail}`);
  expect(source.value.issues.filter((each) => each.severity === 'error')).toEqual([]);
  return source.value;
}

const featuresOf = (source: GroundSource) => source.layers.flatMap((each) => each.features);

/** Corners of all rings in one order, whichever way the rings run; rounded as far as files are exact. */
function cornersOf(geometry: Geometry | AreaGeometry | null): readonly string[] {
  if (geometry === null) return [];
  if (geometry.type === 'Point') return [corner(geometry.coordinates)];
  if (geometry.type !== 'Polygon' && geometry.type !== 'MultiPolygon') throw new Error(geometry.type);
  const polygons = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  return polygons.flatMap((rings, polygon) =>
    rings.flatMap((ring, index) =>
      ring
        .slice(1)
        .map((at) => `${polygon}/${index}/${corner(at as Position)}`)
        .sort(),
    ),
  );
}

const corner = ([longitude = 0, latitude = 0]: Position | readonly number[]) =>
  `${Number(longitude.toFixed(9)) + 0} ${Number(latitude.toFixed(9)) + 0}`;

/** What every file should hold of a zone, an exclusion or a gate. */
type Expected = {
  readonly role: string;
  readonly id: string;
  readonly name: string;
  readonly corners: readonly string[];
};

function expectedOf(property: Property): readonly Expected[] {
  const zones = property.zones.map(({ id, name, shape }): Expected => {
    return { role: 'zone', id, name, corners: cornersOf(shape.kind === 'drawn' ? shape.geometry : null) };
  });
  const bare: Expected = { role: 'zone', id: property.id, name: property.name, corners: [] };
  return [
    ...(zones.length === 0 ? [bare] : zones),
    ...property.exclusions.map(({ id, name, geometry }) => ({
      role: 'exclusion',
      id,
      name,
      corners: cornersOf(geometry),
    })),
    ...property.gates.map(({ id, name, at }) => ({
      role: 'gate',
      id,
      name,
      corners: at === undefined ? [] : [corner(at)],
    })),
  ];
}

function foundOf({ id, attributes, geometry }: SourceFeature): Expected {
  const role = String(attributes.role);
  return { role, id: String(id ?? attributes.id), name: String(attributes.name ?? ''), corners: cornersOf(geometry) };
}

describe('what is written is read back the same', () => {
  it('as GeoJSON', async () => {
    await fc.assert(
      fc.asyncProperty(properties, async (list) => {
        const features = featuresOf(await readBack('geojson', list));
        expect(features.map(foundOf)).toEqual(list.flatMap(expectedOf));
        const lots = features
          .filter((each) => each.attributes.role === 'zone')
          .map((each) => each.attributes.propertyName);
        expect(lots).toEqual(
          list.flatMap(({ name, zones }) => Array.from({ length: Math.max(1, zones.length) }, () => name)),
        );
        expect(features.map((each) => each.attributes.property)).toEqual(
          list.flatMap((property) => expectedOf(property).map(() => property.id)),
        );
      }),
    );
  });

  it('as KML, a folder for each property', async () => {
    await fc.assert(
      fc.asyncProperty(properties, async (list) => {
        const source = await readBack('kml', list);
        expect(source.layers).toHaveLength(list.length);
        const [parked, others] = [true, false].map((isParking) =>
          featuresOf(source).filter((each) => (each.attributes.role === 'parking') === isParking),
        );
        expect(others?.map(foundOf)).toEqual(list.flatMap(expectedOf));
        expect(parked?.map((each) => cornersOf(each.geometry))).toEqual(list.map((each) => [corner(each.parking)]));
      }),
    );
  });

  it('as GPX, the points', async () => {
    await fc.assert(
      fc.asyncProperty(properties, async (list) => {
        const found = featuresOf(await readBack('gpx', list)).map(({ attributes, geometry }) => {
          return [attributes.type, attributes.name ?? '', attributes.cmt, cornersOf(geometry)];
        });
        const expected = list.flatMap((property) => [
          ['parking', property.name, property.id, [corner(property.parking)]],
          ...property.gates.flatMap(({ id, name, at }) => (at === undefined ? [] : [['gate', name, id, [corner(at)]]])),
        ]);
        expect(found).toEqual(expected);
      }),
    );
  });

  it('as CSV, a row for each zone', async () => {
    await fc.assert(
      fc.asyncProperty(properties, async (list) => {
        const found = featuresOf(await readBack('csv', list)).map(({ attributes, geometry }) => [
          attributes.property,
          attributes['property name'] ?? '',
          attributes.address ?? '',
          attributes.id ?? '',
          attributes.name ?? '',
          cornersOf(geometry),
        ]);
        const expected = list.flatMap((property) => {
          const lot = [property.id, property.name, property.address];
          const here = [corner(property.parking)];
          if (property.zones.length === 0) return [[...lot, '', '', here]];
          return property.zones.map(({ id, name, shape }) => [
            ...lot,
            id,
            name,
            shape.kind === 'drawn' ? cornersOf(shape.geometry) : here,
          ]);
        });
        expect(found).toEqual(expected);
      }),
    );
  });

  it('always as the same text', () => {
    fc.assert(
      fc.property(properties, (list) => {
        for (const { id } of WRITERS) expect(written(id, list)).toBe(written(id, structuredClone(list)));
      }),
      { numRuns: 20 },
    );
  });
});

const RING: readonly (readonly [number, number])[] = [
  [-83, 40],
  [-83, 40.0004],
  [-82.9995, 40.0004],
  [-82.9995, 40],
  [-83, 40],
];
const HOLE: readonly (readonly [number, number])[] = [
  [-82.9998, 40.0001],
  [-82.9997, 40.0001],
  [-82.9997, 40.0002],
  [-82.9998, 40.0001],
];
const LOT: Property = {
  id: 'elm-1',
  name: 'Vale',
  address: '12 Elm Court',
  parking: [-83, 40],
  noTrailer: false,
  gates: [{ id: 'g', name: 'green gate', clearWidthIn: 34, locked: true, at: [-83, 40.0001] }],
  zones: [
    {
      id: 'front',
      name: 'front',
      shape: { kind: 'drawn', geometry: { type: 'Polygon', coordinates: [RING, HOLE] } },
      slopeDeg: 4,
      gateIds: ['g'],
    },
    { id: 'strip', name: 'strip', shape: { kind: 'stated', areaSqFt: 640, method: 'wheel' }, slopeDeg: 0, gateIds: [] },
  ],
  exclusions: [],
  cautions: [],
  note: '',
};

describe('GeoJSON as written', () => {
  it('has no crs, shells anticlockwise and holes clockwise, and nine decimals', () => {
    const text = written('geojson', [{ ...LOT, parking: [-83.1234567894, 40.1234567896] }]);
    const file = JSON.parse(text);
    expect(Object.keys(file)).toEqual(['type', 'name', 'features']);
    expect(file.features[0].geometry.coordinates[0]).toEqual(RING.toReversed());
    expect(file.features[0].geometry.coordinates[1]).toEqual(HOLE.toReversed());
    expect(file.features[0].properties.parking).toEqual([-83.123456789, 40.12345679]);
  });

  it('is measured as the book is', () => {
    const drawn = { ...LOT, zones: LOT.zones.slice(0, 1) };
    const measured = measureGeojson(written('geojson', [drawn]), 'file.geojson', measureProperty);
    const expected = measureProperty(drawn).treatableSqFt;
    expect(measured.ok && measured.value.totalSqFt).toBeCloseTo(Number(expected), 3);
    expect(measured.ok && measured.value.properties[0]?.id).toBe('elm-1');
  });
});

describe('CSV as written', () => {
  it('holds areas in square feet', () => {
    const [header, front, strip] = written('csv', [LOT]).split('\r\n');
    expect(header).toBe(
      'property,property name,address,lat,lon,id,name,area (sq ft),outline (sq ft),treatable (sq ft),slope (deg),wkt',
    );
    const cells = front?.split(',') ?? [];
    const squareFeet =
      areaSqMOf({ type: 'Polygon', coordinates: [RING, HOLE].map((ring) => ring.map((at) => [...at])) }) / 0.09290304;
    expect(cells.slice(0, 7)).toEqual(['elm-1', 'Vale', '12 Elm Court', '40', '-83', 'front', 'front']);
    expect(cells[7]).toBe('');
    expect(Number(cells[8])).toBeCloseTo(squareFeet, 1);
    // The ground of a slope of 4 degrees is larger than its map by 1 / cos 4.
    expect(Number(cells[9])).toBeCloseTo(squareFeet / Math.cos((4 * Math.PI) / 180), 1);
    expect(strip).toBe('elm-1,Vale,12 Elm Court,40,-83,strip,strip,640,,640,0,');
  });
});

describe('XML as written', () => {
  it('replaces what XML cannot hold', async () => {
    const source = await readBack('kml', [{ ...LOT, name: 'a\u0000b\u001bc\uffff\ud800 d\u2028e\u0085f\rg' }]);
    expect(source.layers[0]?.name).toContain('a\ufffdb\ufffdc\ufffd\ufffd d');
    const parked = featuresOf(source)[0]?.attributes.name;
    expect(parked).toBe('Park: a\ufffdb\ufffdc\ufffd\ufffd d\u2028e\u0085f\rg');
  });
});

describe('writers', () => {
  it('have ids and endings of their own, and say what they leave out', () => {
    expect(new Set(WRITERS.map((each) => each.id)).size).toBe(WRITERS.length);
    expect(new Set(WRITERS.map((each) => each.extension)).size).toBe(WRITERS.length);
    expect(WRITERS.every((each) => each.leavesOut.endsWith('.'))).toBe(true);
  });
});
