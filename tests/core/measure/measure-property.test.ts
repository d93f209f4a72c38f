import { describe, expect, it } from 'vitest';
import { type Book, emptyBook, type Position } from '../../../core/book/index.ts';
import { measureBook, measureProperty } from '../../../core/measure/index.ts';
import { rectangle, ringAt } from '../geometry/shapes.ts';
import { exclusion, polygonFt, property, stated, zone } from './lawns.ts';

/** Figures are worked out beside each test from the sides in feet; the ellipsoid changes them by less than 0.01 ft2. */
const codes = (measure: { readonly issues: readonly { readonly code: string }[] }) =>
  measure.issues.map((each) => each.code);

describe('measureProperty', () => {
  it('measures a zone, its holes and its exclusions', () => {
    // 200 x 100 = 20,000; hole 10 x 10; house 40 x 30 = 1,200.
    const lawn = property(
      [zone('lawn', polygonFt(rectangle(0, 0, 200, 100), rectangle(150, 50, 160, 60)))],
      [exclusion('house', polygonFt(rectangle(20, 20, 60, 50)), { what: 'building' })],
    );
    const measure = measureProperty(lawn);
    expect(measure.zones[0]?.planAreaSqFt).toBeCloseTo(19_900, 1);
    expect(measure.zones[0]?.areaSqFt).toBeCloseTo(18_700, 1);
    expect(measure.exclusionsSqFt).toBeCloseTo(1300, 1);
    expect(measure.treatableSqFt).toBeCloseTo(18_700, 1);
    expect(measure.zones[0]).toMatchObject({ source: 'drawn', plannable: true, slopeDeg: 0 });
    expect(measure.issues).toEqual([]);
  });

  it('grows an exclusion by its keep-away distance, with round corners', () => {
    // Bed 20 x 10 grown by 5: 200 + 2 x 5 x 30 + pi x 25.
    const lawn = property(
      [zone('lawn', polygonFt(rectangle(0, 0, 200, 100)))],
      [exclusion('bed', polygonFt(rectangle(50, 40, 70, 50)), { keepAwayFt: 5 })],
    );
    expect(measureProperty(lawn).exclusionsSqFt).toBeCloseTo(200 + 300 + Math.PI * 25, 0);
  });

  it('cuts only the part of an exclusion that lies on turf', () => {
    // Drive 20 wide, 10 of it over the edge, 100 long.
    const lawn = property(
      [zone('lawn', polygonFt(rectangle(0, 0, 200, 100)))],
      [exclusion('drive', polygonFt(rectangle(-10, 0, 10, 100)), { what: 'paving' })],
    );
    expect(measureProperty(lawn).exclusionsSqFt).toBeCloseTo(1000, 1);
  });

  it('counts exclusions that lie over each other once', () => {
    const lawn = property(
      [zone('lawn', polygonFt(rectangle(0, 0, 200, 100)))],
      [exclusion('a', polygonFt(rectangle(20, 20, 40, 40))), exclusion('b', polygonFt(rectangle(30, 20, 50, 40)))],
    );
    expect(measureProperty(lawn).exclusionsSqFt).toBeCloseTo(600, 1);
  });

  it('never counts ground twice: a later zone loses what an earlier one has, and says how much', () => {
    const lawn = property([
      zone('front', polygonFt(rectangle(0, 0, 100, 100))),
      zone('side', polygonFt(rectangle(60, 0, 160, 100))),
      zone('again', polygonFt(rectangle(0, 0, 100, 100))),
    ]);
    const measure = measureProperty(lawn);
    expect(measure.zones.map((each) => Math.round(each.areaSqFt ?? -1))).toEqual([10_000, 6000, 0]);
    expect(measure.zones.map((each) => Math.round(each.planAreaSqFt ?? -1))).toEqual([10_000, 10_000, 10_000]);
    expect(measure.treatableSqFt).toBeCloseTo(16_000, 1);
    expect(measure.exclusionsSqFt).toBeCloseTo(0, 1);
    expect(codes(measure)).toEqual(['zone-overlap', 'zone-overlap', 'zone-without-turf']);
    expect(measure.issues[0]?.message).toContain('4,000');
    expect(measure.issues[0]?.where).toBe('property p1, zone side');
    expect(measure.zones.map((each) => each.plannable)).toEqual([true, true, false]);
  });

  it('lets neighbours share a side without a word', () => {
    const lawn = property([
      zone('front', polygonFt(rectangle(0, 0, 100, 100))),
      zone('back', polygonFt(rectangle(100, 0, 180, 100))),
    ]);
    const measure = measureProperty(lawn);
    expect(measure.treatableSqFt).toBeCloseTo(18_000, 1);
    expect(measure.issues).toEqual([]);
  });

  it('keeps a zone that fills the hole of another', () => {
    const ring = zone('ring', polygonFt(rectangle(0, 0, 100, 100), rectangle(40, 40, 60, 60)));
    const middle = zone('middle', polygonFt(rectangle(40, 40, 60, 60)));
    for (const zones of [
      [ring, middle],
      [middle, ring],
    ]) {
      const measure = measureProperty(property(zones));
      expect(measure.treatableSqFt).toBeCloseTo(10_000, 1);
      expect(measure.exclusionsSqFt).toBeCloseTo(0, 1);
    }
  });

  it.each([
    [0, 1],
    [10, 1.015427],
    [18.4349, 1.054093],
    [45, Math.SQRT2],
    [60, 2],
  ])('turns map area into ground area at %d degrees: times %d', (slopeDeg, factor) => {
    const measure = measureProperty(property([zone('bank', polygonFt(rectangle(0, 0, 100, 100)), { slopeDeg })]));
    expect(measure.treatableSqFt! / 10_000).toBeCloseTo(factor, 5);
    expect(measure.zones[0]?.planAreaSqFt).toBeCloseTo(10_000, 1);
  });

  it('passes stated areas through, slope or not, and marks them', () => {
    const lawn = property(
      [stated('card', 5400, { slopeDeg: 20 })],
      [exclusion('bed', polygonFt(rectangle(0, 0, 10, 10)))],
    );
    const measure = measureProperty(lawn);
    expect(measure.zones[0]).toMatchObject({ source: 'stated', areaSqFt: 5400, planAreaSqFt: null, plannable: true });
    expect(measure.treatableSqFt).toBe(5400);
    expect(measure.exclusionsSqFt).toBe(0);
    expect(codes(measure)).toEqual(['exclusion-not-used']);
    expect(measureProperty(property([stated('card', 0)])).zones[0]?.plannable).toBe(false);
  });

  it('measures a self-crossing zone nonzero, names the place and keeps it out of plans', () => {
    const measure = measureProperty(
      property([
        zone(
          'tie',
          polygonFt([
            [0, 0],
            [100, 100],
            [100, 0],
            [0, 100],
          ]),
        ),
      ]),
    );
    expect(measure.zones[0]?.areaSqFt).toBeCloseTo(5000, 1);
    expect(measure.zones[0]?.plannable).toBe(false);
    expect(codes(measure)).toEqual(['geometry-self-crossing']);
    expect(measure.issues[0]).toMatchObject({ severity: 'error', where: 'property p1, zone tie' });
    expect(measure.issues[0]?.message).toMatch(/longitude -82\.9998\d+, latitude 40\.0001\d+/);
    expect(measure.issues[0]?.message).toContain('repair');
  });

  it.each([
    [
      'zero-width',
      polygonFt([
        [0, 0],
        [100, 0],
        [50, 0],
      ]),
      'geometry-zero-width',
    ],
    ['wider than 10 km', polygonFt(rectangle(0, 0, 33_000, 100)), 'geometry-too-large'],
    [
      'swapped',
      { type: 'Polygon', coordinates: [ringAt([-83, 40], rectangle(0, 0, 30, 30)).map(([x, y]) => [y, x])] } as const,
      'geometry-not-lonlat',
    ],
    [
      'in feet of a map grid',
      {
        type: 'Polygon',
        coordinates: [
          [
            [1e6, 2e6],
            [1e6, 3e6],
            [2e6, 3e6],
          ],
        ],
      } as const,
      'geometry-not-lonlat',
    ],
    ['without corners', { type: 'Polygon', coordinates: [] } as const, 'geometry-invalid'],
    [
      'made of nothing',
      {
        type: 'Polygon',
        coordinates: [
          [
            [Number.NaN, 1],
            [2, 3],
            [4, 5],
          ],
        ],
      } as const,
      'geometry-invalid',
    ],
  ])('refuses a zone that is %s, and measures the others', (_, geometry, code) => {
    const bad = zone('bad', geometry as Parameters<typeof zone>[1]);
    const measure = measureProperty(property([bad, zone('good', polygonFt(rectangle(0, 0, 100, 50)))]));
    expect(measure.zones[0]).toMatchObject({ planAreaSqFt: null, areaSqFt: null, plannable: false });
    expect(measure.zones[1]?.areaSqFt).toBeCloseTo(5000, 1);
    expect(measure.treatableSqFt).toBeCloseTo(5000, 1);
    expect(codes(measure)).toEqual([code]);
    expect(measure.issues[0]?.severity).toBe('error');
    expect(measureProperty(property([bad])).treatableSqFt).toBeNull();
  });

  it('refuses zones of one property that lie in different towns', () => {
    const far = { type: 'Polygon', coordinates: [ringAt([-82.7, 40], rectangle(0, 0, 30, 30))] } as const;
    const measure = measureProperty(property([zone('here', polygonFt(rectangle(0, 0, 100, 50))), zone('there', far)]));
    expect(measure.zones.map((each) => each.areaSqFt === null)).toEqual([false, true]);
    expect(codes(measure)).toEqual(['geometry-too-large']);
    expect(measure.issues[0]?.message).toContain('25.6 km');
  });

  it('drops pieces under 1 m2 with a note and counts them as lost', () => {
    // A path 10 ft wide leaves a corner of 3 x 3 ft (0.84 m2).
    const lawn = property(
      [zone('lawn', polygonFt(rectangle(0, 0, 100, 100)))],
      [
        exclusion(
          'path',
          polygonFt([
            [0, 3],
            [3, 3],
            [3, 0],
            [13, 0],
            [13, 13],
            [0, 13],
          ]),
          { what: 'paving' },
        ),
      ],
    );
    const measure = measureProperty(lawn);
    expect(codes(measure)).toEqual(['small-part-dropped']);
    expect(measure.treatableSqFt).toBeCloseTo(10_000 - 169, 1);
    expect(measure.exclusionsSqFt).toBeCloseTo(169, 1);
  });

  it('keeps zones out of plans while an exclusion cannot be read, since the area is too large', () => {
    const broken = exclusion('house', {
      type: 'Polygon',
      coordinates: [
        [
          [1e6, 2e6],
          [1e6, 3e6],
          [2e6, 3e6],
        ],
      ],
    } as never);
    const measure = measureProperty(property([zone('lawn', polygonFt(rectangle(0, 0, 100, 100)))], [broken]));
    expect(measure.zones[0]?.areaSqFt).toBeCloseTo(10_000, 1);
    expect(measure.zones[0]?.plannable).toBe(false);
    expect(codes(measure)).toEqual(['exclusion-unknown', 'geometry-not-lonlat']);
  });

  it('cuts a self-crossing exclusion nonzero with a warning, and passes over one without width', () => {
    const tie = exclusion(
      'tie',
      polygonFt([
        [20, 20],
        [40, 40],
        [40, 20],
        [20, 40],
      ]),
    );
    const line = exclusion(
      'line',
      polygonFt([
        [60, 60],
        [80, 60],
        [70, 60],
      ]),
    );
    const measure = measureProperty(property([zone('lawn', polygonFt(rectangle(0, 0, 100, 100)))], [tie, line]));
    expect(measure.treatableSqFt).toBeCloseTo(9800, 1);
    expect(measure.zones[0]?.plannable).toBe(true);
    expect(measure.issues.map((each) => [each.code, each.severity])).toEqual([
      ['geometry-self-crossing', 'warning'],
      ['geometry-zero-width', 'warning'],
    ]);
  });

  it('notes an exclusion that touches no zone, next door or in another country', () => {
    const nextDoor = exclusion('shed', polygonFt(rectangle(300, 0, 320, 20)));
    const abroad = exclusion('stray', { type: 'Polygon', coordinates: [ringAt([12, 50], rectangle(0, 0, 30, 30))] });
    const measure = measureProperty(property([zone('lawn', polygonFt(rectangle(0, 0, 100, 100)))], [nextDoor, abroad]));
    expect(measure.treatableSqFt).toBeCloseTo(10_000, 1);
    expect(measure.issues.map((each) => [each.code, each.severity])).toEqual([
      ['exclusion-outside', 'note'],
      ['exclusion-outside', 'note'],
    ]);
  });

  it('says that a property has no zone', () => {
    const measure = measureProperty(property([]));
    expect(measure.treatableSqFt).toBeNull();
    expect(codes(measure)).toEqual(['property-without-zones']);
  });

  it('measures across the 180th meridian', () => {
    const ring = ringAt([180, -17], rectangle(-30, -20, 30, 20));
    expect(new Set(ring.map(([longitude]: Position) => Math.sign(longitude))).size).toBe(2);
    const measure = measureProperty(property([zone('lawn', { type: 'Polygon', coordinates: [ring] })]));
    expect(measure.treatableSqFt! * 0.09290304).toBeCloseTo(2400, 1);
  });

  it('names places as it is told', () => {
    const lawn = property([
      zone(
        'tie',
        polygonFt([
          [0, 0],
          [100, 100],
          [100, 0],
          [0, 100],
        ]),
      ),
    ]);
    const places = { property: () => 'P', zone: () => 'the file, feature 3', exclusion: () => 'E' };
    expect(measureProperty(lawn, places).issues[0]?.where).toBe('the file, feature 3');
  });

  it('measures a whole book in its order', () => {
    const book: Book = {
      ...emptyBook('b', 'Book'),
      properties: [property([stated('a', 100)]), property([], [], { id: 'p2' })],
    };
    expect(measureBook(book).map((each) => [each.propertyId, each.treatableSqFt])).toEqual([
      ['p1', 100],
      ['p2', null],
    ]);
  });
});
