import { describe, expect, it } from 'vitest';
import type { AreaGeometry, Position } from '../../../core/book/index.ts';
import {
  boundingBox,
  centreOf,
  containsPosition,
  cornersOf,
  distanceMetres,
  nearestOnOutline,
  outlinesOverlap,
} from '../../../core/geometry/index.ts';
import { rectangle, ringAt } from './shapes.ts';

const HOME: Position = [-83, 40];
const lawn: AreaGeometry = { type: 'Polygon', coordinates: [ringAt(HOME, rectangle(0, 0, 40, 20))] };
const both: AreaGeometry = {
  type: 'MultiPolygon',
  coordinates: [lawn.coordinates as Position[][], [ringAt(HOME, rectangle(100, 0, 120, 20))]],
};
const at = (east: number, north: number) => ringAt(HOME, [[east, north]])[0]!;

describe('helpers in degrees', () => {
  it('frame outlines and positions', () => {
    const [west, south, east, north] = boundingBox([both, [-83.01, 40]]) ?? [];
    expect(west).toBe(-83.01);
    expect(south).toBeCloseTo(40, 6);
    expect(east).toBeCloseTo(at(120, 0)[0], 6);
    expect(north).toBeCloseTo(at(0, 20)[1], 6);
    expect(boundingBox([])).toBeNull();
  });

  it('give the middle of an outline', () => {
    expect(distanceMetres(centreOf(lawn) ?? HOME, at(20, 10))).toBeLessThan(0.01);
    expect(centreOf({ type: 'Polygon', coordinates: [] })).toBeNull();
    expect(cornersOf(both)).toHaveLength(10);
  });

  it('tell what lies inside', () => {
    expect(containsPosition(lawn, at(20, 10))).toBe(true);
    expect(containsPosition(lawn, at(60, 10))).toBe(false);
    expect(containsPosition(both, at(110, 10))).toBe(true);
  });

  it('take a ring that is not closed as closed with a straight side, and one that goes round nothing as nothing', () => {
    const open: AreaGeometry = { type: 'Polygon', coordinates: [(lawn.coordinates[0] as Position[]).slice(0, -1)] };
    expect(containsPosition(open, at(20, 10))).toBe(true);
    expect(containsPosition(open, at(60, 10))).toBe(false);
    // The side that is not there runs along the west.
    expect(distanceMetres(nearestOnOutline(open, at(-5, 10)) ?? HOME, at(0, 10))).toBeLessThan(0.01);
    for (const coordinates of [[], [[]], [[at(0, 0)]], [[at(0, 0), at(40, 0)]]])
      expect(containsPosition({ type: 'Polygon', coordinates }, at(20, 0))).toBe(false);
    const holed: AreaGeometry = {
      type: 'Polygon',
      coordinates: [...lawn.coordinates, [at(20, 10), at(21, 10)]],
    } as never;
    expect(containsPosition(holed, at(20, 10))).toBe(true);
  });

  it('find the nearest point of an outline', () => {
    expect(distanceMetres(nearestOnOutline(lawn, at(20, -15)) ?? HOME, at(20, 0))).toBeLessThan(0.01);
    expect(distanceMetres(nearestOnOutline(both, at(109, 30)) ?? HOME, at(109, 20))).toBeLessThan(0.01);
    expect(nearestOnOutline({ type: 'Polygon', coordinates: [] }, HOME)).toBeNull();
  });

  it('tell whether outlines have ground in common', () => {
    const beside: AreaGeometry = { type: 'Polygon', coordinates: [ringAt(HOME, rectangle(40, 0, 60, 20))] };
    const over: AreaGeometry = { type: 'Polygon', coordinates: [ringAt(HOME, rectangle(39, 0, 60, 20))] };
    const far: AreaGeometry = { type: 'Polygon', coordinates: [ringAt([-90, 30], rectangle(0, 0, 60, 20))] };
    expect(outlinesOverlap(beside, lawn)).toBe(false);
    expect(outlinesOverlap(beside, lawn, 0.5)).toBe(true);
    expect(outlinesOverlap(over, lawn)).toBe(true);
    expect(outlinesOverlap(far, lawn)).toBe(false);
    expect(outlinesOverlap({ type: 'Polygon', coordinates: [] }, lawn)).toBe(false);
  });
});
