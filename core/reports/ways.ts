import type { Book, Position } from '../book/index.ts';
import type { PlanDay } from '../plan/result/index.ts';
import { MAP_PAGES } from './texts/index.ts';

/** Drives of a day along the roads, and whose roads they are. A drive that is not among them is drawn straight. */
export type DayWays = {
  readonly drives: readonly (DayDrive & { readonly along: readonly Position[] })[];
  readonly credit: string;
};

/** A drive of a day between places that the book knows. */
export type DayDrive = { readonly from: Position; readonly to: Position };

/**
 * The drives of a day from place to place, in order; positions in degrees. Those to or from a place that the book does
 * not have are left out.
 */
export function drivesOfDay(book: Book, day: PlanDay): readonly DayDrive[] {
  const places = new Map<string, Position>([
    ...book.properties.map((each): [string, Position] => [each.id, each.parking]),
    ...book.fillPoints.map((each): [string, Position] => [each.id, each.at]),
  ]);
  return day.activities.flatMap((each) => {
    const from = each.kind === 'drive' ? places.get(each.fromPlaceId) : undefined;
    const to = each.kind === 'drive' ? places.get(each.toPlaceId) : undefined;
    return from === undefined || to === undefined ? [] : [{ from, to }];
  });
}

/** A line through places in order, along the roads where the way is known, and what a reader should know of it. */
export type DrawnWay = { readonly route: readonly Position[]; readonly note: string };

export function wayThrough(places: readonly Position[], ways: DayWays | undefined): DrawnWay {
  const known = new Map(ways?.drives.map((each) => [driveKey(each.from, each.to), each.along]));
  let byRoad = 0;
  const route = places.flatMap((at, index): readonly Position[] => {
    const before = places[index - 1];
    const along = before === undefined ? undefined : known.get(driveKey(before, at));
    if (along === undefined) return [at];
    byRoad += 1;
    return [...along, at];
  });
  if (ways === undefined || byRoad === 0) return { route, note: MAP_PAGES.straight };
  return {
    route,
    note: byRoad === places.length - 1 ? MAP_PAGES.byRoad(ways.credit) : MAP_PAGES.partlyByRoad(ways.credit),
  };
}

function driveKey(from: Position, to: Position): string {
  return [from[0], from[1], to[0], to[1]].join(' ');
}
