import { describe, expect, it } from 'vitest';
import {
  excludedOutlines,
  measureProperty,
  repairPolygon,
  treatableGround,
  treatableOutline,
} from '../../../core/measure/index.ts';
import { SQUARE_METRES_PER_SQUARE_FOOT } from '../../../core/units/index.ts';
import { karneyArea, rectangle } from '../geometry/shapes.ts';
import { exclusion, polygonFt, property, stated, zone } from './lawns.ts';

const areaSqFt = (outline: ReturnType<typeof treatableOutline>) =>
  outline.reduce(
    (sum, [shell, ...holes]) =>
      sum + karneyArea(shell ?? []) - holes.reduce((total, hole) => total + karneyArea(hole), 0),
    0,
  ) / SQUARE_METRES_PER_SQUARE_FOOT;

const lawn = property(
  [
    zone('lawn', polygonFt(rectangle(0, 0, 200, 100))),
    zone('side', polygonFt(rectangle(150, 50, 250, 150))),
    stated('card', 900),
  ],
  [
    exclusion('house', polygonFt(rectangle(20, 20, 60, 50)), { what: 'building' }),
    exclusion('drive', polygonFt(rectangle(100, -10, 110, 110)), { what: 'paving', keepAwayFt: 1 }),
    exclusion(
      'broken',
      polygonFt([
        [0, 0],
        [10, 0],
        [5, 0],
      ]),
    ),
  ],
);

describe('treatableGround', () => {
  it('names what is in the way between the pieces of a lawn, as it lies, and nothing for one piece', () => {
    const ground = treatableGround(lawn, 'lawn');
    expect(ground.outline).toEqual(treatableOutline(lawn, 'lawn'));
    // The house, without the drive: that can be driven over.
    expect(areaSqFt(ground.obstacles)).toBeCloseTo(40 * 30, 0);
    expect(treatableGround(lawn, 'side').obstacles).toEqual([]);
  });
});

describe('treatableOutline', () => {
  it('draws exactly the area that is measured', () => {
    const measure = measureProperty(lawn);
    for (const each of measure.zones.slice(0, 2)) {
      expect(areaSqFt(treatableOutline(lawn, each.zoneId))).toBeCloseTo(each.areaSqFt ?? -1, 0);
    }
  });

  it('gives a lawn cut in two as two pieces, one with the house as a hole', () => {
    const outline = treatableOutline(lawn, 'lawn');
    expect(outline.map((polygon) => polygon.length)).toEqual([2, 1]);
    expect(outline[0]?.[0]?.[0]).toEqual(outline[0]?.[0]?.at(-1));
  });

  it('is empty for stated, unknown and refused zones', () => {
    expect(treatableOutline(lawn, 'card')).toEqual([]);
    expect(treatableOutline(lawn, 'nothing')).toEqual([]);
    expect(
      treatableOutline(
        property([
          zone(
            'bad',
            polygonFt([
              [0, 0],
              [10, 0],
              [5, 0],
            ]),
          ),
        ]),
        'bad',
      ),
    ).toEqual([]);
  });
});

describe('excludedOutlines', () => {
  it('draws exclusions with their keep-away strip and leaves out what cannot be read', () => {
    const outlines = excludedOutlines(lawn);
    expect(outlines.map((each) => each.exclusionId)).toEqual(['house', 'drive']);
    expect(areaSqFt(outlines[0]!.outline)).toBeCloseTo(1200, 0);
    // 10 x 120 grown by 1: 1,200 + 2 x 130 + pi.
    expect(areaSqFt(outlines[1]!.outline)).toBeCloseTo(1200 + 260 + Math.PI, 0);
  });
});

describe('repairPolygon', () => {
  it('keeps the measured area, and what it makes is planned', () => {
    const tie = polygonFt([
      [0, 0],
      [100, 100],
      [100, 0],
      [0, 100],
    ]);
    const repaired = repairPolygon(tie);
    if (!repaired.ok) throw new Error(repaired.error.detail);
    expect(repaired.value.type).toBe('MultiPolygon');
    const before = measureProperty(property([zone('a', tie)]));
    const after = measureProperty(property([zone('a', repaired.value)]));
    expect(after.treatableSqFt).toBeCloseTo(before.treatableSqFt ?? -1, 1);
    expect(before.zones[0]?.plannable).toBe(false);
    expect(after.zones[0]?.plannable).toBe(true);
    expect(after.issues).toEqual([]);
  });

  it('leaves a sound outline with its area and closes an open one', () => {
    const sound = polygonFt(rectangle(0, 0, 100, 50), rectangle(10, 10, 20, 20));
    const repaired = repairPolygon(sound);
    if (!repaired.ok) throw new Error(repaired.error.detail);
    expect(measureProperty(property([zone('a', repaired.value)])).treatableSqFt).toBeCloseTo(4900, 1);
    const open = repairPolygon({ type: 'Polygon', coordinates: [sound.coordinates[0]!.slice(0, -1) as never] });
    if (!open.ok || open.value.type !== 'Polygon') throw new Error('not repaired');
    expect(open.value.coordinates[0]?.[0]).toEqual(open.value.coordinates[0]?.at(-1));
  });

  it.each([
    [
      {
        type: 'Polygon',
        coordinates: [
          [
            [1e6, 1e6],
            [2e6, 1e6],
            [2e6, 2e6],
          ],
        ],
      } as const,
      'geometry-not-lonlat',
    ],
    [polygonFt(rectangle(0, 0, 40_000, 10)), 'geometry-too-large'],
    [
      polygonFt([
        [0, 0],
        [10, 0],
        [5, 0],
      ]),
      'geometry-invalid',
    ],
    [{ type: 'Polygon', coordinates: [] } as const, 'geometry-invalid'],
  ])('refuses %o', (geometry, code) => {
    const repaired = repairPolygon(geometry as never, 'zone back');
    expect(repaired).toMatchObject({ ok: false, error: { code, where: 'zone back' } });
  });
});
