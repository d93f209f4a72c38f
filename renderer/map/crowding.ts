/** A label on screen; px. */
export type LabelSpot = { readonly id: string; readonly x: number; readonly y: number };

/** Nearer than this both side by side and one above the other, a label hides a figure of its neighbour; px. */
type LeastApart = { readonly x: number; readonly y: number };

export const LEAST_APART: Readonly<Record<'stop' | 'day', LeastApart>> = {
  stop: { x: 26, y: 22 },
  day: { x: 20, y: 18 },
};

/**
 * Labels that have to give way so that the others can be read: each one that comes too near to an earlier one that stays.
 *
 * @param spots in the order of their rights: the first always stays
 */
export function crowdedLabels(spots: readonly LabelSpot[], apart: LeastApart): ReadonlySet<string> {
  const staying = new Map<string, LabelSpot[]>();
  const crowded = new Set<string>();
  for (const spot of spots) {
    const [column, row] = [Math.floor(spot.x / apart.x), Math.floor(spot.y / apart.y)];
    const near = AROUND.flatMap(([right, down]) => staying.get(`${column + right} ${row + down}`) ?? []);
    if (near.some((each) => Math.abs(each.x - spot.x) < apart.x && Math.abs(each.y - spot.y) < apart.y)) {
      crowded.add(spot.id);
    } else {
      const cell = `${column} ${row}`;
      staying.set(cell, [...(staying.get(cell) ?? []), spot]);
    }
  }
  return crowded;
}

/** A cell of the least distance and its eight neighbours hold whatever can be too near. */
const STEPS = [-1, 0, 1] as const;
const AROUND = STEPS.flatMap((right) => STEPS.map((down) => [right, down] as const));
