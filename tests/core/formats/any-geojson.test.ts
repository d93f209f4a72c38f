import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureGeojson } from '../../../core/formats/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';

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
