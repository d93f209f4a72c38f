import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Position } from '../../../core/book/index.ts';
import { distanceMetres, localPlane } from '../../../core/geometry/index.ts';
import { type ControlPoint, mapFromCorners, mapPoint, placePicture } from '../../../core/imagery/index.ts';

const SIZE = { widthPx: 800, heightPx: 600 };
const CENTRE: Position = [-83, 40];
const METRES_PER_FOOT = 0.3048;
const plane = localPlane(CENTRE);

type Lay = (x: number, y: number) => readonly [number, number];
/** A control point whose ground is where `lay` puts the pixel, in metres east and north. */
const pointAt = (lay: Lay, x: number, y: number, moveM: readonly [number, number] = [0, 0]): ControlPoint => {
  const [east, north] = lay(x, y);
  return { px: [x, y], at: plane.toDegrees({ x: east + moveM[0], y: north + moveM[1] }) };
};
/** Turned by an angle and scaled; the picture's y points down. */
const turned =
  (degrees: number, metresPerPx: number): Lay =>
  (x, y) => {
    const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    return [metresPerPx * (x * cosine + y * sine), metresPerPx * (x * sine - y * cosine)];
  };
/** As seen at a slant: the far edge is smaller. */
const slanted: Lay = (x, y) => {
  const depth = 1 + 0.0008 * (600 - y) + 0.0002 * x;
  return [(0.1 * x) / depth, (60 - 0.1 * y) / depth];
};
const sheared: Lay = (x, y) => [0.1 * x + 0.03 * y, -0.12 * y + 0.01 * x];

function placed(points: readonly ControlPoint[], fit: Parameters<typeof placePicture>[2] = null) {
  const answer = placePicture(SIZE, points, fit);
  if (!answer.ok) throw new Error(answer.error.detail);
  return answer.value;
}
const CORNERS = [
  [0, 0],
  [800, 0],
  [800, 600],
  [0, 600],
] as const;
function worstCornerM(points: readonly ControlPoint[], lay: Lay): number {
  const { corners } = placed(points);
  return Math.max(...CORNERS.map(([x, y], index) => distanceMetres(corners[index] ?? CENTRE, pointAt(lay, x, y).at)));
}

describe('a picture is laid by points known in both', () => {
  it('two points turn and scale it, whatever the turn', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: 0.01, max: 2, noNaN: true }),
        (angle, scale) => {
          const lay = turned(angle, scale);
          expect(worstCornerM([pointAt(lay, 100, 80), pointAt(lay, 700, 500)], lay)).toBeLessThan(
            1e-3 * Math.max(1, scale),
          );
        },
      ),
      { numRuns: 200 },
    );
  });

  it('three points shear it, four tilt it', () => {
    expect(
      worstCornerM([pointAt(sheared, 0, 0), pointAt(sheared, 800, 100), pointAt(sheared, 300, 600)], sheared),
    ).toBeLessThan(1e-3);
    const four = [
      pointAt(slanted, 20, 10),
      pointAt(slanted, 780, 30),
      pointAt(slanted, 790, 590),
      pointAt(slanted, 15, 580),
    ];
    expect(worstCornerM(four, slanted)).toBeLessThan(1e-3);
    expect(placed(four).fit).toBe('projective');
  });

  it('shows no residual where the points just suffice, for then anything fits', () => {
    const lay = turned(30, 0.1);
    expect(placed([pointAt(lay, 0, 0), pointAt(lay, 800, 600, [5, 5])]).rmsFt).toBeNull();
    expect(placed([pointAt(lay, 0, 0), pointAt(lay, 800, 0), pointAt(lay, 800, 600, [5, 5])]).rmsFt).toBeNull();
  });

  /**
   * Worked by hand: four corners of a square plan, one of them d = 1 m too far east. The affine fit has one spare pair;
   * a residual of d / 4 is left at each corner, eastwards, with signs + - + -. So each is off by 0.25 m = 0.82 ft, and so is the RMS.
   */
  it('spreads the error of one of four points evenly over a plan that may be sheared', () => {
    const lay = turned(0, 0.1);
    const square = [
      [0, 0],
      [600, 0],
      [600, 600],
      [0, 600],
    ] as const;
    const points = square.map(([x, y], index) => pointAt(lay, x, y, index === 2 ? [1, 0] : [0, 0]));
    const { offFt, rmsFt, fit } = placed(points, 'affine');
    expect(fit).toBe('affine');
    for (const off of offFt) expect(off).toBeCloseTo(0.25 / METRES_PER_FOOT, 3);
    expect(rmsFt).toBeCloseTo(0.25 / METRES_PER_FOOT, 3);
  });

  /** Two points a metre too far apart by stretching, the third in the middle: 2 of 6 equations are spare. */
  it('finds the turn and scale nearest to three points, with nothing left over by them', () => {
    const lay = turned(45, 0.1);
    const points = [pointAt(lay, 0, 300, [0.3, 0]), pointAt(lay, 400, 300), pointAt(lay, 800, 300, [-0.3, 0])];
    const best = placed(points, 'similarity');
    const squares = (tried: readonly number[]) => tried.reduce((sum, off) => sum + off * off, 0);
    // Any other placement near it is worse: the pixels moved, turned or scaled a little.
    for (const [dx, dy, scale] of [
      [1, 0, 1],
      [0, 1, 1],
      [-1, 0, 1],
      [0, -1, 1],
      [0, 0, 1.002],
      [0, 0, 0.998],
    ] as const) {
      const map = mapFromCorners(SIZE, best.corners.map(plane.toPlane));
      const other = points.map(({ px, at }) => {
        const moved = mapPoint(map ?? [1, 0, 0, 0, 1, 0, 0, 0, 1], {
          x: 400 + (px[0] - 400) * scale + dx,
          y: 300 + (px[1] - 300) * scale + dy,
        });
        const ground = plane.toPlane(at);
        return Math.hypot((moved?.x ?? 0) - ground.x, (moved?.y ?? 0) - ground.y) / METRES_PER_FOOT;
      });
      expect(squares(other)).toBeGreaterThan(squares(best.offFt));
    }
  });

  it('tilts by least squares: a wrong fifth point is seen in the residual', () => {
    const good = [
      [20, 10],
      [780, 30],
      [790, 590],
      [15, 580],
      [400, 300],
    ] as const;
    const exact = placed(good.map(([x, y]) => pointAt(slanted, x, y)));
    expect(exact.rmsFt).toBeLessThan(1e-3);
    const wrong = placed(good.map(([x, y], index) => pointAt(slanted, x, y, index === 4 ? [2, 0] : [0, 0])));
    expect(wrong.rmsFt).toBeGreaterThan(1);
  });

  it('knows how much ground a pixel covers', () => {
    const lay = turned(77, 0.05);
    expect(placed([pointAt(lay, 0, 0), pointAt(lay, 800, 600)]).pixelFt).toBeCloseTo(0.05 / METRES_PER_FOOT, 6);
  });
});

describe('points that lay nothing are refused with the reason', () => {
  const lay = turned(10, 0.1);
  it.each([
    ['none', [], null],
    ['one', [pointAt(lay, 0, 0)], null],
    [
      'two on one spot of the picture',
      [pointAt(lay, 5, 5), { px: [5, 5] as const, at: pointAt(lay, 700, 9).at }],
      null,
    ],
    ['two on one spot of the ground', [pointAt(lay, 5, 5), { px: [700, 5] as const, at: pointAt(lay, 5, 5).at }], null],
    ['three on a line', [pointAt(lay, 0, 0), pointAt(lay, 100, 100), pointAt(lay, 300, 300)], null],
    [
      'two exchanged',
      [
        pointAt(lay, 0, 0),
        { px: [800, 0] as const, at: pointAt(lay, 0, 600).at },
        { px: [0, 600] as const, at: pointAt(lay, 800, 0).at },
      ],
      null,
    ],
    [
      'four, two exchanged',
      [
        pointAt(lay, 0, 0),
        { px: [800, 0] as const, at: pointAt(lay, 800, 600).at },
        { px: [800, 600] as const, at: pointAt(lay, 800, 0).at },
        pointAt(lay, 0, 600),
      ],
      null,
    ],
    ['too few for what is asked', [pointAt(lay, 0, 0), pointAt(lay, 800, 600)], 'affine' as const],
  ])('%s', (_name, points, fit) => {
    expect(placePicture(SIZE, points, fit)).toMatchObject({ ok: false, error: { code: 'geometry-invalid' } });
  });

  it('a point in another state', () => {
    const far: ControlPoint = { px: [800, 600], at: [-84, 40] };
    expect(placePicture(SIZE, [pointAt(lay, 0, 0), far])).toMatchObject({
      ok: false,
      error: { code: 'geometry-too-large' },
    });
  });
});

describe('the screen', () => {
  it('the corners of a picture go to their places, and what lies between them in line', () => {
    const map = mapFromCorners(SIZE, [
      { x: 10, y: 20 },
      { x: 410, y: 20 },
      { x: 410, y: 320 },
      { x: 10, y: 320 },
    ]);
    const middle = mapPoint(map ?? [0, 0, 0, 0, 0, 0, 0, 0, 0], { x: 400, y: 300 });
    expect(middle?.x).toBeCloseTo(210, 9);
    expect(middle?.y).toBeCloseTo(170, 9);
    expect(
      mapFromCorners(SIZE, [
        { x: 0, y: 0 },
        { x: 1, y: 1 },
      ]),
    ).toBeNull();
  });
});
