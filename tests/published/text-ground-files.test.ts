import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { gpx as gpxToGeojson, kml as kmlToGeojson } from '@tmcw/togeojson';
import { DOMParser } from '@xmldom/xmldom';
import geodesic from 'geographiclib-geodesic';
import type { Geometry, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import { eachPosition } from '../../core/formats/coordinates.ts';
import {
  findGroundReader,
  GROUND_READ_OPTIONS,
  type GroundSource,
  type WalkOptions,
} from '../../core/formats/index.ts';
import { areaSqMOf, readGround } from '../support/ground.ts';

/** Public data that lies beside the repository and is not part of it. Where it is missing these tests are skipped. */
const folder = fileURLToPath(new URL('../../../shared/geodata/', import.meta.url));

function withFile(name: string, check: (bytes: Uint8Array, fileName: string) => Promise<void> | void): void {
  const isThere = existsSync(`${folder}${name}`);
  if (!isThere) console.log(`skipped: ../shared/geodata/${name} is not there`);
  const skipped = isThere ? '' : ' (skipped: the file is not beside the repository)';
  it.skipIf(!isThere)(`${name}${skipped}`, async () => {
    await check(new Uint8Array(readFileSync(`${folder}${name}`)), name.replace(/^.*\//, ''));
  });
}

async function read(
  bytes: Uint8Array,
  fileName: string,
  walk: WalkOptions = GROUND_READ_OPTIONS.walk,
): Promise<GroundSource> {
  const reader = findGroundReader(bytes, fileName);
  if (!reader.ok) throw new Error(reader.error.detail);
  expect(fileName.endsWith(reader.value.id)).toBe(true);
  return readGround(reader.value, bytes, fileName, { walk });
}

const featuresOf = (source: GroundSource) => source.layers.flatMap((each) => each.features);

function flat(geometry: Geometry): readonly string[] {
  const places: string[] = [];
  eachPosition(geometry, ([longitude, latitude]) => places.push(`${longitude} ${latitude}`));
  return places;
}

/** The same files by way of togeojson 7.1.3 on xmldom. */
function oracle(bytes: Uint8Array, convert: typeof kmlToGeojson): readonly (Geometry | null)[] {
  const document = new DOMParser({ onError: () => {} }).parseFromString(new TextDecoder().decode(bytes), 'text/xml');
  return convert(document as unknown as Document).features.map((each) => each.geometry);
}

describe('KML files, against togeojson', () => {
  for (const name of ['extended_data', 'linear_ring', 'multigeometry', 'polygon']) {
    withFile(`kml_gpx/${name}.kml`, async (bytes, fileName) => {
      const features = featuresOf(await read(bytes, fileName));
      const others = oracle(bytes, kmlToGeojson);
      expect(features).toHaveLength(others.length);
      for (const [index, { geometry }] of features.entries()) {
        const other = others[index];
        if (geometry === null || other === null || other === undefined) throw new Error('no geometry');
        expect(flat(geometry)).toEqual(flat(other));
      }
    });
  }

  withFile('kml_gpx/polygon.kml', async (bytes, fileName) => {
    const [feature] = featuresOf(await read(bytes, fileName));
    if (feature?.geometry?.type !== 'Polygon') throw new Error('no polygon');
    const [shell = 0, hole = 0] = feature.geometry.coordinates.map(geodesicAreaSqM);
    expect(areaSqMOf(feature.geometry)).toBeCloseTo(shell - hole, 2);
    expect(feature.attributes).toEqual({ name: 'hollow box' });
  });

  withFile('kml_gpx/linear_ring.kml', async (bytes, fileName) => {
    expect(featuresOf(await read(bytes, fileName)).map((each) => each.geometry?.type)).toEqual(['LineString']);
  });

  /** Of the frame of a picture and the region of a link togeojson makes polygons, or nothing; here they are issues. */
  for (const name of ['ground_overlay', 'networklink']) {
    withFile(`kml_gpx/${name}.kml`, async (bytes, fileName) => {
      const source = await read(bytes, fileName);
      expect(featuresOf(source)).toEqual([]);
      expect(source.issues.map((each) => each.code)).toEqual(['not-an-outline', 'file-empty']);
    });
  }

  withFile('kml_gpx/null_geometry.kml', async (bytes, fileName) => {
    const features = featuresOf(await read(bytes, fileName));
    expect(features).toMatchObject([{ geometry: null, issues: [{ code: 'geometry-missing' }] }]);
  });

  withFile('kml_gpx/bad.kml', async (bytes, fileName) => {
    const features = featuresOf(await read(bytes, fileName));
    expect(features.map((each) => [each.geometry, each.issues[0]?.code])).toEqual([
      [null, 'geometry-invalid'],
      [null, 'geometry-invalid'],
      [null, 'geometry-invalid'],
    ]);
  });
});

/** Area of a ring on the ellipsoid by C. F. F. Karney's algorithm (geographiclib-geodesic), m2. */
function geodesicAreaSqM(ring: readonly Position[]): number {
  const polygon = geodesic.Geodesic.WGS84.Polygon(false);
  for (const [longitude = 0, latitude = 0] of ring.slice(1)) polygon.AddPoint(latitude, longitude);
  return Math.abs(polygon.Compute(false, true).area ?? 0);
}

describe('GPX files, against togeojson', () => {
  /** Nothing closed and nothing left out but repeated points. */
  const asIs: WalkOptions = { closeWithinM: -1, simplifyM: 0 };

  for (const name of ['gdal', 'multitrackgpx', 'osm', 'run', 'trek', 'wpt', 'zero_elevation']) {
    withFile(`kml_gpx/${name}.gpx`, async (bytes, fileName) => {
      const found = featuresOf(await read(bytes, fileName, asIs)).flatMap(({ geometry }) => geometry ?? []);
      const others = oracle(bytes, gpxToGeojson).flatMap((geometry) => geometry ?? []);
      expect(found).toHaveLength(others.length);
      for (const [index, geometry] of found.entries()) {
        const other = others[index] ?? { type: 'Point', coordinates: [] };
        const isTrack = geometry.type === 'LineString' || other.type !== geometry.type;
        const places = flat(other);
        const once = places.filter((place, at) => !isTrack || at === 0 || place !== places[at - 1]);
        expect(flat(geometry)).toEqual(once);
      }
    });
  }

  /**
   * Gaps between first and last point, worked out by hand on a sphere of 111.2 km a degree: the third track of
   * multitrackgpx.gpx ends 0.0001566 degrees south (17.4 m) and 0.0000403 east (3.0 m) of its start.
   */
  withFile('kml_gpx/multitrackgpx.gpx', async (bytes, fileName) => {
    const messages = featuresOf(await read(bytes, fileName)).map((each) => each.issues[0]?.message ?? '');
    expect(messages[2]).toContain('17.7 m');
    expect(messages.every((each) => each.includes('kept as a line'))).toBe(true);
  });

  withFile('kml_gpx/bad.gpx', async (bytes, fileName) => {
    const features = featuresOf(await read(bytes, fileName));
    expect(features).toHaveLength(4);
    expect(features.every((each) => each.geometry === null && each.issues[0]?.code === 'geometry-missing')).toBe(true);
  });
});

type Polyline = { readonly layer: string; readonly vertices: readonly (readonly [number, number])[] };
type DxfPackage = {
  readonly parseString: (text: string) => object;
  readonly toPolylines: (drawing: object) => { readonly polylines: readonly Polyline[] };
};

/** The same drawings by way of dxf 5.3.1, which flattens curves more roughly: every 5 degrees of a circle. */
function polylinesOf(bytes: Uint8Array): readonly Polyline[] {
  const { parseString, toPolylines } = createRequire(import.meta.url)('dxf') as DxfPackage;
  return toPolylines(parseString(new TextDecoder('latin1').decode(bytes))).polylines.filter(
    (each) => each.vertices.length > 0,
  );
}

function lengthOf(points: readonly (readonly number[])[]): number {
  return points.slice(1).reduce((sum, [x = 0, y = 0], index) => {
    const [px = 0, py = 0] = points[index] ?? [];
    return sum + Math.hypot(x - px, y - py);
  }, 0);
}

function boxOf(points: readonly (readonly number[])[]): readonly number[] {
  const [xs, ys] = [0, 1].map((axis) => points.map((each) => each[axis] ?? 0));
  return [Math.min(...(xs ?? [])), Math.min(...(ys ?? [])), Math.max(...(xs ?? [])), Math.max(...(ys ?? []))];
}

describe('DXF files, against dxf', () => {
  for (const [name, unit] of [
    ['1x1rectangle', 0.001],
    ['closedlwpolylinebug', 0.001],
    ['floorplan', 0.001],
  ] as const) {
    withFile(`dxf/dxf-${name}.dxf`, async (bytes, fileName) => {
      const source = await read(bytes, fileName);
      const paths = featuresOf(source).map(({ geometry }) => {
        const points: Position[] = [];
        if (geometry !== null) eachPosition(geometry, (at) => points.push(at));
        return points;
      });
      const others = polylinesOf(bytes).map((each) => each.vertices);
      expect(paths).toHaveLength(others.length);
      const expected = others.map(lengthOf).toSorted((left, right) => left - right);
      for (const [index, length] of paths
        .map(lengthOf)
        .toSorted((left, right) => left - right)
        .entries()) {
        expect(Math.abs(length - (expected[index] ?? 0)), `path ${index}`).toBeLessThan(0.001 * length + 1e-9);
      }
      for (const [index, side] of boxOf(paths.flat()).entries())
        expect(side).toBeCloseTo(boxOf(others.flat())[index] ?? 0, 1);
      expect(
        source.layers.every(({ coordinates }) => coordinates.kind === 'drawing' && coordinates.metresPerUnit === unit),
      ).toBe(true);
    });
  }

  /** Corners as they stand in the file; its name says 1 by 1, its unit millimetres. */
  withFile('dxf/dxf-1x1rectangle.dxf', async (bytes, fileName) => {
    const [feature] = featuresOf(await read(bytes, fileName));
    expect(feature?.geometry).toEqual({
      type: 'Polygon',
      coordinates: [
        [
          [0, 0],
          [10, 0],
          [10, 10],
          [0, 10],
          [0, 0],
        ],
      ],
    });
  });
});
