import type { Geometry, Position } from 'geojson';
import { type Issue, issue } from '../../base/index.ts';
import type { AttributeValue, SourceFeature, WalkOptions } from '../types.ts';
import { childrenOf, fieldOf, type XmlElement } from '../xml/index.ts';
import { type PointList, readPoint, readPoints } from './points.ts';
import { readWalk } from './walk.ts';

export type ReadRecord = { readonly feature: SourceFeature; readonly positions: number };

const missing = (where: string, what: string): Issue =>
  issue(
    'error',
    'geometry-missing',
    where,
    `The ${what} has no place that can be read. Leave it out, or export it again.`,
  );

export function readWaypoint(element: XmlElement, where: string): ReadRecord {
  const at = readPoint(element);
  const geometry: Geometry | null = at === null ? null : { type: 'Point', coordinates: at };
  const issues = at === null ? [missing(where, 'waypoint')] : [];
  const feature = record(element, where, geometry, issues, fieldOf(element, 'time'));
  return { feature: withOwnFields(feature, element), positions: 1 };
}

/** What our own writer says of a gate and of a parking point, under the names that an import knows. */
function withOwnFields(feature: SourceFeature, element: XmlElement): SourceFeature {
  const role = fieldOf(element, 'type');
  const comment = fieldOf(element, 'cmt');
  if (role === 'parking') {
    return { ...feature, attributes: { ...feature.attributes, role, property: comment } };
  }
  const [, width, locked] = /^clear width ([\d.]+) in(, locked)?$/.exec(fieldOf(element, 'desc') ?? '') ?? [];
  if (role !== 'gate' || width === undefined) return feature;
  const own = { role, property: fieldOf(element, 'src'), gatewidth: `${width} in`, locked: locked !== undefined };
  return { ...feature, id: comment, attributes: { ...feature.attributes, ...own } };
}

/** A route is a list of turns to drive, so it stays a line. */
export function readRoute(element: XmlElement, where: string): ReadRecord {
  const turns = childrenOf(element, 'rtept');
  const points = readPoints(turns);
  const geometry = lineOf(points.positions);
  const issues = geometry === null ? [missing(where, 'route')] : skipped(points, where);
  return { feature: record(element, where, geometry, issues, firstTime(turns)), positions: turns.length };
}

/** A track is joined from its segments and closed as an outline where it ends near its start. */
export function readTrack(element: XmlElement, where: string, options: WalkOptions): ReadRecord {
  const steps = childrenOf(element, 'trkseg').flatMap((segment) => childrenOf(segment, 'trkpt'));
  const points = readPoints(steps);
  const walk = readWalk(points.positions, options);
  const geometry = walk.kind === 'none' ? null : walk.geometry;
  const issues = [...(walk.kind === 'none' ? [] : skipped(points, where)), ...walkIssues(walk, where, options)];
  return { feature: record(element, where, geometry, issues, firstTime(steps)), positions: steps.length };
}

function walkIssues(walk: ReturnType<typeof readWalk>, where: string, options: WalkOptions): readonly Issue[] {
  switch (walk.kind) {
    case 'none':
      return [missing(where, 'track')];
    case 'point':
      return [issue('warning', 'track-standing', where, 'All points of the track are at one place.')];
    case 'line': {
      if (walk.why === 'short') {
        const message = 'The track is too short to go round anything. It is kept as a line.';
        return [issue('warning', 'track-open', where, message)];
      }
      const message = `The track ends ${metres(walk.gapM)} from its start, more than ${metres(options.closeWithinM)}. It is kept as a line; close it as a polygon if it goes round the lawn.`;
      return [issue('warning', 'track-open', where, message)];
    }
    case 'outline': {
      if (walk.gapM === 0) return [];
      const message = `The track ended ${metres(walk.gapM)} from its start; its ends were joined.`;
      return [issue('note', 'track-closed', where, message)];
    }
  }
}

function metres(value: number): string {
  return value < 100 ? `${value.toFixed(1)} m` : `${Math.round(value).toLocaleString('en-US')} m`;
}

function skipped({ unreadable }: PointList, where: string): readonly Issue[] {
  if (unreadable === 0) return [];
  const points = unreadable === 1 ? 'One point has' : `${unreadable} points have`;
  return [issue('warning', 'points-left-out', where, `${points} no place that can be read and were left out.`)];
}

function lineOf(positions: readonly Position[]): Geometry | null {
  const [first] = positions;
  if (first === undefined) return null;
  if (positions.length === 1) return { type: 'Point', coordinates: first };
  return { type: 'LineString', coordinates: [...positions] };
}

function firstTime(points: readonly XmlElement[]): string | null {
  const [first] = points;
  return first === undefined ? null : fieldOf(first, 'time');
}

const FIELDS = ['name', 'desc', 'cmt', 'type'] as const;
export const RECORD_FIELDS: readonly string[] = [...FIELDS, 'time'];
/** Fields of waypoints that our own writer made. */
export const OWN_FIELDS: readonly string[] = ['role', 'property', 'gatewidth', 'locked'];

function record(
  element: XmlElement,
  where: string,
  geometry: Geometry | null,
  issues: readonly Issue[],
  time: string | null,
): SourceFeature {
  const fields = FIELDS.map((name): readonly [string, AttributeValue] => [name, fieldOf(element, name)]);
  const attributes = Object.fromEntries([...fields, ['time', time] as const]);
  return { where, id: null, geometry, attributes, issues };
}
