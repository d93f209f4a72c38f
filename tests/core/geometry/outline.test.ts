import { describe, expect, it } from 'vitest';
import type { AreaGeometry, Position } from '../../../core/book/index.ts';
import { localPlane, readOutline, regionArea } from '../../../core/geometry/index.ts';
import { type Corner, rectangle, ringAt } from './shapes.ts';

const HOME: Position = [-83, 40];
const plane = localPlane(HOME);
const ring = (corners: readonly Corner[]) => ringAt(HOME, corners);
const polygon = (...rings: readonly (readonly Corner[])[]): AreaGeometry => ({
  type: 'Polygon',
  coordinates: rings.map(ring),
});

function read(geometry: AreaGeometry) {
  const outline = readOutline(geometry, plane);
  if (outline.kind === 'refused') return { net: null, gross: null, codes: outline.faults.map((each) => each.code) };
  return {
    net: regionArea(outline.net),
    gross: regionArea(outline.gross),
    codes: outline.faults.map((each) => each.code),
  };
}

describe('readOutline', () => {
  it('takes holes off the net and leaves them in the gross area', () => {
    const { net, gross, codes } = read(
      polygon(rectangle(0, 0, 100, 50), rectangle(10, 10, 20, 20), rectangle(40, 10, 50, 30)),
    );
    expect(net).toBeCloseTo(4700, 2);
    expect(gross).toBeCloseTo(5000, 2);
    expect(codes).toEqual([]);
  });

  it('counts holes that lie over each other once, and says so', () => {
    const { net, codes } = read(
      polygon(rectangle(0, 0, 100, 50), rectangle(10, 10, 20, 20), rectangle(15, 10, 25, 20)),
    );
    expect(net).toBeCloseTo(4850, 2);
    expect(codes).toEqual(['hole-outside']);
  });

  it('cuts of a hole over the edge only what lies inside, and nothing of one outside', () => {
    const over = read(polygon(rectangle(0, 0, 100, 50), rectangle(-10, 10, 10, 20)));
    expect(over.net).toBeCloseTo(4900, 2);
    expect(over.codes).toEqual(['hole-outside']);
    const outside = read(polygon(rectangle(0, 0, 100, 50), rectangle(200, 10, 210, 20)));
    expect(outside.net).toBeCloseTo(5000, 2);
    expect(outside.codes).toEqual(['hole-outside']);
  });

  it('leaves out holes without ground with a warning', () => {
    const { net, codes } = read(
      polygon(rectangle(0, 0, 100, 50), [
        [10, 10],
        [20, 10],
        [15, 10],
      ]),
    );
    expect(net).toBeCloseTo(5000, 2);
    expect(codes).toEqual(['hole-ignored']);
  });

  it('keeps an island that a multi-polygon draws in the hole of another part', () => {
    const { net, gross } = read({
      type: 'MultiPolygon',
      coordinates: [
        [ring(rectangle(0, 0, 100, 50)), ring(rectangle(10, 10, 40, 40))],
        [ring(rectangle(20, 20, 30, 30))],
      ],
    });
    expect(net).toBeCloseTo(5000 - 900 + 100, 2);
    expect(gross).toBeCloseTo(5000, 2);
  });

  it('counts parts that overlap once', () => {
    const both: AreaGeometry = {
      type: 'MultiPolygon',
      coordinates: [[ring(rectangle(0, 0, 20, 10))], [ring(rectangle(10, 0, 30, 10))]],
    };
    expect(read(both).net).toBeCloseTo(300, 2);
  });

  it('leaves out a part without width and keeps the rest', () => {
    const { net, codes } = read({
      type: 'MultiPolygon',
      coordinates: [
        [ring(rectangle(0, 0, 20, 10))],
        [
          ring([
            [50, 0],
            [60, 0],
            [55, 0],
          ]),
        ],
      ],
    });
    expect(net).toBeCloseTo(200, 2);
    expect(codes).toEqual(['part-ignored']);
  });

  it('closes an open ring, in either direction, and tells the gap', () => {
    const open = ring(rectangle(0, 0, 100, 50)).slice(0, -1);
    for (const corners of [open, open.toReversed()]) {
      const outline = readOutline({ type: 'Polygon', coordinates: [corners] }, plane);
      if (outline.kind !== 'outline') throw new Error('refused');
      expect(regionArea(outline.net)).toBeCloseTo(5000, 2);
      expect(outline.faults.map((each) => each.code)).toEqual(['geometry-not-closed']);
      expect(outline.faults[0]?.message).toContain('50.0 m');
    }
  });

  it.each([
    [50, 'warning', /Check that side/],
    [1.2, 'warning', /Check that side/],
    [0.8, 'note', /straight side\.$/],
    [0.1, 'note', /straight side\.$/],
  ] as const)('takes a gap of %d m for a %s', (gap, severity, words) => {
    // The last corner lies on the western side, so far north of the first.
    const corners = ring([...rectangle(0, 0, 100, 50).slice(0, -1), [0, gap]]).slice(0, -1);
    const outline = readOutline({ type: 'Polygon', coordinates: [corners] }, plane);
    if (outline.kind !== 'outline') throw new Error('refused');
    expect(outline.faults.map((each) => [each.code, each.severity])).toEqual([['geometry-not-closed', severity]]);
    expect(outline.faults[0]?.message).toMatch(words);
  });

  it('passes over corners that are there twice, three times, and tells how many', () => {
    const corners = ring(rectangle(0, 0, 100, 50)).flatMap((each) => [each, each, each]);
    const outline = readOutline({ type: 'Polygon', coordinates: [corners] }, plane);
    if (outline.kind !== 'outline') throw new Error('refused');
    expect(regionArea(outline.net)).toBeCloseTo(5000, 2);
    expect(outline.faults.map((each) => each.code)).toEqual(['geometry-repeated-corner']);
    expect(outline.faults[0]?.message).toContain('10 corners');
  });

  it.each([
    [
      'a bow-tie',
      [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
      50,
    ],
    [
      'a bow-tie with a corner in the crossing',
      [
        [0, 0],
        [5, 5],
        [10, 10],
        [10, 0],
        [5, 5],
        [0, 10],
      ],
      50,
    ],
    ['a ring walked twice', [...rectangle(0, 0, 10, 10), ...rectangle(0, 0, 10, 10)], 100],
  ] as const)('fills %s nonzero and marks it with the place', (_, corners, area) => {
    const outline = readOutline(polygon(corners), plane);
    if (outline.kind !== 'outline') throw new Error('refused');
    expect(regionArea(outline.net)).toBeCloseTo(area, 2);
    expect(outline.faults.map((each) => [each.code, each.severity])).toEqual([['geometry-self-crossing', 'error']]);
    const [longitude, latitude] = outline.faults[0]?.at ?? [0, 0];
    expect(longitude).toBeCloseTo(-83, 3);
    expect(latitude).toBeCloseTo(40, 3);
  });

  it('gives the place of a bow-tie crossing to a millimetre', () => {
    const outline = readOutline(
      polygon([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]),
      plane,
    );
    const at = plane.toPlane(outline.faults[0]?.at ?? HOME);
    expect(at.x).toBeCloseTo(5, 3);
    expect(at.y).toBeCloseTo(5, 3);
  });

  it('takes a pinched ring and a spike for what they are: no crossing', () => {
    expect(
      read(
        polygon([
          [0, 0],
          [20, 0],
          [10, 10],
          [20, 20],
          [0, 20],
          [10, 10],
        ]),
      ),
    ).toMatchObject({ codes: [] });
    const spiked = read(
      polygon([
        [0, 0],
        [20, 0],
        [20, 20],
        [40, 20],
        [20, 20],
        [0, 20],
      ]),
    );
    expect(spiked.net).toBeCloseTo(400, 2);
    expect(spiked.codes).toEqual([]);
  });

  it('tells a crossing that hides its own area from the shoelace sum', () => {
    // 200 m2 gone round twice and 100 m2 gone round backwards: the shoelace sum is the filled area, 5,100 m2.
    const twice: Corner[] = [
      [20, 20],
      [30, 20],
      [30, 40],
      [20, 40],
      [20, 20],
    ];
    const backwards: Corner[] = [
      [0, -10],
      [-10, -10],
      [-10, 0],
    ];
    const path: Corner[] = [...rectangle(0, 0, 100, 50), [0, 20], ...twice, [0, 20], [0, 0], ...backwards];
    const outline = readOutline(polygon(path), plane);
    expect(outline.kind === 'outline' ? regionArea(outline.net) : null).toBeCloseTo(5100, 2);
    expect(outline.faults.map((each) => each.code)).toEqual(['geometry-self-crossing']);
  });

  it('only notes a crossing smaller than a hand', () => {
    const { codes } = read(
      polygon([
        [0, 0],
        [10, 0],
        [10, 10],
        [0.005, 10],
        [-0.005, 10.01],
        [0, 10.01],
        [0, 9.99],
      ]),
    );
    expect(codes).toEqual(['geometry-hairline-crossing']);
  });

  it.each([
    [
      'a line out and back',
      [
        [0, 0],
        [50, 0],
        [20, 0],
      ],
      'geometry-zero-width',
    ],
    [
      'a strip of 2 mm',
      [
        [0, 0],
        [50, 0],
        [50, 0.002],
        [0, 0.002],
      ],
      'geometry-zero-width',
    ],
    [
      'two corners',
      [
        [0, 0],
        [50, 0],
      ],
      'geometry-zero-width',
    ],
    ['one corner', [[0, 0]], 'geometry-too-few-corners'],
  ] as const)('refuses %s', (_, corners, code) => {
    expect(read(polygon(corners as readonly Corner[]))).toEqual({ net: null, gross: null, codes: [code] });
  });

  it('keeps an edging strip a hand wide', () => {
    expect(
      read(
        polygon([
          [0, 0],
          [50, 0],
          [50, 0.1],
          [0, 0.1],
        ]),
      ).net,
    ).toBeCloseTo(5, 2);
  });

  it('refuses an outline without rings', () => {
    expect(read({ type: 'Polygon', coordinates: [] }).codes).toEqual(['geometry-invalid']);
    expect(read({ type: 'MultiPolygon', coordinates: [] }).codes).toEqual(['geometry-invalid']);
  });
});
