import type { RoadNetwork } from '../network/index.ts';
import { EDGE, type Snap } from '../types.ts';
import { durationDsOf, lengthDmOf, weightOf } from '../weight.ts';

/** Nodes at which a search begins, each with what it costs to be there. */
export type Seed = {
  readonly arc: number;
  readonly weight: number;
  /** The arc that the place lies on. */
  readonly start: number;
};

/** The arcs on which a truck stands at a place. */
function arcsAt(network: RoadNetwork, snap: Snap): readonly number[] {
  return [EDGE.forward, EDGE.backward].flatMap((direction, isBackward) => {
    const arc = network.arcOfEdge[2 * snap.edge + isBackward] as number;
    return (snap.directions & direction) !== 0 && arc >= 0 ? [arc] : [];
  });
}

/** From the beginning of an arc to a place on it. */
export function partTo(network: RoadNetwork, arc: number, snap: Snap): number {
  const weight = network.arcWeight[arc] as number;
  const length = lengthDmOf(weight);
  const along = network.arcBackward[arc] === 1 ? length - snap.alongDm : snap.alongDm;
  return length === 0 ? 0 : weightOf(Math.floor((durationDsOf(weight) * along) / length), along);
}

/** Where one may be after the first turn of a way from a place. */
export function seedsFrom(network: RoadNetwork, snap: Snap): readonly Seed[] {
  const { start, node, weight } = network.next;
  return arcsAt(network, snap).flatMap((arc) => {
    const driven = partTo(network, arc, snap);
    const seeds: Seed[] = [];
    for (let link = start[arc] as number; link < (start[arc + 1] as number); link += 1) {
      seeds.push({ arc: node[link] as number, weight: (weight[link] as number) - driven, start: arc });
    }
    return seeds;
  });
}

/** The last pieces of ways to a place: from the beginning of the arcs that it lies on. */
export function seedsTo(network: RoadNetwork, snap: Snap): readonly Seed[] {
  return arcsAt(network, snap).map((arc) => ({ arc, weight: partTo(network, arc, snap), start: arc }));
}

/** Straight on along one arc, where the second place lies beyond the first on it; otherwise infinity. */
export function alongOneArc(network: RoadNetwork, from: Snap, to: Snap): number {
  if (from.edge !== to.edge) return Number.POSITIVE_INFINITY;
  let best = Number.POSITIVE_INFINITY;
  for (const arc of arcsAt(network, from)) {
    if (!arcsAt(network, to).includes(arc)) continue;
    const between = partTo(network, arc, to) - partTo(network, arc, from);
    if (between >= 0) best = Math.min(best, between);
  }
  return best;
}
