import { climber, type Foothold } from './climb.ts';
import type { Hierarchy } from './contract.ts';

/**
 * Least weights from every row to every column by climbs that meet (S. Knopp, P. Sanders, D. Schultes, F. Schulz, D. Wagner,
 * ALENEX 2007): columns leave what they cost at every node that they reach, rows pick it up.
 *
 * @param goesOn asked before each climb
 * @returns false where it was told to stop
 */
export function meetAll(
  { up, down }: Hierarchy,
  rows: readonly (readonly Foothold[])[],
  columns: readonly (readonly Foothold[])[],
  put: (row: number, least: Float64Array) => void,
  goesOn: () => boolean,
): boolean {
  const left = leftBehind(up, down, columns, goesOn);
  if (left === null) return false;
  const climb = climber(up, down);
  const least = new Float64Array(columns.length);
  for (const [row, footholds] of rows.entries()) {
    if (!goesOn()) return false;
    least.fill(Number.POSITIVE_INFINITY);
    climb(footholds, (rank, weight) => {
      for (let at = left.start[rank] as number; at < (left.start[rank + 1] as number); at += 1) {
        const column = left.column[at] as number;
        const whole = weight + (left.weight[at] as number);
        if (whole < (least[column] as number)) least[column] = whole;
      }
    });
    put(row, least);
  }
  return true;
}

type Left = { readonly start: Uint32Array; readonly column: Uint32Array; readonly weight: Float64Array };

/** What the columns leave, by the rank where they leave it. */
function leftBehind(
  up: Hierarchy['up'],
  down: Hierarchy['down'],
  columns: readonly (readonly Foothold[])[],
  goesOn: () => boolean,
): Left | null {
  const climb = climber(down, up);
  const ranks: number[] = [];
  const owners: number[] = [];
  const weights: number[] = [];
  for (const [column, footholds] of columns.entries()) {
    if (!goesOn()) return null;
    climb(footholds, (rank, weight) => {
      ranks.push(rank);
      owners.push(column);
      weights.push(weight);
    });
  }
  const start = new Uint32Array(up.start.length);
  for (const rank of ranks) start[rank + 1] = (start[rank + 1] as number) + 1;
  for (let at = 0; at + 1 < start.length; at += 1) start[at + 1] = (start[at + 1] as number) + (start[at] as number);
  const fill = start.slice();
  const column = new Uint32Array(ranks.length);
  const weight = new Float64Array(ranks.length);
  ranks.forEach((rank, at) => {
    const place = fill[rank] as number;
    fill[rank] = place + 1;
    column[place] = owners[at] as number;
    weight[place] = weights[at] as number;
  });
  return { start, column, weight };
}
