import fc from 'fast-check';
import type { AreaGeometry, Exclusion, Gate, Position, Property, Zone } from '../../../../core/book/index.ts';
import { EXCLUSION_KINDS } from '../../../../core/book/index.ts';

/** Texts as people write them and worse, without what XML cannot hold and without blanks at the ends. */
const text = (least: number) =>
  fc
    .string({ unit: 'binary', minLength: least, maxLength: 20 })
    .map((each) => each.replace(/[\p{Cc}\p{Cs}\ufffe\uffff]/gu, '').trim())
    .filter((each) => each.length >= least)
    .map((each) => (each.length > 60 ? each.slice(0, 10) : each));

const oddText = (least: number) =>
  fc.oneof(
    text(least),
    fc.constantFrom('a,b;"c"', "O'Brien & Söhne <Süd>", 'line one\nline two', '=1+1', '0012', '__proto__', '])>'),
  );

const degree = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
/** Where lawns are, and not at 0, 0, which no reader believes. */
const position = fc
  .tuple(degree(-179, 179), degree(-55, 70))
  .filter(([longitude, latitude]) => Math.abs(longitude) > 0.001 || Math.abs(latitude) > 0.001);

/** A square with one corner at the place; a hole in it, or none; either way round. */
const polygon = fc
  .tuple(position, degree(0.0001, 0.01), fc.boolean(), fc.boolean())
  .map(([[west, south], size, hasHole, isTurned]) => {
    const square = (inset: number): Position[] => {
      const [low, high] = [size * inset, size * (1 - inset)];
      const ring: Position[] = [
        [west + low, south + low],
        [west + high, south + low],
        [west + high, south + high],
        [west + low, south + high],
        [west + low, south + low],
      ];
      return isTurned ? ring.toReversed() : ring;
    };
    return hasHole ? [square(0), square(0.25)] : [square(0)];
  });

const geometry: fc.Arbitrary<AreaGeometry> = fc.oneof(
  polygon.map((coordinates): AreaGeometry => ({ type: 'Polygon', coordinates })),
  fc.tuple(polygon, polygon).map((coordinates): AreaGeometry => ({ type: 'MultiPolygon', coordinates })),
);

const zone: fc.Arbitrary<Zone> = fc.record({
  id: oddText(1),
  name: oddText(0),
  shape: fc.oneof(
    geometry.map((each) => ({ kind: 'drawn' as const, geometry: each })),
    fc
      .integer({ min: 1, max: 5_000_000 })
      .map((each) => ({ kind: 'stated' as const, areaSqFt: each / 8, method: 'card' })),
  ),
  slopeDeg: fc.integer({ min: 0, max: 60 }),
  gateIds: fc.constant([]),
});

const gate: fc.Arbitrary<Gate> = fc.record(
  {
    id: oddText(1),
    name: oddText(0),
    clearWidthIn: fc.integer({ min: 1, max: 1200 }),
    locked: fc.boolean(),
    at: position,
  },
  { requiredKeys: ['id', 'name', 'clearWidthIn', 'locked'] },
);

const exclusion: fc.Arbitrary<Exclusion> = fc.record({
  id: oddText(1),
  name: oddText(0),
  what: fc.constantFrom(...EXCLUSION_KINDS),
  geometry,
  keepAwayFt: fc.integer({ min: 0, max: 1000 }),
});

const property: fc.Arbitrary<Property> = fc.record({
  id: oddText(1),
  name: oddText(0),
  address: oddText(0),
  parking: position,
  noTrailer: fc.boolean(),
  gates: fc.array(gate, { maxLength: 2 }),
  zones: fc.array(zone, { maxLength: 3 }),
  exclusions: fc.array(exclusion, { maxLength: 2 }),
  cautions: fc.constant([]),
  note: fc.constant(''),
});

/** Some properties; their zones lie anywhere, since nothing here asks whether they make sense together. */
export const properties = fc.array(property, { minLength: 1, maxLength: 3 });
