import type { RoadSettings } from '../settings.ts';
import { EDGE, JUNCTION, type RoadMap } from '../types.ts';
import { ENTRY, weightOf } from '../weight.ts';
import type { Arcs } from './arcs.ts';
import { type Bearings, bearingsOf, turnAngle } from './bearings.ts';
import { type Forbidden, forbiddenTurns } from './forbidden.ts';
import type { Links } from './types.ts';

/** Bends up to this angle cost no time; a right angle costs all of it. */
const FREE_DEG = 30;
const FULL_DEG = 90;

type Ground = {
  readonly map: RoadMap;
  readonly settings: RoadSettings;
  readonly arcs: Arcs;
  readonly bearings: Bearings;
  readonly forbidden: Forbidden;
};

/** The links between arcs: which may follow which, and the weight of the first arc and of the turn. */
export function linksOf(map: RoadMap, settings: RoadSettings, arcs: Arcs): Links {
  const ground: Ground = { map, settings, arcs, bearings: bearingsOf(map), forbidden: forbiddenTurns(map, settings) };
  const leaving = leavingArcs(map, arcs);
  const count = arcs.edge.length;
  const start = new Uint32Array(count + 1);
  const node: number[] = [];
  const weight: number[] = [];
  const allowed: number[] = [];
  for (let arc = 0; arc < count; arc += 1) {
    const at = headOf(map, arcs, arc);
    const first = leaving.start[at] as number;
    const end = leaving.start[at + 1] as number;
    allowed.length = 0;
    for (let place = first; place < end; place += 1) {
      const follower = leaving.arc[place] as number;
      if (isAllowed(ground, arc, follower, at)) allowed.push(follower);
    }
    const isJunction = (leaving.edges[at] as number) > 2;
    for (const follower of allowed) {
      node.push(follower);
      weight.push((arcs.weight[arc] as number) + turnWeight(ground, arc, follower, at, isJunction));
    }
    // Turning round is for those who cannot go on.
    const twin = arcs.ofEdge[2 * (arcs.edge[arc] as number) + 1 - (arcs.backward[arc] as number)] as number;
    if (allowed.length === 0 && twin >= 0) {
      node.push(twin);
      weight.push((arcs.weight[arc] as number) + weightOf(Math.round(10 * settings.turns.roundSec), 0));
    }
    start[arc + 1] = node.length;
  }
  return { start, node: Uint32Array.from(node), weight: Float64Array.from(weight) };
}

/** The same links, found from the arcs that they lead to. */
export function turnedRound({ start, node, weight }: Links): Links {
  const count = start.length - 1;
  const back = new Uint32Array(count + 1);
  for (const to of node) back[to + 1] = (back[to + 1] as number) + 1;
  for (let at = 0; at < count; at += 1) back[at + 1] = (back[at + 1] as number) + (back[at] as number);
  const fill = back.slice(0, count);
  const from = new Uint32Array(node.length);
  const backWeight = new Float64Array(node.length);
  for (let at = 0; at < count; at += 1) {
    for (let link = start[at] as number; link < (start[at + 1] as number); link += 1) {
      const to = node[link] as number;
      const place = fill[to] as number;
      fill[to] = place + 1;
      from[place] = at;
      backWeight[place] = weight[link] as number;
    }
  }
  return { start: back, node: from, weight: backWeight };
}

function headOf(map: RoadMap, arcs: Arcs, arc: number): number {
  const edge = arcs.edge[arc] as number;
  return (arcs.backward[arc] === 1 ? map.edges.from : map.edges.to)[edge] as number;
}

function tailOf(map: RoadMap, arcs: Arcs, arc: number): number {
  const edge = arcs.edge[arc] as number;
  return (arcs.backward[arc] === 1 ? map.edges.to : map.edges.from)[edge] as number;
}

/** Arcs by the junction that they leave, and how many ends of usable edges meet there. */
function leavingArcs(map: RoadMap, arcs: Arcs): { start: Uint32Array; arc: Uint32Array; edges: Uint32Array } {
  const junctions = map.junctions.lon.length;
  const start = new Uint32Array(junctions + 1);
  const edges = new Uint32Array(junctions);
  const count = arcs.edge.length;
  for (let arc = 0; arc < count; arc += 1) {
    const tail = tailOf(map, arcs, arc);
    start[tail + 1] = (start[tail + 1] as number) + 1;
    // An edge used both ways has its twin counted at the other end.
    const isOnlyOne = (arcs.ofEdge[2 * (arcs.edge[arc] as number) + 1 - (arcs.backward[arc] as number)] as number) < 0;
    edges[tail] = (edges[tail] as number) + 1;
    const head = headOf(map, arcs, arc);
    if (isOnlyOne) edges[head] = (edges[head] as number) + 1;
  }
  for (let at = 0; at < junctions; at += 1) start[at + 1] = (start[at + 1] as number) + (start[at] as number);
  const fill = start.slice(0, junctions);
  const arc = new Uint32Array(count);
  for (let each = 0; each < count; each += 1) {
    const tail = tailOf(map, arcs, each);
    const place = fill[tail] as number;
    fill[tail] = place + 1;
    arc[place] = each;
  }
  return { start, arc, edges };
}

function isAllowed({ map, settings, arcs, forbidden }: Ground, arc: number, follower: number, at: number): boolean {
  const edge = arcs.edge[arc] as number;
  const next = arcs.edge[follower] as number;
  // A ring that is one edge begins and ends at one junction: going round it again is no turn back.
  if (edge === next && arcs.backward[arc] !== arcs.backward[follower]) return false;
  if (((map.junctions.flags[at] as number) & JUNCTION.blocked) !== 0) return false;
  const clear = map.junctions.heightCm[at] as number;
  if (clear > 0 && settings.truck.heightM * 100 > clear) return false;
  return !forbidden(edge, at, next);
}

function turnWeight(ground: Ground, arc: number, follower: number, at: number, isJunction: boolean): number {
  const { map, settings, arcs } = ground;
  const flags = map.junctions.flags[at] as number;
  const isEntry = arcs.ends[arc] === 0 && arcs.ends[follower] === 1;
  const entries = (isEntry ? 1 : 0) + ((flags & JUNCTION.guarded) !== 0 ? 1 : 0);
  const signal = (flags & JUNCTION.signal) !== 0 ? settings.turns.signalSec : 0;
  const gate = (flags & JUNCTION.gate) !== 0 ? settings.turns.gateSec : 0;
  const turn = isJunction ? turnSeconds(ground, arc, follower) : 0;
  return entries * ENTRY + weightOf(Math.round(10 * (signal + gate + turn)), 0);
}

function turnSeconds({ map, settings, arcs, bearings }: Ground, arc: number, follower: number): number {
  const edge = arcs.edge[arc] as number;
  const next = arcs.edge[follower] as number;
  const isRound = (map.edges.flags[edge] as number) & (map.edges.flags[next] as number) & EDGE.roundabout;
  if (isRound !== 0) return 0;
  const cameBy = (arcs.backward[arc] === 1 ? bearings.atFrom : bearings.atTo)[edge] as number;
  const leavesBy = (arcs.backward[follower] === 1 ? bearings.atTo : bearings.atFrom)[next] as number;
  const angle = turnAngle(cameBy, leavesBy);
  const share = Math.min(1, Math.max(0, (Math.abs(angle) - FREE_DEG) / (FULL_DEG - FREE_DEG)));
  const isNear = angle > 0 === (settings.drivesOn === 'right');
  return share * (isNear ? settings.turns.nearSec : settings.turns.acrossSec);
}
