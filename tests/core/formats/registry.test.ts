import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FORMATS, findFormat, measureGeojson } from '../../../core/formats/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { boxFt, collection, feature } from './samples.ts';

const LAWNS = 'id,lat,lon,area\na,40,-83,500\n';
const MATRIX = 'from,to,seconds\na,b,5\n';
const OUTLINES = collection(feature([boxFt(0, 0, 50, 50)]));

describe('findFormat', () => {
  it.each([
    ['lawns.geojson', OUTLINES, 'geojson'],
    ['lawns.json', OUTLINES, 'geojson'],
    ['lawns.txt', OUTLINES, 'geojson'],
    ['list.csv', LAWNS, 'csv-lawns'],
    ['LIST.CSV', LAWNS.toUpperCase(), 'csv-lawns'],
    ['times.csv', MATRIX, 'csv-matrix'],
    ['download', MATRIX, 'csv-matrix'],
    ['broken.geojson', '{', 'geojson'],
  ])('takes %s for what it is', (name, text, id) => {
    const format = findFormat(name, text);
    expect(format.ok ? format.value.id : format.error.code).toBe(id);
  });

  it('refuses what it does not know, and says what it reads', () => {
    const format = findFormat('photo.png', '\u0089PNG');
    expect(format).toMatchObject({ ok: false, error: { code: 'format-unknown', where: 'photo.png' } });
    expect(format.ok ? '' : format.error.hint).toContain('GeoJSON');
  });
});

describe.each(FORMATS.map((format) => [format.id, format] as const))('format %s', (_, format) => {
  /** JSON and tables that are nearly right. */
  const scrap = fc.constantFrom(
    'id',
    'lat',
    'lon',
    'area',
    'from',
    'to',
    'seconds',
    '40',
    '-83',
    '1/2 ac',
    '"',
    ',',
    ';',
    '\n',
    '\r\n',
    '\t',
    '',
    'x',
    '-',
    '1e9',
    '\uFEFF',
    'gate',
    '36"',
  );
  const nearly = fc.oneof(
    fc.string(),
    fc.array(scrap, { maxLength: 60 }).map((parts) => parts.join('')),
    fc.array(scrap, { maxLength: 60 }).map((parts) => `id,lat,lon,area\n${parts.join('')}`),
    fc.array(scrap, { maxLength: 60 }).map((parts) => `from,to,seconds\n${parts.join('')}`),
    fc.json(),
    fc
      .array(
        fc.oneof(
          fc.jsonValue(),
          fc.record({ type: fc.constant('Feature'), properties: fc.jsonValue(), geometry: fc.jsonValue() }),
        ),
      )
      .map((features) => JSON.stringify({ type: 'FeatureCollection', features })),
  );

  it('never throws, and its counts add up', () => {
    fc.assert(
      fc.property(nearly, (text) => {
        const read = format.read(text, 'file');
        if (!read.ok) {
          expect(read.error.where).toContain('file');
          expect(read.error.hint).not.toBe('');
          return;
        }
        expect(read.value.accepted + read.value.rejected).toBe(read.value.found);
        if (read.value.rejected > 0) expect(read.value.issues.some((each) => each.severity === 'error')).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});

describe('measuring any GeoJSON', () => {
  const number = fc.oneof(
    fc.double(),
    fc.double({ min: -83.001, max: -83, noNaN: true }),
    fc.integer(),
    fc.constantFrom(null, 'x', 40, -83),
  );
  const position = fc.oneof(fc.tuple(number, number), fc.array(number, { maxLength: 4 }), fc.constant(null));
  const ring = fc.array(position, { maxLength: 8 });
  const geometry = fc.oneof(
    fc.record({
      type: fc.constant('Polygon'),
      coordinates: fc.oneof(fc.array(ring, { maxLength: 3 }), fc.jsonValue()),
    }),
    fc.record({
      type: fc.constant('MultiPolygon'),
      coordinates: fc.array(fc.array(ring, { maxLength: 2 }), { maxLength: 2 }),
    }),
    fc.record({ type: fc.constant('Point'), coordinates: position }),
    fc.jsonValue(),
  );
  const properties = fc.record(
    {
      id: fc.oneof(fc.jsonValue(), fc.constantFrom('a', 'b')),
      role: fc.constantFrom('zone', 'exclusion', 'gate', 'Gate', 7, null),
      property: fc.constantFrom('a', 'b', 'c', null, 4),
      slopeDeg: number,
      keepAwayFt: number,
      clearWidthIn: number,
    },
    { requiredKeys: [] },
  );

  it('never throws, never loses a zone feature, and gives numbers or null with a reason', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ type: fc.constant('Feature'), properties, geometry }), { maxLength: 6 }),
        (features) => {
          const measured = measureGeojson(
            JSON.stringify({ type: 'FeatureCollection', features }),
            'file',
            measureProperty,
          );
          if (!measured.ok) throw new Error(measured.error.detail);
          const zones = measured.value.properties.flatMap((each) => each.zones);
          const roles = features.map((each) => String(each.properties.role ?? 'zone').toLowerCase());
          expect(zones).toHaveLength(roles.filter((each) => each !== 'exclusion' && each !== 'gate').length);
          expect(new Set(measured.value.properties.map((each) => each.id)).size).toBe(measured.value.properties.length);
          const missing = zones.filter((each) => each.areaSqFt === null).length;
          expect(measured.value.issues.filter((each) => each.severity === 'error').length).toBeGreaterThanOrEqual(
            missing,
          );
          expect(Number.isFinite(measured.value.totalSqFt)).toBe(true);
        },
      ),
      { numRuns: 400 },
    );
  });
});
