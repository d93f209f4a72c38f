import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { createRandom } from '../../core/base/index.ts';
import type { AreaGeometry, Position, Property } from '../../core/book/index.ts';
import { measureProperty } from '../../core/measure/index.ts';
import { METRES_PER_FOOT, SQUARE_FEET_PER_ACRE, SQUARE_METRES_PER_SQUARE_FOOT } from '../../core/units/index.ts';

/** Outlines are put down with GeographicLib (C. F. F. Karney), so that no code under test draws its own input. */
const HOME: Position = [-83, 40];

function place(centre: Position, east: number, north: number): Position {
  const bearing = (Math.atan2(east, north) * 180) / Math.PI;
  const end = geodesic.Geodesic.WGS84.Direct(centre[1], centre[0], bearing, Math.hypot(east, north));
  return [end.lon2 ?? Number.NaN, end.lat2 ?? Number.NaN];
}

function lawn(geometry: AreaGeometry): Property {
  const zone = { id: 'z', name: 'z', shape: { kind: 'drawn' as const, geometry }, slopeDeg: 0, gateIds: [] };
  const base = {
    id: 'p',
    name: 'p',
    address: '',
    parking: HOME,
    noTrailer: false,
    gates: [],
    exclusions: [],
    cautions: [],
    note: '',
  };
  return { ...base, zones: [zone] };
}

const areaSqFt = (ring: readonly Position[]) =>
  measureProperty(lawn({ type: 'Polygon', coordinates: [ring] })).treatableSqFt ?? Number.NaN;

function drawn(corners: readonly (readonly [number, number])[], unit: number): number {
  const ring = corners.map(([east, north]) => place(HOME, east * unit, north * unit));
  return areaSqFt([...ring, ring[0]!]);
}

const ellipse = (across: number, along: number) =>
  Array.from({ length: 720 }, (_, index): readonly [number, number] => {
    const angle = (Math.PI * index) / 360;
    return [(across / 2) * Math.cos(angle), (along / 2) * Math.sin(angle)];
  });

describe('areas of simple shapes against published answers', () => {
  it('Notes on the National Pesticide Applicator Certification Core Manual ch. 11: 1,320 x 120 ft is 158,400 ft2, 3.6 acres', () => {
    const area = drawn(
      [
        [0, 0],
        [1320, 0],
        [1320, 120],
        [0, 120],
      ],
      METRES_PER_FOOT,
    );
    expect(area).toBeCloseTo(158_400, 0);
    expect(Number((area / SQUARE_FEET_PER_ACRE).toFixed(1))).toBe(3.6);
  });

  it('S. Stone-Schmidt, UC ANR: a circle 40 ft across is 1,256 ft2 with pi as 3.14', () => {
    const area = drawn(ellipse(40, 40), METRES_PER_FOOT);
    expect(Math.abs(area - 1256)).toBeLessThan(1);
    expect(area / (Math.PI * 400)).toBeCloseTo(1, 4);
  });

  it('Virginia Turfgrass Council, Size of Treatment Area: a triangle with base 40 ft and height 80 ft is 1,600 ft2, a rectangle of 50 x 30 ft is 1,500 ft2', () => {
    expect(
      drawn(
        [
          [0, 0],
          [40, 0],
          [13, 80],
        ],
        METRES_PER_FOOT,
      ),
    ).toBeCloseTo(1600, 1);
    expect(
      drawn(
        [
          [0, 0],
          [50, 0],
          [50, 30],
          [0, 30],
        ],
        METRES_PER_FOOT,
      ),
    ).toBeCloseTo(1500, 1);
  });

  it('Surveying calculations, mathhelpforum.com/trigonometry/126576: a trapezoid with sides 19.4 and 39.6, 25 apart, is 737.5', () => {
    expect(
      drawn(
        [
          [0, 0],
          [39.6, 0],
          [24, 25],
          [4.6, 25],
        ],
        METRES_PER_FOOT,
      ),
    ).toBeCloseTo(737.5, 1);
  });

  it('American football field, en.wikipedia.org: 360 x 160 ft is 57,600 ft2 and 1.32 acres', () => {
    const area = drawn(
      [
        [0, 0],
        [360, 0],
        [360, 160],
        [0, 160],
      ],
      METRES_PER_FOOT,
    );
    expect(area).toBeCloseTo(57_600, 0);
    expect(Number((area / SQUARE_FEET_PER_ACRE).toFixed(2))).toBe(1.32);
  });

  it('Measuring turf, informedfarmers.com/measuring-turf-grass: an oval 23 m x 17 m is 312.8 m2 by the rule of thumb (0.8 of the box); as an ellipse it is 307.1', () => {
    const area = drawn(ellipse(23, 17), 1) * SQUARE_METRES_PER_SQUARE_FOOT;
    expect(Number(area.toFixed(1))).toBe(307.1);
    expect(Math.abs(area / 312.8 - 1)).toBeLessThan(0.02);
  });
});

describe('areas on the ellipsoid against GeographicLib (C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87, 2013)', () => {
  function karney(ring: readonly Position[]): number {
    const polygon = geodesic.Geodesic.WGS84.Polygon(false);
    for (const [longitude, latitude] of ring.slice(0, -1)) polygon.AddPoint(latitude, longitude);
    return Math.abs(polygon.Compute(false, true).area ?? Number.NaN);
  }

  function star(seed: number, centre: Position, areaSqM: number): Position[] {
    const { unit, below } = createRandom(seed);
    const count = 3 + below(60);
    const size = Math.sqrt(areaSqM / 2);
    const ring = Array.from({ length: count }, (_, index) => {
      const angle = (2 * Math.PI * (index + 0.9 * unit())) / count;
      const distance = size * (0.5 + unit());
      return place(centre, distance * Math.cos(angle), distance * Math.sin(angle));
    });
    return [...ring, ring[0]!];
  }

  const latitudes = [25, 30, 35, 40, 45, 50, 61, -34, 0];
  it.each([100, 1000, 5000, 20_000, 100_000, 400_000])(
    'random lawns of about %d m2 are right to 5 parts in a million at nine latitudes',
    (areaSqM) => {
      for (const latitude of latitudes) {
        for (let seed = 1; seed <= 40; seed += 1) {
          const ring = star(seed, [-100 + latitude, latitude], areaSqM);
          const wanted = karney(ring);
          const error = Math.abs((areaSqFt(ring) * SQUARE_METRES_PER_SQUARE_FOOT) / wanted - 1);
          // Corners lie on a grid of 10 um, which is a few cm2 of the smallest lawns.
          expect(error, `latitude ${latitude}, seed ${seed}`).toBeLessThan(Math.max(5e-6, 0.001 / wanted));
        }
      }
    },
  );

  it('a lot of 213 x 111 m across the 180th meridian is no larger than elsewhere', () => {
    const corners = [
      [0, 0],
      [213, 0],
      [213, 111],
      [0, 111],
    ] as const;
    const ring = corners.map(([east, north]) => place([180, 10], east - 100, north - 50));
    expect(areaSqFt([...ring, ring[0]!]) * SQUARE_METRES_PER_SQUARE_FOOT).toBeCloseTo(213 * 111, 0);
  });
});
