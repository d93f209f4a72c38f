import type { Position } from 'geojson';
import { isDegrees } from '../ring.ts';
import { readDecimal } from '../text/index.ts';

export type Tuples =
  | { readonly kind: 'positions'; readonly positions: Position[] }
  | { readonly kind: 'bad'; readonly what: string };

/**
 * The positions of a `coordinates` element: "longitude,latitude[,height]" parted by blanks (KML 2.3, OGC 12-007r2, section
 * 9.5). Blanks round the commas, which the standard does not allow, are taken. Heights are left out.
 */
export function readTuples(text: string): Tuples {
  const positions: Position[] = [];
  for (const tuple of splitTuples(text)) {
    const position = readTuple(tuple.split(','));
    if (typeof position === 'string') return { kind: 'bad', what: `"${tuple.slice(0, 40)}", ${position}` };
    positions.push(position);
  }
  return { kind: 'positions', positions };
}

function splitTuples(text: string): readonly string[] {
  const tuples: string[][] = [];
  let isOpen = false;
  for (const token of text.split(/\s+/)) {
    if (token === '') continue;
    if (isOpen || token.startsWith(',')) tuples.at(-1)?.push(token);
    else tuples.push([token]);
    isOpen = token.endsWith(',');
  }
  return tuples.map((parts) => parts.join(''));
}

/** The positions of gx:coord elements: "longitude latitude height". */
export function readTrackTuples(texts: readonly string[]): Tuples {
  const positions: Position[] = [];
  for (const text of texts) {
    const position = readTuple(text.trim().split(/\s+/));
    if (typeof position === 'string') return { kind: 'bad', what: `"${text.slice(0, 40)}", ${position}` };
    positions.push(position);
  }
  return { kind: 'positions', positions };
}

/** A position, or what it is instead. */
function readTuple(parts: readonly string[]): Position | string {
  const longitude = readDecimal(parts[0] ?? '');
  const latitude = readDecimal(parts[1] ?? '');
  if (longitude === null || latitude === null || parts.length > 3) return 'which is no longitude and latitude';
  return isDegrees(longitude, latitude) ? [longitude, latitude] : 'which lies outside of the earth';
}
