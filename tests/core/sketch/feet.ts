import type { AreaGeometry, Position } from '../../../core/book/index.ts';
import { outlineArea } from '../../../core/geometry/index.ts';
import { type Corners, polygonOf } from '../../../core/sketch/index.ts';
import { type Corner, placeAt, rectangle } from '../geometry/shapes.ts';

/** Shapes in feet round one place. GeographicLib puts them down, so they owe nothing to the code under test. */

export const HOME: Position = [-83, 40];

/** A place so many feet east and north of home. */
export const feetAt = (east: number, north: number): Position => placeAt(HOME, [east * 0.3048, north * 0.3048]);

export const cornersInFeet = (corners: readonly Corner[]): Corners => corners.map(([x, y]) => feetAt(x, y));

/** An upright rectangle, feet. */
export const block = (west: number, south: number, east: number, north: number): Corners =>
  cornersInFeet(rectangle(west, south, east, north));

export const blockOutline = (west: number, south: number, east: number, north: number): AreaGeometry =>
  polygonOf(block(west, south, east, north));

/** Area of an outline, ft2, by the measure's own code; tests/core/geometry holds that against GeographicLib. */
export const areaSqFt = (geometry: AreaGeometry): number => (outlineArea(geometry).areaSqM ?? Number.NaN) / 0.09290304;

/** The value of a result that must be good. */
export function good<Value>(result: { readonly ok: boolean; readonly value?: Value; readonly error?: unknown }): Value {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value as Value;
}

/** Code and detail of a result that must be a refusal. */
export function refusalOf(result: {
  readonly ok: boolean;
  readonly error?: { readonly code: string; readonly detail: string };
}) {
  if (result.error === undefined) throw new Error('It was not refused.');
  return { code: result.error.code, detail: result.error.detail };
}
