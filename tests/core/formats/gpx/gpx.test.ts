import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Position } from '../../../../core/book/index.ts';
import { gpxReader } from '../../../../core/formats/gpx/index.ts';
import { simplify } from '../../../../core/formats/gpx/simplify.ts';
import type { WalkOptions } from '../../../../core/formats/index.ts';
import { areaSqMOf, readGround, refuseGround } from '../../../support/ground.ts';
import { METRES_PER_DEGREE_EAST, METRES_PER_DEGREE_NORTH, ORIGIN } from './plane.ts';

type Point = readonly [x: number, y: number];

const place = ([x, y]: Point): Position => [
  ORIGIN[0] + x / METRES_PER_DEGREE_EAST,
  ORIGIN[1] + y / METRES_PER_DEGREE_NORTH,
];
const trkpt = (point: Point) => {
  const [longitude, latitude] = place(point);
  return `<trkpt lat="${latitude}" lon="${longitude}"><time>2026-05-01T08:00:00Z</time></trkpt>`;
};
const track = (...segments: readonly (readonly Point[])[]) =>
  `<trk><name>Front</name>${segments.map((each) => `<trkseg>${each.map(trkpt).join('')}</trkseg>`).join('')}</trk>`;
const gpx = (body: string) =>
  new TextEncoder().encode(`<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">\n${body}</gpx>`);

async function onlyRecord(body: string, walk: WalkOptions = { closeWithinM: 15, simplifyM: 0.15 }) {
  const source = await readGround(gpxReader, gpx(body), 'walk.gpx', { walk });
  const [feature] = source.layers[0]?.features ?? [];
  if (feature === undefined) throw new Error('no record');
  return feature;
}

/** 40 m by 30 m, walked with a step a metre from the south-west corner; the last `gap` metres are not walked. */
function perimeter(gap: number): readonly Point[] {
  const length = 140 - gap;
  return Array.from({ length: Math.floor(length) + 1 }, (_, step): Point => {
    if (step <= 40) return [step, 0];
    if (step <= 70) return [40, step - 40];
    return step <= 110 ? [110 - step, 30] : [0, 140 - step];
  });
}

describe('a walked perimeter', () => {
  it('becomes an outline of four corners when it ends where it began', async () => {
    const record = await onlyRecord(track(perimeter(0)));
    expect(record.geometry).toMatchObject({ type: 'Polygon', coordinates: [{ length: 5 }] });
    expect(record.issues).toEqual([]);
    expect(record.attributes).toEqual({
      name: 'Front',
      desc: null,
      cmt: null,
      type: null,
      time: '2026-05-01T08:00:00Z',
    });
    expect(areaSqMOf(record.geometry)).toBeCloseTo(1200, 1);
  });

  it('is closed over a gap of up to 15 m, and says how far', async () => {
    const record = await onlyRecord(track(perimeter(14)));
    expect(record.geometry?.type).toBe('Polygon');
    expect(areaSqMOf(record.geometry)).toBeCloseTo(1200, 1);
    expect(record.issues).toMatchObject([{ severity: 'note', code: 'track-closed' }]);
    expect(record.issues[0]?.message).toContain('14.0 m');
  });

  it('stays a line over a wider gap, with the gap in its issue', async () => {
    const record = await onlyRecord(track(perimeter(16)));
    expect(record.geometry?.type).toBe('LineString');
    expect(record.issues).toMatchObject([{ severity: 'warning', code: 'track-open' }]);
    expect(record.issues[0]?.message).toContain('16.0 m');
    const wide = await onlyRecord(track(perimeter(16)), { closeWithinM: 20, simplifyM: 0 });
    expect(wide.geometry).toMatchObject({ type: 'Polygon', coordinates: [{ length: 126 }] });
  });

  it('joins segments and drops points walked twice', async () => {
    const walk = perimeter(0);
    const segments = [walk.slice(0, 50), [...walk.slice(49, 50), ...walk.slice(49, 90)], walk.slice(90)];
    const joined = await onlyRecord(track(...segments), { closeWithinM: 15, simplifyM: 0 });
    const whole = await onlyRecord(track(walk), { closeWithinM: 15, simplifyM: 0 });
    expect(joined.geometry).toEqual(whole.geometry);
  });

  it('keeps loops for whoever measures', async () => {
    const star = [0, 2, 4, 1, 3, 0].map((corner): Point => {
      const angle = (corner * 2 * Math.PI) / 5;
      return [20 * Math.sin(angle), 20 * Math.cos(angle)];
    });
    const record = await onlyRecord(track(star));
    expect(record.geometry).toMatchObject({ type: 'Polygon', coordinates: [{ length: 6 }] });
  });

  it.each([
    [
      'a straight walk of ten metres',
      [
        [0, 0],
        [5, 0],
        [10, 0],
      ],
    ],
    [
      'a walk out and back',
      [
        [0, 0],
        [20, 0],
        [40, 0],
        [20, 0],
        [0, 0],
      ],
    ],
    [
      'two points',
      [
        [0, 0],
        [3, 0],
      ],
    ],
  ] as readonly (readonly [string, readonly Point[]])[])('makes no outline of %s', async (_, points) => {
    const record = await onlyRecord(track(points));
    expect(record.geometry?.type).toBe('LineString');
    expect(record.issues).toMatchObject([{ severity: 'warning', code: 'track-open' }]);
  });

  it('leaves out points without a place and says how many; without any it is rejected', async () => {
    const hole = '<trkseg><trkpt lat="x" lon="1"/><trkpt lat="95" lon="1"/></trkseg>';
    const record = await onlyRecord(track(perimeter(0)).replace('</trk>', `${hole}</trk>`));
    expect(record.geometry?.type).toBe('Polygon');
    expect(record.issues).toMatchObject([{ code: 'points-left-out', severity: 'warning' }]);
    expect(record.issues[0]?.message).toContain('2 points');
    const none = await onlyRecord(`<trk>${hole}</trk>`);
    expect(none).toMatchObject({ geometry: null, issues: [{ code: 'geometry-missing', severity: 'error' }] });
  });
});

describe('routes and waypoints', () => {
  it('are lines and points with name, note and time, each kind a layer', async () => {
    const body = `<wpt lat="40" lon="-83"><time>2026-05-01T08:00:00Z</time><name>Gate</name><desc>green</desc></wpt>
      <wpt lat="40" lon="x"/><rte><name>Way</name><rtept lat="40" lon="-83"/><rtept lat="41" lon="-83"/></rte>`;
    const source = await readGround(gpxReader, gpx(body), 'walk.gpx');
    expect(source.layers.map((each) => [each.name, each.features.length])).toEqual([
      ['Routes', 1],
      ['Waypoints', 2],
    ]);
    expect(source.layers[0]?.features[0]?.geometry).toEqual({
      type: 'LineString',
      coordinates: [
        [-83, 40],
        [-83, 41],
      ],
    });
    expect(source.layers[1]?.features[0]).toMatchObject({
      where: 'walk.gpx, waypoint 1 (line 2)',
      geometry: { type: 'Point', coordinates: [-83, 40] },
      attributes: { name: 'Gate', desc: 'green', time: '2026-05-01T08:00:00Z' },
    });
    expect(source.layers[1]?.features[1]).toMatchObject({ geometry: null, issues: [{ code: 'geometry-missing' }] });
  });

  it('says when there are none, and refuses other XML', async () => {
    expect((await readGround(gpxReader, gpx(''), 'walk.gpx')).issues).toMatchObject([{ code: 'file-empty' }]);
    const other = new TextEncoder().encode('<kml/>');
    expect(await refuseGround(gpxReader, other, 'walk.gpx')).toMatchObject({
      code: 'format-invalid',
      where: 'walk.gpx, line 1',
    });
  });
});

describe('simplify', () => {
  const walk = fc.array(
    fc.record({ x: fc.double({ min: 0, max: 5, noNaN: true }), y: fc.double({ min: 0, max: 5, noNaN: true }) }),
    {
      minLength: 1,
      maxLength: 60,
    },
  );

  it('keeps both ends, and every point within the tolerance of what replaces it', () => {
    fc.assert(
      fc.property(walk, fc.double({ min: 0.05, max: 1, noNaN: true }), (points, tolerance) => {
        const kept = simplify(points, tolerance);
        expect(kept[0]).toBe(0);
        expect(kept.at(-1)).toBe(points.length - 1);
        for (let side = 1; side < kept.length; side += 1) {
          const [from, to] = [kept[side - 1] as number, kept[side] as number];
          for (let index = from; index <= to; index += 1) {
            const apart = distanceToSegment(points[index], points[from], points[to]);
            expect(apart).toBeLessThanOrEqual(tolerance + 1e-9);
          }
        }
      }),
    );
  });
});

type At = { readonly x: number; readonly y: number };

function distanceToSegment(point: At | undefined, from: At | undefined, to: At | undefined): number {
  if (point === undefined || from === undefined || to === undefined) throw new Error('no point');
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / square;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - from.x - share * dx, point.y - from.y - share * dy);
}
