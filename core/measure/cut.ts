import {
  boxesMeet,
  difference,
  EMPTY_REGION,
  joinParts,
  type Outline,
  partArea,
  partsOf,
  type Region,
  regionArea,
  STEPS_PER_METRE,
} from '../geometry/index.ts';

/** One zone after everything that takes ground from it. Areas on the map, m2. */
export type CutZone = {
  readonly outline: Outline;
  /** What is left for treatment. */
  readonly treatable: Region;
  readonly treatableSqM: number;
  /** Ground that an earlier zone of the property already has. */
  readonly overlapSqM: number;
  /** Ground in pieces too small to count. */
  readonly droppedSqM: number;
  readonly droppedParts: number;
};

/** Pieces smaller than this are left out, m2. */
const LEAST_PART_SQ_M = 1;

/**
 * Takes earlier zones and exclusions from each zone, in the order of the zones, so that no ground counts twice.
 * @param outlines the zones of one property; null where a zone has no outline to cut
 */
export function cutZones(
  outlines: readonly (Outline | null)[],
  exclusions: readonly Region[],
): readonly (CutZone | null)[] {
  const earlier: Region[] = [];
  return outlines.map((outline) => {
    if (outline === null) return null;
    const others = earlier.filter((each) => boxesMeet(each.box, outline.net.box));
    const own = difference(outline.net, others);
    const overlapSqM = own === outline.net ? 0 : regionArea(outline.net) - regionArea(own);
    earlier.push(outline.net);
    return { outline, overlapSqM, ...dropSmallParts(difference(own, exclusions)) };
  });
}

type Kept = Pick<CutZone, 'treatable' | 'treatableSqM' | 'droppedSqM' | 'droppedParts'>;

function dropSmallParts(region: Region): Kept {
  const whole = Math.max(0, regionArea(region));
  if (region.paths.length === 1 && whole >= LEAST_PART_SQ_M) return keepAll(region, whole);
  const least = 2 * LEAST_PART_SQ_M * STEPS_PER_METRE ** 2;
  const parts = partsOf(region);
  const kept = parts.filter((part) => partArea(part) >= least);
  if (kept.length === 0)
    return { treatable: EMPTY_REGION, treatableSqM: 0, droppedSqM: whole, droppedParts: parts.length };
  if (kept.length === parts.length) return keepAll(region, whole);
  const treatable = joinParts(kept);
  const treatableSqM = regionArea(treatable);
  return { treatable, treatableSqM, droppedSqM: whole - treatableSqM, droppedParts: parts.length - kept.length };
}

function keepAll(region: Region, treatableSqM: number): Kept {
  return { treatable: region, treatableSqM, droppedSqM: 0, droppedParts: 0 };
}
