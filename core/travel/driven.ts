import type { Book, Position, Visit } from '../book/index.ts';

/** A drive between two places whose time somebody wrote down. */
export type DrivenLeg = {
  readonly on: string;
  readonly rigId: string;
  readonly from: Position;
  readonly to: Position;
  readonly drivenSec: number;
  /** What the plan had for it, detours to fill points included; null where that was not kept. */
  readonly plannedSec: number | null;
};

const SECONDS_PER_MINUTE = 60;

/**
 * The drives of a book's visits: each from the place before it on the same day of the same rig, the first one from the rig's home.
 * Days on which some visit has no time of arrival are left out, for their order is not known; a visit that was left out (the rig
 * did not stop) is no place to drive from.
 */
export function drivenLegs(book: Book): readonly DrivenLeg[] {
  const days = new Map<string, Visit[]>();
  for (const visit of book.visits) {
    if (visit.outcome.kind !== 'done') continue;
    const key = JSON.stringify([visit.on, visit.rigId]);
    days.set(key, [...(days.get(key) ?? []), visit]);
  }
  const parking = new Map(book.properties.map((each) => [each.id, each.parking]));
  const homes = new Map(book.fillPoints.map((each) => [each.id, each.at]));
  return [...days.values()].flatMap((visits) => {
    if (visits.some((each) => each.arriveMin === undefined)) return [];
    const ordered = visits.toSorted((one, other) => (one.arriveMin ?? 0) - (other.arriveMin ?? 0));
    const home = book.rigs.find((each) => each.id === ordered[0]?.rigId)?.homeId ?? '';
    return ordered.flatMap((visit, index): DrivenLeg[] => {
      const before = ordered[index - 1];
      const from = before === undefined ? homes.get(home) : parking.get(before.propertyId);
      const to = parking.get(visit.propertyId);
      if (from === undefined || to === undefined || visit.drivenMin === undefined || visit.drivenMin <= 0) return [];
      const drivenSec = visit.drivenMin * SECONDS_PER_MINUTE;
      const plannedSec = visit.plannedDriveMin === undefined ? null : visit.plannedDriveMin * SECONDS_PER_MINUTE;
      return [{ on: visit.on, rigId: visit.rigId, from, to, drivenSec, plannedSec }];
    });
  });
}

/** Drives for which the plan had so much more than the way takes went by a fill point: they tell nothing of the way. */
const DETOUR = { times: 1.5, sec: 120 } as const;

/**
 * Whether a drive went straight from place to place as far as the plan tells, given the seconds that the way takes: the
 * plan had no more than half as much again and two minutes (our own reasoning, docs/methods/roads.md).
 */
export function wentStraight(leg: DrivenLeg, waySec: number): boolean {
  return leg.plannedSec === null || leg.plannedSec <= DETOUR.times * waySec + DETOUR.sec;
}
