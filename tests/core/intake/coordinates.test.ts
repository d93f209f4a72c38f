import { describe, expect, it } from 'vitest';
import type { Position } from '../../../core/book/index.ts';
import { outlineArea } from '../../../core/geometry/index.ts';
import { type CoordinatesAnswer, readScale, scaleErrorShare, unitResidualM } from '../../../core/intake/index.ts';
import { placeAt, ringAt } from '../geometry/shapes.ts';
import { HOME } from '../measure/lawns.ts';
import { emptyOne, layerOf, look, sourceOf } from './sources.ts';

/** A rectangle of 40 by 25 units in a drawing, its first corner at (100, 50). */
const rectangle = {
  type: 'Polygon' as const,
  coordinates: [
    [
      [100, 50],
      [140, 50],
      [140, 75],
      [100, 75],
      [100, 50],
    ],
  ],
};
const drawing = { kind: 'drawing', metresPerUnit: 1, why: 'A drawing has no place.' } as const;
const imported = (coordinates: CoordinatesAnswer | null) => {
  const layer = layerOf([{ id: 'd', geometry: rectangle }], 'plan', drawing);
  const source = sourceOf(layer);
  return look(source, emptyOne(), { layers: [{ role: 'properties', fields: {}, ownIds: true, coordinates }] });
};
const outlineOf = (coordinates: CoordinatesAnswer) => {
  const shape = imported(coordinates).properties[0]?.after.zones[0]?.shape;
  if (shape?.kind !== 'drawn' || shape.geometry.type !== 'Polygon') throw new Error('an outline was expected');
  return shape.geometry;
};

describe('a drawing', () => {
  // The base from (100, 50) to (140, 50) lies 20 m along north-east: half a metre to a unit, y axis to 315 degrees.
  const end: Position = placeAt(HOME, [20 * Math.SQRT1_2, 20 * Math.SQRT1_2]);
  const twoPoints: CoordinatesAnswer = {
    kind: 'two-points',
    first: { drawing: [100, 50], ground: HOME },
    second: { drawing: [140, 50], ground: end },
  };

  it('is laid on the ground by two points: scale, turn and place', () => {
    const geometry = outlineOf(twoPoints);
    expect(outlineArea(geometry).areaSqM).toBeCloseTo(40 * 25 * 0.25, 3);
    const [first, second, third] = geometry.coordinates[0] ?? [];
    expect(first?.[0]).toBeCloseTo(HOME[0], 9);
    expect(second?.[0]).toBeCloseTo(end[0], 8);
    // 20 m north-east and then 12.5 m north-west.
    const corner = placeAt(HOME, [(20 - 12.5) * Math.SQRT1_2, (20 + 12.5) * Math.SQRT1_2]);
    expect(third?.[0]).toBeCloseTo(corner[0], 7);
    expect(third?.[1]).toBeCloseTo(corner[1], 7);
  });

  it('is laid the same by one point with unit and bearing', () => {
    const one = outlineOf({
      kind: 'one-point',
      point: { drawing: [100, 50], ground: HOME },
      metresPerUnit: 0.5,
      bearingDeg: 315,
    });
    const two = outlineOf(twoPoints);
    for (const [index, corner] of (one.coordinates[0] ?? []).entries()) {
      expect(corner[0]).toBeCloseTo(two.coordinates[0]?.[index]?.[0] ?? Number.NaN, 7);
      expect(corner[1]).toBeCloseTo(two.coordinates[0]?.[index]?.[1] ?? Number.NaN, 7);
    }
  });

  it('is rejected where nobody says where it lies, or two points are one', () => {
    for (const answer of [null, { ...twoPoints, second: twoPoints.first }] as const) {
      const preview = imported(answer);
      expect(preview.rows.map((each) => each.issues.map((one) => one.code))).toEqual([['coordinates-unknown']]);
      expect(preview.issues.map((each) => each.code)).toEqual(['coordinates-unknown']);
    }
  });

  it('has a scale with an error: 0.3 m on a base of 30 m is 2.8 % of an area', () => {
    // Two independent ends, area by the square of the scale: 2 sqrt(2) s / D = 2 * 1.41421 * 0.3 / 30.
    expect(scaleErrorShare(0.3, 30)).toBeCloseTo(0.0283, 4);
    const scale = readScale(twoPoints.first, twoPoints.second);
    expect(scale?.metresPerUnit).toBeCloseTo(0.5, 6);
    expect(scale?.baseM).toBeCloseTo(20, 4);
    // In metres the base would be 40 m long and is 20 m.
    expect(unitResidualM(twoPoints.first, twoPoints.second, 1)).toBeCloseTo(20, 4);
  });
});

describe('a layer of unknown coordinates', () => {
  const unknown = { kind: 'unknown', why: 'No system is named.' } as const;
  const grid = layerOf([{ id: 'u', geometry: { type: 'Point', coordinates: [500_000, 4_430_000] } }], 'grid', unknown);
  const seen = (coordinates: CoordinatesAnswer | null) =>
    look(sourceOf(grid), emptyOne(), { layers: [{ role: 'properties', fields: {}, ownIds: true, coordinates }] });

  it('is placed by an EPSG code', () => {
    // The central meridian of UTM zone 16 is 87 degrees west and has 500,000 m east (EPSG dataset).
    expect(seen({ kind: 'epsg', code: 32_616 }).properties[0]?.after.parking[0]).toBeCloseTo(-87, 9);
  });

  it('is rejected under a code that is not known, and in degrees that it cannot be', () => {
    expect(seen({ kind: 'epsg', code: 99_999 }).issues.map((each) => each.code)).toEqual(['coordinates-unknown']);
    expect(seen({ kind: 'degrees' }).rows[0]?.issues.map((each) => each.code)).toEqual(['geometry-not-lonlat']);
    expect(seen(null).counts.rejected).toBe(1);
  });
});

describe('lines', () => {
  const corners = [
    [0, 0],
    [40, 0],
    [40, 30],
    [0, 30],
  ] as const;
  const line = (count: number) => ({
    type: 'LineString' as const,
    coordinates: ringAt(HOME, corners)
      .slice(0, count)
      .map((each) => [...each]),
  });
  const closed = (count: number, closeLines: boolean) =>
    look(sourceOf(layerOf([{ id: 'l', geometry: line(count) }])), emptyOne(), { closeLines });

  it('are outlines only where that is asked for', () => {
    expect(closed(5, false).rows[0]?.issues.map((each) => each.code)).toEqual(['geometry-not-area']);
    const shape = closed(5, true).properties[0]?.after.zones[0]?.shape;
    expect(shape?.kind === 'drawn' ? outlineArea(shape.geometry).areaSqM : null).toBeCloseTo(1200, 2);
  });

  it('whose ends lie far apart are closed with a warning', () => {
    // From the fourth corner back to the first are 30 m.
    expect(closed(4, true).rows[0]?.issues.map((each) => each.message)).toEqual([
      expect.stringContaining('30 m apart'),
    ]);
    expect(closed(5, true).rows[0]?.issues).toEqual([]);
  });
});
