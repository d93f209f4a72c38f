import type { AreaGeometry, Position } from '../../book/index.ts';
import { polygonsOf, unwrapLongitude } from '../../geometry/index.ts';

/** Nine decimals of a degree are a tenth of a millimetre on the ground. */
const DECIMALS = 9;

/** Degrees as a plain decimal, without an exponent and without zeros at the end. */
export function degreesText(degrees: number): string {
  const text = degrees.toFixed(DECIMALS).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

export function roundDegrees([longitude, latitude]: Position): Position {
  return [Number(degreesText(longitude)), Number(degreesText(latitude))];
}

/** Rings of one polygon. */
export type Rings = readonly (readonly Position[])[];

/**
 * The polygons of an outline with rounded corners, each ring closed, its shell anticlockwise and its holes clockwise
 * (RFC 7946, section 3.1.6; KML 2.3, section 10.8, asks for no direction of holes). Rings of no corners are left out.
 */
export function windPolygons(geometry: AreaGeometry): readonly Rings[] {
  return polygonsOf(geometry).flatMap((polygon) => {
    const rings = polygon.flatMap((ring, index) => (ring.length === 0 ? [] : [wind(ring, index === 0)]));
    return rings.length === 0 ? [] : [rings];
  });
}

function wind(ring: readonly Position[], isShell: boolean): readonly Position[] {
  const rounded = ring.map(roundDegrees);
  const [first = [0, 0]] = rounded;
  const last = rounded.at(-1) ?? first;
  const closed = first[0] === last[0] && first[1] === last[1] ? rounded : [...rounded, first];
  return turns(closed) >= 0 === isShell ? closed : closed.toReversed();
}

/** Twice the signed area in square degrees, positive where the ring runs anticlockwise. */
function turns(ring: readonly Position[]): number {
  const [first = [0, 0]] = ring;
  const place = ([longitude, latitude]: Position): Position => [
    unwrapLongitude(longitude, first[0]) - first[0],
    latitude - first[1],
  ];
  let twice = 0;
  for (let index = 1; index < ring.length; index += 1) {
    const [x0, y0] = place(ring[index - 1] ?? first);
    const [x1, y1] = place(ring[index] ?? first);
    twice += x0 * y1 - x1 * y0;
  }
  return twice;
}
