import type { Geometry, Position } from 'geojson';
import { closeRing } from '../ring.ts';
import { childOf, childrenOf, type XmlElement } from '../xml/index.ts';
import { joinGeometries } from './join.ts';
import { readTrackTuples, readTuples, type Tuples } from './tuples.ts';

export type KmlGeometry =
  | {
      readonly kind: 'geometry';
      readonly geometry: Geometry;
      readonly positions: number;
      /** Rings that were open and are closed now. */
      readonly closed: number;
    }
  | { readonly kind: 'none' }
  | { readonly kind: 'bad'; readonly what: string };

type Sound = Extract<KmlGeometry, { kind: 'geometry' }>;
const NONE: KmlGeometry = { kind: 'none' };

const bad = (what: string): KmlGeometry => ({ kind: 'bad', what });

const READERS: Readonly<Record<string, (element: XmlElement) => KmlGeometry>> = {
  Point: (element) => plain(coordinatesOf(element), 1, ([at = []]) => ({ type: 'Point', coordinates: at })),
  LineString: (element) => plain(coordinatesOf(element), 2, (line) => ({ type: 'LineString', coordinates: line })),
  /** A ring on its own is a line that happens to close; whether it is meant as an area is asked later. */
  LinearRing: (element) => plain(coordinatesOf(element), 2, (line) => ({ type: 'LineString', coordinates: line })),
  Track: (element) =>
    plain(readTrackTuples(childrenOf(element, 'coord').map((each) => each.text)), 2, (line) => ({
      type: 'LineString',
      coordinates: line,
    })),
  Polygon: readPolygon,
  MultiGeometry: (element) => readKmlGeometry(element),
  MultiTrack: (element) => readKmlGeometry(element),
  Model: () => bad('a model in three dimensions'),
};

/** The geometry of all outlines that lie directly in a placemark or multi-geometry. One that is bad makes the whole bad. */
export function readKmlGeometry(parent: XmlElement): KmlGeometry {
  const members: Sound[] = [];
  for (const child of parent.children) {
    const read = Object.hasOwn(READERS, child.name) ? READERS[child.name] : undefined;
    const reading = read?.(child) ?? NONE;
    if (reading.kind === 'bad') return reading;
    if (reading.kind === 'geometry') members.push(reading);
  }
  const [only] = members;
  if (only === undefined) return NONE;
  if (members.length === 1) return only;
  return {
    kind: 'geometry',
    geometry: joinGeometries(members.map((each) => each.geometry)),
    positions: members.reduce((sum, each) => sum + each.positions, 0),
    closed: members.reduce((sum, each) => sum + each.closed, 0),
  };
}

function coordinatesOf(element: XmlElement): Tuples {
  return readTuples(childOf(element, 'coordinates')?.text ?? '');
}

function plain(tuples: Tuples, least: number, make: (positions: Position[]) => Geometry): KmlGeometry {
  if (tuples.kind === 'bad') return tuples;
  const { positions } = tuples;
  if (positions.length === 0) return NONE;
  if (positions.length < least) return bad('a line of one point');
  return { kind: 'geometry', geometry: make(positions), positions: positions.length, closed: 0 };
}

function readPolygon(element: XmlElement): KmlGeometry {
  const outer = ringsIn(element, 'outerBoundaryIs');
  const inner = ringsIn(element, 'innerBoundaryIs');
  if (outer.length > 1) return bad('a polygon with two outer boundaries');
  const rings: Position[][] = [];
  let closed = 0;
  for (const [index, tuples] of [...outer, ...inner].entries()) {
    if (tuples.kind === 'bad') return tuples;
    const ring = closeRing(tuples.positions);
    if (ring === null && index === 0 && tuples.positions.length === 0) return NONE;
    if (ring === null) return bad('a ring of fewer than three corners');
    rings.push(ring.ring);
    if (ring.wasOpen) closed += 1;
  }
  if (outer.length === 0) return inner.length === 0 ? NONE : bad('a polygon without an outer boundary');
  const positions = rings.reduce((sum, ring) => sum + ring.length, 0);
  return { kind: 'geometry', geometry: { type: 'Polygon', coordinates: rings }, positions, closed };
}

function ringsIn(polygon: XmlElement, boundary: string): readonly Tuples[] {
  return childrenOf(polygon, boundary).flatMap((each) => childrenOf(each, 'LinearRing').map(coordinatesOf));
}
