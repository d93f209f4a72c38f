import type { AreaGeometry, Property, Zone } from '../book/index.ts';

/** Room for a number in ids of at most 120 and names of at most 200 characters. */
const LONGEST_STEM = 110;
const LONGEST_NAME = 190;

/**
 * The zones that take the place of one that was split: the first keeps its id and name, the others get the next free ids and
 * numbers. What was found for the whole (its card's area, the hose's length, its hose stand) stays with the first or is
 * dropped: figures of the whole are no longer true of a piece.
 */
export function splitZone(
  property: Property,
  zone: Zone,
  shape: Extract<Zone['shape'], { readonly kind: 'drawn' }>,
  pieces: readonly AreaGeometry[],
): readonly Zone[] {
  const { statedAreaSqFt: _card, hosePathFt: _hose, ...kept } = zone;
  const { hoseStand: _stand, ...copied } = kept;
  const ids = new Set(property.zones.map((each) => each.id));
  const [stem, name] = [zone.id.slice(0, LONGEST_STEM), zone.name.slice(0, LONGEST_NAME)];
  let number = 1;
  return pieces.map((geometry, index) => {
    if (index === 0) return { ...kept, shape: { ...shape, geometry } };
    do number += 1;
    while (ids.has(`${stem}-${number}`));
    return { ...copied, id: `${stem}-${number}`, name: `${name} ${number}`, shape: { ...shape, geometry } };
  });
}
