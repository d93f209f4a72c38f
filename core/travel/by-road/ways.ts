import type { Book, Position } from '../../book/index.ts';
import { type RoadMap, type RoadPath, roadPath, type Snapping } from '../../roads/index.ts';
import { type DrivenLeg, drivenLegs, type LearnedClass, learnFactors, type Trip, wentStraight } from '../index.ts';
import { type DrivenRoads, drivenRoads, snapAll } from './drives.ts';

/** The ways from each position to the next along the roads; null where there is none. */
export function waysAlong(roads: DrivenRoads, stops: readonly Position[]): readonly (readonly Position[] | null)[] {
  const snaps = snapAll(roads, stops);
  return snaps.slice(1).map((to, index) => wayBetween(roads, snaps[index], to)?.positions ?? null);
}

function wayBetween({ network }: DrivenRoads, from: Snapping | undefined, to: Snapping | undefined): RoadPath | null {
  if (from?.kind !== 'snapped' || to?.kind !== 'snapped') return null;
  return roadPath(network, from, to);
}

/** What the drives of a book teach about its roads. */
export type Learnt = {
  readonly classes: readonly LearnedClass[];
  /** Drives that were written down, and how many of them could be used: straight from place to place, with a way by road. */
  readonly drives: number;
  readonly used: number;
};

/** Learns from the drives that a book's visits tell of, beside what was learned before. */
export function learnFromDrives(map: RoadMap, book: Book): Learnt {
  const roads = drivenRoads(map, book, false);
  const legs = drivenLegs(book);
  const snaps = snapAll(
    roads,
    legs.flatMap(({ from, to }) => [from, to]),
  );
  const trips = legs.flatMap((leg, index) => tripOf(leg, wayBetween(roads, snaps[2 * index], snaps[2 * index + 1])));
  return { classes: learnFactors(trips), drives: legs.length, used: trips.length };
}

function tripOf(leg: DrivenLeg, way: RoadPath | null): readonly Trip[] {
  if (way === null || !wentStraight(leg, way.durationSec)) return [];
  const secondsByClass = Object.fromEntries(way.byClass.map(({ roadClass, sec }) => [roadClass, sec]));
  return [{ secondsByClass, otherSec: way.turnSec, drivenSec: leg.drivenSec }];
}
