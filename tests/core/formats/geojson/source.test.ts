import { describe, expect, it } from 'vitest';
import { GROUND_READ_OPTIONS, type GroundSource, geojsonReader } from '../../../../core/formats/index.ts';
import { projectionFromEpsg } from '../../../../core/geometry/index.ts';

const bytesOf = (value: unknown): Uint8Array =>
  new TextEncoder().encode(typeof value === 'string' ? value : JSON.stringify(value));

async function read(value: unknown, name = 'lots.geojson', options = GROUND_READ_OPTIONS) {
  return geojsonReader.read(value instanceof Uint8Array ? value : bytesOf(value), name, options);
}

async function layerOf(value: unknown) {
  const source = await read(value);
  if (!source.ok) throw new Error(source.error.detail);
  const [layer] = source.value.layers;
  if (layer === undefined) throw new Error('no layer');
  return { ...layer, source: source.value as GroundSource };
}

const ring = (...corners: readonly (readonly number[])[]) => corners;
const SQUARE = ring([-71.1, 42.3], [-71.099, 42.3], [-71.099, 42.301], [-71.1, 42.301], [-71.1, 42.3]);
const feature = (geometry: unknown, properties: unknown = {}, id?: string | number) => ({
  type: 'Feature',
  ...(id === undefined ? {} : { id }),
  properties,
  geometry,
});
const collection = (...features: readonly unknown[]) => ({ type: 'FeatureCollection', features });

describe('GeoJSON as a source of ground', () => {
  it('keeps every record in order, with its id, its attributes and its outline', async () => {
    const layer = await layerOf({
      ...collection(
        feature(
          { type: 'Polygon', coordinates: [SQUARE] },
          { name: 'North', floors: 2, sold: true, tags: ['a', 1] },
          7,
        ),
        feature({ type: 'Point', coordinates: [-71.1, 42.3, 12] }, { gate: 36 }),
        feature(null, { name: 'nowhere' }, 'x'),
      ),
      name: 'lots',
    });
    expect(layer.name).toBe('lots');
    expect(layer.fields).toEqual(['name', 'floors', 'sold', 'tags', 'gate']);
    expect(layer.coordinates).toEqual({ kind: 'degrees', from: 'longitude and latitude' });
    const [lot, gate, nowhere] = layer.features;
    expect(lot).toMatchObject({ id: '7', geometry: { type: 'Polygon', coordinates: [SQUARE] }, issues: [] });
    expect(lot?.attributes).toEqual({ name: 'North', floors: 2, sold: true, tags: '["a",1]' });
    expect(gate?.geometry).toEqual({ type: 'Point', coordinates: [-71.1, 42.3] });
    expect(nowhere?.issues.map((each) => each.code)).toEqual(['geometry-missing']);
    expect(nowhere?.where).toBe('lots.geojson, features[2]');
  });

  it('reads a single feature and a bare geometry, and names the layer after the file', async () => {
    const single = await layerOf(feature({ type: 'Polygon', coordinates: [SQUARE] }));
    const bare = await layerOf({ type: 'Polygon', coordinates: [SQUARE] });
    expect(single.features[0]?.geometry).toEqual(bare.features[0]?.geometry);
    expect(bare.name).toBe('lots');
  });

  it('keeps collections, winds nothing, closes what is open and says so', async () => {
    const open = SQUARE.slice(0, 4);
    const backwards = [...SQUARE].reverse();
    const layer = await layerOf(
      feature({
        type: 'GeometryCollection',
        geometries: [
          { type: 'Polygon', coordinates: [open] },
          { type: 'Polygon', coordinates: [backwards] },
          { type: 'LineString', coordinates: open },
        ],
      }),
    );
    const [only] = layer.features;
    expect(only?.issues.map((each) => each.code)).toEqual(['ring-closed']);
    expect(only?.geometry).toEqual({
      type: 'GeometryCollection',
      geometries: [
        { type: 'Polygon', coordinates: [SQUARE] },
        { type: 'Polygon', coordinates: [backwards] },
        { type: 'LineString', coordinates: open },
      ],
    });
  });

  it.each([
    ['a corner of text', { type: 'Polygon', coordinates: [[['a', 1]]] }, 'geometry.coordinates[0][0]'],
    ['a corner of nothing', { type: 'Point', coordinates: [null, 1] }, 'geometry.coordinates'],
    [
      'two corners',
      {
        type: 'Polygon',
        coordinates: [
          [
            [1, 2],
            [3, 4],
          ],
        ],
      },
      'fewer than three corners',
    ],
    ['too flat a list', { type: 'MultiPolygon', coordinates: [[[1, 2]]] }, 'geometry.coordinates[0][0]'],
    ['an unknown type', { type: 'CurvePolygon', coordinates: [] }, 'CurvePolygon'],
    ['a name from the language', { type: 'constructor', coordinates: [] }, 'constructor'],
    ['a list for a geometry', [1, 2], 'geometry'],
  ])('rejects a record with %s and says where', async (_, geometry, place) => {
    const layer = await layerOf(collection(feature(geometry), feature({ type: 'Point', coordinates: [-71, 42] })));
    expect(layer.features[0]?.geometry).toBeNull();
    expect(layer.features[0]?.issues[0]).toMatchObject({ severity: 'error', code: 'geometry-invalid' });
    expect(layer.features[0]?.issues[0]?.message).toContain(place);
    expect(layer.features[1]?.issues).toEqual([]);
  });

  it('rejects a collection nested without end', async () => {
    let geometry: unknown = { type: 'Point', coordinates: [1, 2] };
    for (let depth = 0; depth < 100; depth += 1) geometry = { type: 'GeometryCollection', geometries: [geometry] };
    const layer = await layerOf(feature(geometry));
    expect(layer.features[0]?.issues[0]?.message).toContain('nested too deep');
  });

  it('turns a grid that the file names by its EPSG code, and leaves one alone that it does not know', async () => {
    const reading = projectionFromEpsg(2249);
    if (reading.kind === 'unknown') throw new Error(reading.why);
    const corner = reading.projection.fromDegrees([-71.1, 42.3]) ?? [0, 0];
    const withGrid = (name: string) => ({
      ...collection(feature({ type: 'Point', coordinates: corner })),
      crs: { type: 'name', properties: { name } },
    });
    const known = await layerOf(withGrid('urn:ogc:def:crs:EPSG::2249'));
    expect(known.coordinates.kind).toBe('degrees');
    const geometry = known.features[0]?.geometry;
    const [longitude, latitude] = geometry?.type === 'Point' ? geometry.coordinates : [];
    expect(longitude).toBeCloseTo(-71.1, 9);
    expect(latitude).toBeCloseTo(42.3, 9);
    const other = await layerOf(withGrid('urn:ogc:def:crs:EPSG::27700'));
    expect(other.coordinates.kind).toBe('unknown');
    expect(other.features[0]?.geometry).toEqual({ type: 'Point', coordinates: corner });
  });

  it('does not take numbers beyond degrees for degrees', async () => {
    const { coordinates } = await layerOf(collection(feature({ type: 'Point', coordinates: [761556, 2960098] })));
    expect(coordinates.kind).toBe('unknown');
    expect(coordinates.kind === 'unknown' && coordinates.why).toContain('EPSG');
  });

  it.each([
    ['an impossible latitude', [42.3, -110.5], [-110.5, 42.3]],
    ['a lawn in the Antarctic', [42.3, -71.1], [-71.1, 42.3]],
  ])('exchanges latitude and longitude where only that makes sense: %s', async (_, given, expected) => {
    const layer = await layerOf(collection(feature({ type: 'Point', coordinates: given })));
    expect(layer.features[0]?.geometry).toEqual({ type: 'Point', coordinates: expected });
    expect(layer.source.issues.map((each) => each.code)).toEqual(['coordinates-exchanged']);
  });

  const GRID_POINT = { type: 'Point', coordinates: [761556, 2960098] };
  const point = (x: number, y: number) => feature({ type: 'Point', coordinates: [x, y] });

  it.each([
    ['one of three', [point(-71.1, 42.3), point(-71.2, 42.3), feature(GRID_POINT)], 'degrees'],
    ['half of them', [point(-71.1, 42.3), feature(GRID_POINT)], 'degrees'],
    ['two of three', [point(-71.1, 42.3), feature(GRID_POINT), feature(GRID_POINT)], 'unknown'],
    ['one beside records without a place', [feature(null), feature(null), feature(GRID_POINT)], 'unknown'],
  ] as const)('judges the system by most records, with numbers of a grid in %s', async (_, features, kind) => {
    const layer = await layerOf(collection(...features));
    expect(layer.coordinates.kind).toBe(kind);
    expect(layer.features.map((each) => each.geometry)).toContainEqual(GRID_POINT);
  });

  it('exchanges nothing for one record the wrong way round, and all for most', async () => {
    const few = await layerOf(collection(point(-71.1, 42.3), point(-71.2, 42.3), point(42.3, -110.5)));
    expect(few.source.issues).toEqual([]);
    expect(few.features[0]?.geometry).toMatchObject({ coordinates: [-71.1, 42.3] });
    expect(few.features[2]?.geometry).toMatchObject({ coordinates: [42.3, -110.5] });
    // 35, 60 makes sense both ways round; the others tell which one is meant.
    const most = await layerOf(collection(point(35, 139), point(35, 60), point(36, 140)));
    expect(most.source.issues.map((each) => each.code)).toEqual(['coordinates-exchanged']);
    expect(most.features[1]?.geometry).toMatchObject({ coordinates: [60, 35] });
  });

  it('refuses TopoJSON with the reason, and what is no GeoJSON', async () => {
    const topology = await read({ type: 'Topology', objects: {}, arcs: [] });
    expect(topology).toMatchObject({ ok: false, error: { code: 'format-unknown' } });
    expect(!topology.ok && topology.error.hint).toContain('rounded');
    expect(await read('{"type":')).toMatchObject({ ok: false, error: { code: 'not-json' } });
    expect(await read({ type: 'Lawn' })).toMatchObject({ ok: false, error: { code: 'format-invalid' } });
    expect(await read({ type: 'FeatureCollection', features: 3 })).toMatchObject({
      ok: false,
      error: { code: 'format-invalid' },
    });
  });

  it('keeps to the limits and stops when asked', async () => {
    const many = collection(...Array.from({ length: 500 }, () => feature({ type: 'Polygon', coordinates: [SQUARE] })));
    const { limits } = GROUND_READ_OPTIONS;
    const few = { ...GROUND_READ_OPTIONS, limits: { ...limits, features: 499 } };
    expect(await read(many, 'a.json', few)).toMatchObject({ ok: false, error: { code: 'file-too-large' } });
    const small = { ...GROUND_READ_OPTIONS, limits: { ...limits, positions: 2499 } };
    expect(await read(many, 'a.json', small)).toMatchObject({ ok: false, error: { code: 'file-too-large' } });
    const stopping = { ...GROUND_READ_OPTIONS, signal: { stopped: () => true } };
    expect(await read(many, 'a.json', stopping)).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    const told: number[] = [];
    await read(many, 'a.json', { ...GROUND_READ_OPTIONS, onProgress: ({ done }) => told.push(done) });
    expect(told).toEqual([200, 400]);
  });

  it('says when a file is not in UTF-8 and when it is empty', async () => {
    const latin = Uint8Array.from(JSON.stringify(collection()).replace('Feature', 'F\u00e9ature'), (letter) =>
      letter.charCodeAt(0),
    );
    expect((await read(latin)).ok).toBe(false);
    const named = Uint8Array.from(JSON.stringify({ ...collection(), name: 'caf\u00e9' }), (letter) =>
      letter.charCodeAt(0),
    );
    const source = await read(named);
    expect(source.ok && source.value.layers[0]?.name).toBe('caf\u00e9');
    expect(source.ok && source.value.issues.map((each) => each.code)).toEqual(['encoding-assumed', 'file-empty']);
  });

  it('knows its files by their content', () => {
    expect(geojsonReader.looksLike(bytesOf(collection()), 'x')).toBe(true);
    expect(geojsonReader.looksLike(bytesOf({ type: 'Topology' }), 'x')).toBe(true);
    expect(geojsonReader.looksLike(bytesOf('<kml/>'), 'x.json')).toBe(false);
    expect(geojsonReader.looksLike(new Uint8Array(), 'x.json')).toBe(false);
  });
});
