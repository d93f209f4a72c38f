import { describe, expect, it } from 'vitest';
import { type MeasuredFile, measuredFromBook, measureGeojson } from '../../../core/formats/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { rectangle } from '../geometry/shapes.ts';
import { HOME, polygonFt, property, stated, zone } from '../measure/lawns.ts';
import { boxFt, collection, feature, ringFt } from './samples.ts';

function measure(text: string): MeasuredFile {
  const measured = measureGeojson(text, 'lawns.geojson', measureProperty);
  if (!measured.ok) throw new Error(measured.error.detail);
  return measured.value;
}
const codes = (file: MeasuredFile) => file.issues.map((each) => each.code);

describe('measureGeojson', () => {
  it('takes each feature for a property with one zone, holes counted as exclusions', () => {
    const file = measure(
      collection(
        feature([boxFt(0, 0, 200, 100), boxFt(10, 10, 20, 20)], { name: 'Elm Court', slopeDeg: 60 }, { id: 'a' }),
      ),
    );
    expect(file).toMatchObject({ format: 'swardway-measure', version: 1, issues: [] });
    expect(file.properties).toHaveLength(1);
    const [lawn] = file.properties;
    expect(lawn).toMatchObject({ id: 'a', name: 'Elm Court' });
    expect(lawn?.zones[0]).toMatchObject({
      id: 'a',
      name: 'Elm Court',
      source: 'drawn',
      slopeDeg: 60,
      plannable: true,
    });
    expect(lawn?.zones[0]?.planAreaSqFt).toBeCloseTo(19_900, 1);
    expect(lawn?.zones[0]?.areaSqFt).toBeCloseTo(39_800, 0);
    expect(lawn?.exclusionsSqFt).toBeCloseTo(100, 1);
    expect(lawn?.treatableSqFt).toBeCloseTo(39_800, 0);
    expect(file.totalSqFt).toBe(lawn?.treatableSqFt);
  });

  it('joins features by role and property, with keep-away and gates', () => {
    const file = measure(
      collection(
        feature([boxFt(0, 0, 100, 100)], { property: 'elm', role: 'zone', name: 'front' }, { id: 'front' }),
        feature([boxFt(100, 0, 200, 100)], { property: 'elm' }, { id: 'back' }),
        feature(
          [boxFt(40, 40, 60, 60)],
          { property: 'elm', role: 'exclusion', keepAwayFt: '1', what: 'bed' },
          { id: 'bed' },
        ),
        {
          type: 'Feature',
          properties: { property: 'elm', role: 'gate', clearWidthIn: 36 },
          geometry: { type: 'Point', coordinates: HOME },
        },
      ),
    );
    expect(file.properties).toHaveLength(1);
    expect(file.properties[0]?.id).toBe('elm');
    expect(file.properties[0]?.zones.map((each) => each.id)).toEqual(['front', 'back']);
    const bed = 400 + 80 + Math.PI;
    expect(file.properties[0]?.exclusionsSqFt).toBeCloseTo(bed, 0);
    expect(file.properties[0]?.treatableSqFt).toBeCloseTo(20_000 - bed, 0);
    expect(file.issues).toEqual([]);
  });

  it('joins to a feature by its own id, and counts overlaps of one property once', () => {
    const file = measure(
      collection(
        feature([boxFt(0, 0, 100, 100)], { name: 'Oak House' }, { id: 7 }),
        feature([boxFt(50, 0, 150, 100)], { property: '7' }),
        feature([boxFt(500, 0, 600, 100)], {}),
      ),
    );
    expect(file.properties.map((each) => [each.id, each.name, Math.round(each.treatableSqFt ?? 0)])).toEqual([
      ['7', 'Oak House', 15_000],
      ['feature-3', 'feature-3', 10_000],
    ]);
    expect(file.totalSqFt).toBeCloseTo(25_000, 0);
    expect(codes(file)).toEqual(['zone-overlap']);
    expect(file.issues[0]?.where).toBe('lawns.geojson, features[1]');
  });

  it.each([
    [{ id: 'own' }, { id: 'in-properties' }, 'own'],
    [{ id: 12 }, { id: 'in-properties' }, '12'],
    [{}, { id: 'in-properties' }, 'in-properties'],
    [{}, { id: 231 }, '231'],
    [{}, {}, 'feature-1'],
    [{ id: '' }, { id: ' ' }, 'feature-1'],
  ])('takes the id of %o with properties %o to be %s', (more, properties, id) => {
    expect(measure(collection(feature([boxFt(0, 0, 50, 50)], properties, more))).properties[0]?.id).toBe(id);
  });

  it('gives a property whose id is there before another one, with a warning', () => {
    const lawns = [0, 100, 200].map((east) => feature([boxFt(east, 0, east + 50, 50)], { id: 'x' }));
    const file = measure(collection(...lawns));
    expect(file.properties.map((each) => each.id)).toEqual(['x', 'x-2', 'x-3']);
    expect(codes(file)).toEqual(['duplicate-id', 'duplicate-id']);
  });

  it('gives an exclusion without a property to the turf it meets', () => {
    const lawns = [feature([boxFt(0, 0, 100, 100)], { id: 'a' }), feature([boxFt(100, 0, 200, 100)], { id: 'b' })];
    const across = measure(collection(...lawns, feature([boxFt(90, 0, 120, 100)], { role: 'exclusion' })));
    expect(across.properties.map((each) => Math.round(each.exclusionsSqFt ?? -1))).toEqual([1000, 2000]);
    const lost = measure(collection(...lawns, feature([boxFt(400, 0, 410, 10)], { role: 'exclusion' })));
    expect(lost.properties.map((each) => Math.round(each.exclusionsSqFt ?? -1))).toEqual([0, 0]);
    expect(lost.issues).toMatchObject([
      { code: 'exclusion-without-property', severity: 'error', where: 'lawns.geojson, features[2]' },
    ]);
    const named = measure(collection(...lawns, feature([boxFt(0, 0, 10, 10)], { role: 'exclusion', property: 'c' })));
    expect(named.issues[0]?.message).toContain('c');
  });

  it('takes one feature, a bare geometry, and areas out of a collection', () => {
    const ring = boxFt(0, 0, 100, 50);
    const polygon = { type: 'Polygon', coordinates: [ring] };
    expect(measure(JSON.stringify(feature([ring]))).totalSqFt).toBeCloseTo(5000, 1);
    expect(measure(`\uFEFF${JSON.stringify(polygon)}`).totalSqFt).toBeCloseTo(5000, 1);
    const mixed = {
      type: 'GeometryCollection',
      geometries: [
        { type: 'Point', coordinates: HOME },
        polygon,
        { type: 'MultiPolygon', coordinates: [[boxFt(200, 0, 210, 10)]] },
      ],
    };
    const file = measure(collection({ type: 'Feature', properties: null, geometry: mixed }));
    expect(file.totalSqFt).toBeCloseTo(5100, 1);
    expect(codes(file)).toEqual(['members-ignored']);
  });

  it('drops heights and reads corners with more numbers', () => {
    const high = boxFt(0, 0, 100, 50).map(([x, y]) => [x, y, 231.5, 7]);
    expect(measure(collection(feature([high]))).totalSqFt).toBeCloseTo(5000, 1);
  });

  describe('lists each bad feature with null areas and an issue that names it, and measures the rest', () => {
    const ring = boxFt(0, 0, 100, 50);
    const swapped = ring.map(([x, y]) => [y, x]);
    it.each([
      ['no feature', 17, 'feature-invalid'],
      ['no geometry', { type: 'Feature', properties: {}, geometry: null }, 'geometry-missing'],
      [
        'a point',
        { type: 'Feature', properties: {}, geometry: { type: 'Point', coordinates: HOME } },
        'geometry-not-area',
      ],
      [
        'a line',
        { type: 'Feature', properties: {}, geometry: { type: 'LineString', coordinates: ring } },
        'geometry-not-area',
      ],
      [
        'a collection without areas',
        { type: 'Feature', properties: {}, geometry: { type: 'GeometryCollection', geometries: [] } },
        'geometry-not-area',
      ],
      ['words for coordinates', feature('here'), 'geometry-invalid'],
      [
        'words for a corner',
        feature([
          [
            [-83, 40],
            ['x', 40],
            [-83, 41],
          ],
        ]),
        'geometry-invalid',
      ],
      [
        'null for a corner',
        feature([
          [
            [-83, 40],
            [null, null],
            [-83, 41],
          ],
        ]),
        'geometry-invalid',
      ],
      ['corners not in rings', feature(ring), 'geometry-invalid'],
      ['no rings', feature([]), 'geometry-invalid'],
      ['an empty ring', feature([[]]), 'geometry-invalid'],
      ['swapped coordinates', feature([swapped]), 'geometry-not-lonlat'],
      ['coordinates of a map grid', feature([ring.map(([x, y]) => [x * 1e4, y * 1e4])]), 'geometry-not-lonlat'],
      [
        'no width',
        feature([
          ringFt([
            [0, 0],
            [50, 0],
            [20, 0],
          ]),
        ]),
        'geometry-zero-width',
      ],
      [
        'two corners',
        feature([
          ringFt([
            [0, 0],
            [50, 0],
          ]),
        ]),
        'geometry-zero-width',
      ],
      ['one corner', feature([ringFt([[0, 0]])]), 'geometry-too-few-corners'],
      ['more than 10 km', feature([boxFt(0, 0, 40_000, 50)]), 'geometry-too-large'],
      ['a slope of 95 degrees', feature([ring], { slopeDeg: 95 }), 'slope-out-of-range'],
      ['a negative slope', feature([ring], { slopeDeg: -1 }), 'slope-out-of-range'],
      ['a slope in words', feature([ring], { slopeDeg: 'steep' }), 'slope-out-of-range'],
      ['an unknown role', feature([ring], { role: 'pond' }), 'role-unknown'],
    ])('%s', (_, bad, code) => {
      const file = measure(collection(bad, feature([boxFt(300, 0, 400, 50)], { id: 'good' })));
      expect(file.properties).toHaveLength(2);
      expect(file.properties[0]).toMatchObject({ treatableSqFt: null, exclusionsSqFt: null });
      expect(file.properties[0]?.zones).toMatchObject([{ planAreaSqFt: null, areaSqFt: null, plannable: false }]);
      expect(file.properties[1]?.treatableSqFt).toBeCloseTo(5000, 1);
      expect(file.totalSqFt).toBeCloseTo(5000, 1);
      const errors = file.issues.filter((each) => each.severity === 'error');
      expect(errors).toHaveLength(1);
      expect(errors[0]).toMatchObject({ code });
      expect(errors[0]?.where).toMatch(/^lawns\.geojson, features\[0\]/);
      // A remedy comes after what is wrong.
      expect(errors[0]?.message.split('. ').length).toBeGreaterThan(1);
    });
  });

  it('keeps the good zone of a property whose other feature is bad', () => {
    const file = measure(
      collection(
        feature([boxFt(0, 0, 100, 50)], { property: 'p' }, { id: 'front' }),
        feature(
          [
            ringFt([
              [0, 0],
              [1, 0],
            ]),
          ],
          { property: 'p' },
          { id: 'back' },
        ),
        feature('?', { property: 'p' }, { id: 'side' }),
      ),
    );
    expect(file.properties).toHaveLength(1);
    expect(file.properties[0]?.zones.map((each) => each.areaSqFt === null)).toEqual([false, true, true]);
    expect(file.properties[0]?.treatableSqFt).toBeCloseTo(5000, 1);
    expect(codes(file).sort()).toEqual(['geometry-invalid', 'geometry-zero-width']);
  });

  it.each([
    [{ role: 'exclusion', property: 'p', keepAwayFt: -2 }, 'keep-away-out-of-range'],
    [{ role: 'exclusion', property: 'p', keepAwayFt: 'far' }, 'keep-away-out-of-range'],
    [{ role: 'gate', property: 'p' }, 'gate-width-missing'],
    [{ role: 'gate', property: 'p', clearWidthIn: 0 }, 'gate-width-missing'],
    [{ role: 'gate', property: 'p', clearWidthIn: -36 }, 'gate-width-missing'],
  ])('names an exclusion or gate with properties %o that cannot be used', (properties, code) => {
    const file = measure(
      collection(feature([boxFt(0, 0, 100, 50)], { property: 'p' }), feature([boxFt(10, 10, 20, 20)], properties)),
    );
    expect(file.issues).toMatchObject([{ code, severity: 'error', where: 'lawns.geojson, features[1]' }]);
    expect(file.properties[0]?.zones[0]?.plannable).toBe(properties.role !== 'exclusion');
  });

  it('measures a self-crossing feature and tells the place, an unclosed one and one with corners twice', () => {
    const open = boxFt(200, 0, 300, 50).slice(0, -1);
    const twice = boxFt(400, 0, 500, 50).flatMap((each) => [each, each]);
    const file = measure(
      collection(
        feature([
          ringFt([
            [0, 0],
            [100, 100],
            [100, 0],
            [0, 100],
          ]),
        ]),
        feature([open]),
        feature([twice]),
      ),
    );
    expect(file.properties.map((each) => Math.round(each.treatableSqFt ?? -1))).toEqual([5000, 5000, 5000]);
    expect(file.properties.map((each) => each.zones[0]?.plannable)).toEqual([false, true, true]);
    expect(codes(file)).toEqual(['geometry-self-crossing', 'geometry-not-closed', 'geometry-repeated-corner']);
    expect(file.issues[0]?.message).toContain('longitude -82.9998');
  });

  it('warns of the same outline twice, whatever its first corner', () => {
    const ring = boxFt(0, 0, 100, 50);
    const turned = [...ring.slice(1), ring[1]!].toReversed();
    const file = measure(collection(feature([ring], { id: 'a' }), feature([turned], { id: 'b' })));
    expect(file.issues).toMatchObject([
      { code: 'duplicate-outline', severity: 'warning', where: 'lawns.geojson, features[1] (id b)' },
    ]);
  });

  it('warns of an outline in another country, and of one that is swapped there', () => {
    const here = [0, 200, 400].map((east) => feature([boxFt(east, 0, east + 50, 50, [8, 48])]));
    const far = measure(collection(...here, feature([boxFt(0, 0, 50, 50, [-83, 40])])));
    expect(far.issues).toMatchObject([{ code: 'far-from-others', where: 'lawns.geojson, features[3]' }]);
    const swapped = measure(collection(...here, feature([boxFt(0, 0, 50, 50, [8, 48]).map(([x, y]) => [y, x])])));
    expect(swapped.issues).toMatchObject([{ code: 'maybe-swapped', where: 'lawns.geojson, features[3]' }]);
  });

  it('refuses the coordinates of a file that names a map grid, and takes the names of degrees', () => {
    const withGrid = (name: string) =>
      JSON.stringify({
        type: 'FeatureCollection',
        crs: { type: 'name', properties: { name } },
        features: [feature([boxFt(0, 0, 50, 50)])],
      });
    for (const name of ['urn:ogc:def:crs:OGC:1.3:CRS84', 'urn:ogc:def:crs:EPSG::4326', 'EPSG:4269']) {
      expect(measure(withGrid(name)).totalSqFt).toBeCloseTo(2500, 1);
    }
    const file = measure(withGrid('urn:ogc:def:crs:EPSG::2249'));
    expect(file.properties[0]?.treatableSqFt).toBeNull();
    expect(file.issues).toMatchObject([{ code: 'geometry-not-lonlat' }]);
    expect(file.issues[0]?.message).toContain('EPSG::2249');
  });

  it('says that a file has no features', () => {
    const file = measure(collection());
    expect(file).toMatchObject({
      properties: [],
      totalSqFt: 0,
      issues: [{ code: 'nothing-to-measure', severity: 'error', where: 'lawns.geojson' }],
    });
  });

  it.each([
    ['{"type": "FeatureCollection", ', 'not-json'],
    ['', 'not-json'],
    ['[1, 2]', 'format-invalid'],
    ['{"features": []}', 'format-invalid'],
    ['{"type": "FeatureCollection"}', 'format-invalid'],
    ['{"type": "Lawn"}', 'format-invalid'],
    ['{"type": "Topology", "objects": {}}', 'format-unknown'],
  ])('refuses the text %s', (text, code) => {
    const measured = measureGeojson(text, 'lawns.geojson', measureProperty);
    expect(measured).toMatchObject({ ok: false, error: { code } });
    if (measured.ok) return;
    expect(measured.error.where).toContain('lawns.geojson');
    expect(measured.error.hint).not.toBe('');
  });
});

describe('measuredFromBook', () => {
  it('answers for a book in the same form', () => {
    const lawn = property([zone('a', polygonFt(rectangle(0, 0, 100, 50))), stated('b', 900)]);
    const file = measuredFromBook([measureProperty(lawn), measureProperty(property([], [], { id: 'p2' }))]);
    expect(file.properties.map((each) => each.id)).toEqual(['p1', 'p2']);
    expect(file.properties[0]?.zones.map((each) => each.source)).toEqual(['drawn', 'stated']);
    expect(file.totalSqFt).toBeCloseTo(5900, 1);
    expect(codes(file)).toEqual(['property-without-zones']);
  });
});
