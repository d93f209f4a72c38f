import type { Geometry, Position } from 'geojson';
import { type Issue, issue } from '../base/index.ts';
import { type Projection, projectGeometry } from '../geometry/index.ts';
import type { SourceFeature } from './types.ts';

/** Calls back with every position of a geometry. */
export function eachPosition(geometry: Geometry, see: (position: Position) => void): void {
  if (geometry.type === 'GeometryCollection') for (const member of geometry.geometries) eachPosition(member, see);
  else walk(geometry.coordinates, see);
}

/** Lists of any depth that end in positions. */
type Lists = Position | Position[] | Position[][] | Position[][][];

function walk(lists: Lists, see: (position: Position) => void): void {
  if (typeof lists[0] === 'number') see(lists as Position);
  else for (const each of lists as Exclude<Lists, Position>) walk(each, see);
}

/** Turns the records of a layer into degrees. One that cannot be shown in degrees keeps its attributes and gets an error. */
export function turnFeatures(features: readonly SourceFeature[], projection: Projection): readonly SourceFeature[] {
  return features.map((feature) => {
    if (feature.geometry === null) return feature;
    const geometry = projectGeometry(feature.geometry, projection);
    return geometry === null
      ? { ...feature, geometry, issues: [...feature.issues, offMap(feature.where, projection.name)] }
      : { ...feature, geometry };
  });
}

function offMap(where: string, system: string): Issue {
  const message = `The coordinates lie outside what ${system} can show. Check which system the file is in.`;
  return issue('error', 'coordinates-off-map', where, message);
}
