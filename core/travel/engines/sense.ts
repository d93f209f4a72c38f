import type { Position } from '../../book/index.ts';
import { distanceMetres } from '../../geometry/index.ts';
import type { Asked, EngineCells } from './types.ts';

/** Nothing on a road is faster over a whole trip: 130 mph. Common practice, no source. */
const FASTEST_M_PER_SEC = 58;
/** Trips shorter than this may look odd by rounding alone. metres */
const SHORT_M = 500;
/** A way this many times longer than the straight line is no mistake of a road. Common practice, no source. */
const MOST_DETOUR = 50;

/**
 * What is wrong with an engine's figures, as a sentence; null where they can be true. A way is never shorter than the straight
 * line less what two places may lie off the road, and nobody drives it faster than 130 mph or takes fifty times its length.
 */
export function cellsFault({ durationSec, distanceM }: EngineCells, { at, block, mostM }: Asked): string | null {
  const columns = block.targets.length;
  for (const [row, source] of block.sources.entries()) {
    for (const [column, target] of block.targets.entries()) {
      const seconds = durationSec[row * columns + column] ?? -1;
      const metres = distanceM[row * columns + column] ?? -1;
      if (seconds < 0) continue;
      const straight = distanceMetres(at[source] as Position, at[target] as Position);
      const least = straight - 2 * mostM;
      const told = `${whole(straight)} m in a straight line`;
      if (metres >= 0 && metres < least) return `It gives ${whole(metres)} m of road for ${told}.`;
      if (least > SHORT_M && seconds * FASTEST_M_PER_SEC < least) return `It gives ${seconds} s for ${told}.`;
      if (metres > SHORT_M && seconds * FASTEST_M_PER_SEC < metres - SHORT_M)
        return `It gives ${seconds} s for ${whole(metres)} m of road.`;
      if (metres > MOST_DETOUR * (straight + 2 * mostM + SHORT_M))
        return `It gives ${whole(metres)} m of road for ${told}.`;
    }
  }
  return null;
}

function whole(metres: number): string {
  return String(Math.round(metres));
}
