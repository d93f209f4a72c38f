import { EMPTY_REGION, grow, isEmpty, type Region, regionArea, regionOf, shrink, union } from '../geometry/index.ts';
import type { Gauge } from './types.ts';

/** One trim pass: where the machine's middle goes (the edge of `middle`) and the ground that it treats. */
export type TrimPass = { readonly middle: Region; readonly treated: Region };

export type Trim = {
  readonly passes: readonly TrimPass[];
  /** Ground over which the lanes of the straight swaths are laid; it shares the overlap with the trim passes. */
  readonly rest: Region;
  /** The part of it that is still untreated: swaths begin and end there. */
  readonly bare: Region;
};

/**
 * Corners that a round turn leaves are narrower than this share of the trim swath. A disc of radius w/2 leaves room for one
 * of 0.086 w in a right angle, (sqrt 2 - 1) / (sqrt 2 + 1) x w/2; wider ground than 0.12 w is worth a swath.
 */
const CORNER_SHARE = 0.12;

/**
 * Trim passes along the edge: the middle of pass k keeps w/2 + k (w - o) from the edge, so the first one treats exactly up
 * to it and each next one shares o with the one before. What they treat is the ground within w/2 of that line.
 */
export function trimOf(ground: Region, gauge: Gauge): Trim {
  const { trimSwathM, overlapM, trimPasses } = gauge;
  const gain = trimSwathM - overlapM;
  const passes: TrimPass[] = [];
  const narrow: Region[] = [];
  let bare = ground;
  for (let pass = 0; pass < trimPasses; pass += 1) {
    const middle = shrink(ground, trimSwathM / 2 + pass * gain);
    const reached = grow(middle, trimSwathM / 2);
    if (pass > 0) narrow.push(leftNarrow(shrink(ground, pass * gain), reached, trimSwathM));
    bare = isEmpty(middle) ? middle : shrink(middle, trimSwathM / 2);
    if (isEmpty(middle)) break;
    passes.push({ middle, treated: withHoles(reached, bare) });
  }
  const rest = shrink(ground, trimPasses * gain);
  return { passes, rest: union([rest, ...narrow]), bare: union([bare, ...narrow]) };
}

/** Ground inside the last trim pass that is too narrow for the next one and more than a corner. */
function leftNarrow(inside: Region, reached: Region, trimSwathM: number): Region {
  const radiusM = CORNER_SHARE * trimSwathM;
  if (regionArea(inside) - regionArea(reached) < Math.PI * radiusM ** 2) return EMPTY_REGION;
  // The shrunk edges of both may cross; filled where positive they bound what is left all the same.
  return grow(shrink(withHoles(inside, reached), radiusM), radiusM);
}

/** A region less another one that lies wholly inside it: its paths become holes. */
function withHoles(region: Region, inside: Region): Region {
  return regionOf([...region.paths, ...inside.paths.map((path) => path.toReversed())]);
}
