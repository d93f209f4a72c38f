import type { AreaGeometry, Position } from '../book/index.ts';
import { type Metres, quantity, type SquareMetres } from '../units/index.ts';
import { boxCentre, degreesBox } from './degrees-box.ts';
import { distanceMetres } from './ellipsoid.ts';
import type { GeometryFault } from './faults.ts';
import { localPlane } from './local-plane.ts';
import { readOutline } from './outline.ts';
import { regionArea } from './region.ts';

/** The area of an outline, and what is odd about it. */
export type AreaReading = {
  /** Ground inside the outline and outside its holes, on the map; null where the outline is refused. m2 */
  readonly areaSqM: SquareMetres | null;
  readonly faults: readonly GeometryFault[];
};

/** Ellipsoidal area of one outline, without exclusions or slope. */
export function outlineArea(geometry: AreaGeometry): AreaReading {
  const checked = degreesBox(geometry);
  if ('fault' in checked) return { areaSqM: null, faults: [checked.fault] };
  const outline = readOutline(geometry, localPlane(boxCentre(checked.box)));
  if (outline.kind === 'refused') return { areaSqM: null, faults: outline.faults };
  return { areaSqM: regionArea(outline.net), faults: outline.faults };
}

/** Ellipsoidal area inside one ring, open or closed, in either direction; null where it goes round nothing. m2 */
export function ringAreaSquareMetres(ring: readonly Position[]): SquareMetres | null {
  return outlineArea({ type: 'Polygon', coordinates: [ring] }).areaSqM;
}

/** Length along a line of positions, metres; closed back to its start where asked. */
export function lineLengthMetres(line: readonly Position[], closed = false): Metres {
  let sum = 0;
  for (const [index, position] of line.entries()) {
    const next = line[index + 1] ?? (closed ? line[0] : undefined);
    if (next !== undefined) sum += distanceMetres(position, next);
  }
  return quantity<'m'>(sum);
}
