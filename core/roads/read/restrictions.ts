import { RESTRICTION, type Restrictions } from '../types.ts';
import type { Collected } from './collect.ts';
import type { EdgeDraft } from './cut.ts';
import type { RawRestriction } from './restriction-tags.ts';

export type MatchedRestrictions = { readonly kept: Restrictions; readonly used: number; readonly unmatched: number };

/**
 * Turn restrictions by edges and junctions. One whose ways do not end at its node, or are not among the roads, has no meaning
 * here and is counted as unmatched. `ofNode` gives the junction of a node, -1 for others.
 */
export function matchRestrictions(collected: Collected, draft: EdgeDraft, ofNode: Int32Array): MatchedRestrictions {
  const wanted = new Set(collected.restrictions.flatMap((each) => [...each.from, ...each.to]));
  const wayOf = new Map<number, number>();
  collected.wayIds.forEach((id, way) => {
    if (wanted.has(id)) wayOf.set(id, way);
  });
  const rows: { from: number; via: number; to: number; flags: number }[] = [];
  let used = 0;
  for (const restriction of collected.restrictions) {
    const node = collected.nodeIds.find(restriction.via);
    const junction = node < 0 ? -1 : (ofNode[node] as number);
    if (junction < 0) continue;
    const edges = (ids: readonly number[]): readonly number[] =>
      ids.flatMap((id) => onlyEdgeAt(draft, wayOf.get(id), node));
    const pairs = pairsOf(restriction, edges(restriction.from), edges(restriction.to));
    if (pairs.length > 0) used += 1;
    for (const [from, to] of pairs) rows.push({ from, via: junction, to, flags: restriction.flags });
  }
  return {
    kept: {
      from: Uint32Array.from(rows, (row) => row.from),
      via: Uint32Array.from(rows, (row) => row.via),
      to: Uint32Array.from(rows, (row) => row.to),
      flags: Uint8Array.from(rows, (row) => row.flags),
    },
    used,
    unmatched: collected.restrictions.length - used,
  };
}

function pairsOf(
  { flags }: RawRestriction,
  from: readonly number[],
  to: readonly number[],
): readonly (readonly [number, number])[] {
  // "Only" with several ways to go on would forbid each by the other.
  if ((flags & RESTRICTION.only) !== 0 && to.length > 1) return [];
  return from.flatMap((one) => to.map((other) => [one, other] as const));
}

/** The edge of a way that ends at a node; none where two do, since the restriction does not say which. */
function onlyEdgeAt({ from, to, ofWay }: EdgeDraft, way: number | undefined, node: number): readonly number[] {
  if (way === undefined) return [];
  const edges: number[] = [];
  for (let edge = ofWay[way] as number; edge < (ofWay[way + 1] as number); edge += 1) {
    if (from[edge] === node || to[edge] === node) edges.push(edge);
  }
  return edges.length === 1 ? edges : [];
}
