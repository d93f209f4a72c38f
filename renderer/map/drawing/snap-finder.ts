import type { Position, Property } from '../../../core/book/index.ts';
import { type SnapShape, type SnapTargets, snapPoint, snapTargets } from '../../../core/sketch/index.ts';
import { propertyBounds, toLatLng } from '../bounds.ts';
import { partKey } from '../scene.ts';
import type { SnapFinder } from './draw-surface.ts';

/** Lawns whose ground comes within this of the pointer are looked at, degrees of latitude: about 330 m. */
const REACH_DEG = 0.003;

type Known = {
  readonly properties: readonly Property[];
  readonly around: Position;
  readonly targets: SnapTargets;
};

/**
 * Snapping to the outlines near the pointer. The index is made for the neighbourhood and kept until the pointer leaves it or
 * a lawn changes, so that the number of lawns in the book does not matter.
 *
 * @param ignored the part whose corners are moved, as partKey and its property's id write it; it is no target
 */
export function createSnapFinder(
  properties: () => readonly Property[],
  ignored: () => { readonly propertyId: string; readonly key: string } | null,
): SnapFinder {
  let known: Known | null = null;
  return (at, toleranceFt, own) => {
    const now = properties();
    if (known === null || known.properties !== now || isFar(known.around, at)) {
      known = { properties: now, around: at, targets: snapTargets(shapesNear(now, at)) };
    }
    const left = ignored();
    const id = left === null ? {} : { id: shapeId(left.propertyId, left.key) };
    return snapPoint(at, known.targets, toleranceFt, { ...id, corners: own });
  };
}

const shapeId = (propertyId: string, key: string): string => `${propertyId} ${key}`;

function isFar([longitude, latitude]: Position, at: Position): boolean {
  return Math.abs(latitude - at[1]) > REACH_DEG / 2 || Math.abs(longitude - at[0]) > REACH_DEG / 2;
}

function shapesNear(properties: readonly Property[], at: Position): readonly SnapShape[] {
  const around = [at[0] - REACH_DEG, at[1] - REACH_DEG, at[0] + REACH_DEG, at[1] + REACH_DEG] as const;
  const southWest = toLatLng([around[0], around[1]]);
  const northEast = toLatLng([around[2], around[3]]);
  return properties.flatMap((property) =>
    propertyBounds(property).intersects([southWest, northEast]) ? shapesOf(property) : [],
  );
}

function shapesOf({ id, zones, exclusions, parcel }: Property): readonly SnapShape[] {
  const drawn = zones.flatMap(({ id: partId, shape }): readonly SnapShape[] =>
    shape.kind === 'drawn' ? [{ id: shapeId(id, partKey({ kind: 'zone', partId })), geometry: shape.geometry }] : [],
  );
  const kept = exclusions.map(({ id: partId, geometry }) => ({
    id: shapeId(id, partKey({ kind: 'exclusion', partId })),
    geometry,
  }));
  return [...drawn, ...kept, ...(parcel === undefined ? [] : [{ id: shapeId(id, 'parcel'), geometry: parcel }])];
}
