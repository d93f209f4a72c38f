import type { Problem, Station } from './types.ts';

type Travel = Pick<Problem, 'placeIds' | 'travelMs' | 'travelM'>;
/** A rig's day by the places where it starts and ends. */
type DayEnds = { readonly rigId: string; readonly from: number; readonly to: number };

/**
 * The table of travel with a place for every day that ends elsewhere than it starts: the ways from it are those from the start, the ways
 * to it those to the end. Everything that drives a row of stops out of one place and back to it then drives from start to end.
 *
 * @returns the table, and for each rig the number of the place that its days set out from and come back to
 */
export function withDepots(table: Travel, days: readonly DayEnds[]): Travel & { readonly depots: readonly number[] } {
  const count = table.placeIds.length;
  const split = days.filter((each) => each.from !== each.to);
  const depots = days.map((each) => (each.from === each.to ? each.from : count + split.indexOf(each)));
  if (split.length === 0) return { ...table, depots };
  return {
    placeIds: [...table.placeIds, ...split.map((each) => `day of ${each.rigId}`)],
    travelMs: stretched(table.travelMs, count, split),
    travelM: stretched(table.travelM, count, split),
    depots,
  };
}

/** A table of `count` places with one more place for each day. Work: its cells. */
function stretched(source: Int32Array, count: number, days: readonly DayEnds[]): Int32Array {
  const size = count + days.length;
  const table = new Int32Array(size * size);
  for (let row = 0; row < size; row += 1) {
    const from = row < count ? row : (days[row - count]?.from ?? 0);
    for (let column = 0; column < size; column += 1) {
      const to = column < count ? column : (days[column - count]?.to ?? 0);
      if (row !== column) table[row * size + column] = source[from * count + to] as number;
    }
  }
  return table;
}

/** Number of the place of a station; that of the first one where there is none. */
export function placeOfStation(stations: readonly Station[], number: number): number {
  return stations[number]?.place ?? 0;
}
