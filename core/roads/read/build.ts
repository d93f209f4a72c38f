import { fingerprintOf } from '../store/index.ts';
import type { AboutRoads, Junctions, RoadEdges, RoadMap } from '../types.ts';
import type { Collected } from './collect.ts';
import { cutEdges, type EdgeDraft } from './cut.ts';
import { RoadFault } from './fault.ts';
import { type MatchedRestrictions, matchRestrictions } from './restrictions.ts';
import type { RoadTags } from './road-tags.ts';

/** Who made the data and what its licence is called (openstreetmap.org/copyright). */
const ATTRIBUTION = '© OpenStreetMap contributors';
const LICENCE = 'Open Data Commons Open Database License (ODbL) 1.0';

/** The map of the roads that were collected. Fault where there is none at all. */
export function buildMap(collected: Collected): RoadMap {
  const draft = cutEdges(collected);
  if (draft.from.length === 0) {
    const hint = 'Check that it holds roads and is no cut-out of other things.';
    throw new RoadFault('format-invalid', 'The extract holds no road that a truck can drive on.', hint);
  }
  const { ofNode, nodes } = numberJunctions(draft, collected.isThere.length);
  const restrictions = matchRestrictions(collected, draft, ofNode);
  const map = {
    junctions: junctionsOf(collected, nodes),
    edges: edgesOf(collected, draft, ofNode),
    restrictions: restrictions.kept,
    about: aboutOf(collected, draft, restrictions),
  };
  return { ...map, fingerprint: fingerprintOf(map) };
}

/** Junctions are the nodes at which edges end, in the order in which edges name them. */
function numberJunctions(
  { from, to }: EdgeDraft,
  nodeCount: number,
): { readonly ofNode: Int32Array; readonly nodes: readonly number[] } {
  const ofNode = new Int32Array(nodeCount).fill(-1);
  const nodes: number[] = [];
  for (let edge = 0; edge < from.length; edge += 1) {
    for (const node of [from[edge] as number, to[edge] as number]) {
      if (ofNode[node] !== -1) continue;
      ofNode[node] = nodes.length;
      nodes.push(node);
    }
  }
  return { ofNode, nodes };
}

function junctionsOf({ lon, lat, standing }: Collected, nodes: readonly number[]): Junctions {
  return {
    lon: Int32Array.from(nodes, (node) => lon[node] as number),
    lat: Int32Array.from(nodes, (node) => lat[node] as number),
    flags: Uint8Array.from(nodes, (node) => standing.get(node)?.flags ?? 0),
    heightCm: Uint16Array.from(nodes, (node) => standing.get(node)?.heightCm ?? 0),
  };
}

/** What the tags of a way say of each of its edges. */
type ByteTag = 'roadClass' | 'flags' | 'access' | 'heavyAccess' | 'maxForwardKmh' | 'maxBackwardKmh';
type FigureTag = 'heightCm' | 'widthCm' | 'weight100Kg';

function edgesOf({ lon, lat, wayTags }: Collected, draft: EdgeDraft, ofNode: Int32Array): RoadEdges {
  const tags = Array.from(draft.way, (way) => wayTags[way] as RoadTags);
  const bytes = (name: ByteTag): Uint8Array => Uint8Array.from(tags, (each) => each[name]);
  const figures = (name: FigureTag): Uint16Array => Uint16Array.from(tags, (each) => each[name]);
  return {
    from: Uint32Array.from(draft.from, (node) => ofNode[node] as number),
    to: Uint32Array.from(draft.to, (node) => ofNode[node] as number),
    lengthDm: Uint32Array.from(draft.lengthDm),
    roadClass: bytes('roadClass'),
    flags: bytes('flags'),
    access: bytes('access'),
    heavyAccess: bytes('heavyAccess'),
    maxForwardKmh: bytes('maxForwardKmh'),
    maxBackwardKmh: bytes('maxBackwardKmh'),
    signalsForward: Uint8Array.from(draft.signalsForward),
    signalsBackward: Uint8Array.from(draft.signalsBackward),
    heightCm: figures('heightCm'),
    widthCm: figures('widthCm'),
    weight100Kg: figures('weight100Kg'),
    shapeStart: Uint32Array.from(draft.shapeStart),
    shapeLon: Int32Array.from(draft.shape, (node) => lon[node] as number),
    shapeLat: Int32Array.from(draft.shape, (node) => lat[node] as number),
  };
}

function aboutOf(collected: Collected, draft: EdgeDraft, restrictions: MatchedRestrictions): AboutRoads {
  const { lon, lat, isThere } = collected;
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  let missingNodes = 0;
  const see = (node: number): void => {
    west = Math.min(west, lon[node] as number);
    east = Math.max(east, lon[node] as number);
    south = Math.min(south, lat[node] as number);
    north = Math.max(north, lat[node] as number);
  };
  for (const part of [draft.from, draft.to, draft.shape]) part.forEach(see);
  for (const each of isThere) if (each === 0) missingNodes += 1;
  return {
    attribution: collected.head.owner?.attribution ?? ATTRIBUTION,
    licence: collected.head.owner?.licence ?? LICENCE,
    writtenBy: collected.head.writtenBy,
    dataOf: collected.head.dataOf,
    bounds: [west / 1e7, south / 1e7, east / 1e7, north / 1e7],
    counts: {
      nodes: collected.nodes,
      ways: collected.ways,
      relations: collected.relations,
      roads: collected.wayIds.length,
      brokenRoads: draft.brokenRoads,
      missingNodes,
      restrictionsUsed: restrictions.used,
      restrictionsViaWay: collected.restrictionsViaWay,
      restrictionsIgnored: collected.restrictionsIgnored + restrictions.unmatched,
    },
  };
}
