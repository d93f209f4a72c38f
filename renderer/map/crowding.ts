/** A label on screen; px. */
export type LabelSpot = { readonly id: string; readonly x: number; readonly y: number };

/** Nearer than this, side by side and one above the other, one label hides a figure of the other; px. */
const LEAST_APART_X = 26;
const LEAST_APART_Y = 22;

/**
 * Labels that have to give way so that the others can be read: each one that comes too near to an earlier one that stays.
 *
 * @param spots in the order of their rights: the first always stays
 */
export function crowdedLabels(spots: readonly LabelSpot[]): ReadonlySet<string> {
  const staying: LabelSpot[] = [];
  const crowded = new Set<string>();
  for (const spot of spots) {
    if (staying.some((each) => hides(each, spot))) crowded.add(spot.id);
    else staying.push(spot);
  }
  return crowded;
}

function hides(one: LabelSpot, other: LabelSpot): boolean {
  return Math.abs(one.x - other.x) < LEAST_APART_X && Math.abs(one.y - other.y) < LEAST_APART_Y;
}
