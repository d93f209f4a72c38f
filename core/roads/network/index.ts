import { fingerprint } from '../../base/index.ts';
import type { ClassFactors, RoadSettings } from '../settings.ts';
import type { RoadMap } from '../types.ts';
import { arcsOf } from './arcs.ts';
import { avoidedEdges } from './avoided.ts';
import { largestPart } from './main-part.ts';
import { linksOf, turnedRound } from './turns.ts';
import type { RoadNetwork } from './types.ts';

/** Raised when the same roads and settings would give other times. */
const RECKONED = 1;

/**
 * What a truck can do on the roads of a map, and what each piece and turn costs it.
 *
 * @param factors by which the seconds on a class are multiplied: learned ones, those of an hour, or both (`joinFactors`)
 */
export function roadNetwork(map: RoadMap, settings: RoadSettings, factors: ClassFactors = {}): RoadNetwork {
  const arcs = arcsOf(map, settings, factors, avoidedEdges(map, settings.avoid));
  const next = linksOf(map, settings, arcs);
  // The hours say which factors to take and are told by the factors.
  const { times: _, ...rest } = settings;
  return {
    map,
    fingerprint: fingerprint({ map: map.fingerprint, settings: rest, factors, reckoned: RECKONED }),
    drivesOn: settings.drivesOn,
    arcEdge: arcs.edge,
    arcBackward: arcs.backward,
    arcWeight: arcs.weight,
    arcWaitDs: arcs.waitDs,
    arcOfEdge: arcs.ofEdge,
    next,
    previous: turnedRound(next),
    isMain: largestPart(next),
  };
}
export type { Links, RoadNetwork } from './types.ts';
