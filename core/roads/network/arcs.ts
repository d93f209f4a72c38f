import { byClass } from '../classes.ts';
import type { ClassFactors, RoadSettings } from '../settings.ts';
import { ACCESS, EDGE, type RoadMap } from '../types.ts';
import { weightOf } from '../weight.ts';

export type Arcs = {
  readonly edge: Uint32Array;
  readonly backward: Uint8Array;
  readonly weight: Float64Array;
  /** Tenths of a second in the weight that are waits at signals between the ends. */
  readonly waitDs: Uint32Array;
  readonly ofEdge: Int32Array;
  /** 1 for arcs on which nobody drives who has no business there. */
  readonly ends: Uint8Array;
};

/** Tenths of a second in one decimetre at one km/h. */
const DS_PER_DM_AT_ONE_KMH = 3.6;
/** A day: more would not fit into a weight, and nobody takes as long for a piece of road. */
const MOST_ARC_DS = 864_000;

/** The arcs that the truck may drive on, and what each costs. `avoided` has a 1 for every edge in an avoided area. */
export function arcsOf(map: RoadMap, settings: RoadSettings, factors: ClassFactors, avoided: Uint8Array): Arcs {
  const { edges } = map;
  const count = edges.from.length;
  const speeds = byClass(settings.speedsKmh, 0);
  const factor = byClass(factors, 1);
  const ofEdge = new Int32Array(2 * count).fill(-1);
  const edge = new Uint32Array(2 * count);
  const backward = new Uint8Array(2 * count);
  const ends = new Uint8Array(2 * count);
  const weight = new Float64Array(2 * count);
  const waitDs = new Uint32Array(2 * count);
  let arcs = 0;
  for (let at = 0; at < count; at += 1) {
    const given = admission(map, settings, at);
    if (given === 'no') continue;
    const flags = edges.flags[at] as number;
    const roadClass = edges.roadClass[at] as number;
    for (const isBackward of [0, 1]) {
      if ((flags & (isBackward === 1 ? EDGE.backward : EDGE.forward)) === 0) continue;
      const limit = (isBackward === 1 ? edges.maxBackwardKmh : edges.maxForwardKmh)[at] as number;
      const signals = (isBackward === 1 ? edges.signalsBackward : edges.signalsForward)[at] as number;
      const bare = limit > 0 ? limit * settings.shareOfLimit : (speeds[roadClass] as number);
      const speed = Math.min(settings.mostKmh, bare) * ((flags & EDGE.unpaved) === 0 ? 1 : settings.shareUnpaved);
      const length = edges.lengthDm[at] as number;
      const moving = (length * DS_PER_DM_AT_ONE_KMH * (factor[roadClass] as number)) / Math.max(1, speed || 1);
      const wait = Math.round(10 * signals * settings.turns.signalSec);
      const whole = Math.round(moving) + wait;
      edge[arcs] = at;
      backward[arcs] = isBackward;
      ends[arcs] = given === 'ends' || avoided[at] === 1 ? 1 : 0;
      weight[arcs] = weightOf(Math.min(MOST_ARC_DS, Math.max(1, whole)), length);
      waitDs[arcs] = wait;
      ofEdge[2 * at + isBackward] = arcs;
      arcs += 1;
    }
  }
  return {
    edge: edge.slice(0, arcs),
    backward: backward.slice(0, arcs),
    weight: weight.slice(0, arcs),
    waitDs: waitDs.slice(0, arcs),
    ofEdge,
    ends: ends.slice(0, arcs),
  };
}

/** Whether the truck may use an edge at all, or only where it has business. */
function admission(map: RoadMap, settings: RoadSettings, at: number): 'yes' | 'ends' | 'no' {
  const { edges } = map;
  const { truck } = settings;
  const isOver = (limit: number, own: number): boolean => limit > 0 && own > limit;
  if (truck.trailer && ((edges.flags[at] as number) & EDGE.noTrailer) !== 0) return 'no';
  if (isOver(edges.heightCm[at] as number, truck.heightM * 100)) return 'no';
  if (isOver(edges.widthCm[at] as number, truck.widthM * 100)) return 'no';
  if (isOver(edges.weight100Kg[at] as number, truck.weightKg / 100)) return 'no';
  switch ((truck.heavy ? edges.heavyAccess : edges.access)[at]) {
    case ACCESS.open:
      return 'yes';
    case ACCESS.ends:
      return 'ends';
    case ACCESS.private:
      return settings.privateRoads;
    default:
      return 'no';
  }
}
