import { boardWords } from '../../../texts/day/index.ts';
import { type BoardRow, hoursOf, positionAt } from './rows.ts';

/** Where something that is carried is held over: a moment of a rig's row, a place in its order, or a date of the round. */
export type Spot =
  | { readonly kind: 'moment'; readonly rigId: string; readonly share: number }
  | { readonly kind: 'place'; readonly rigId: string; readonly position: number }
  | { readonly kind: 'date'; readonly date: string };

/** What a drag carries, so that nothing else is dropped on the board. */
export const STOP_TYPE = 'application/x-swardway-stop';

/** A place between the stops of a row. */
export type Gap = { readonly position: number; readonly sec: number; readonly words: string };

/** The places that a stop can go to in a row; where it is now, if it is there, is one of them. */
export function gapsOf(row: BoardRow, movedKey: string): readonly Gap[] {
  const others = row.stops.filter((stop) => stop.key !== movedKey);
  const own = row.stops.findIndex((stop) => stop.key === movedKey);
  const last = others.at(-1);
  return Array.from({ length: others.length + 1 }, (_, position) => {
    const next = others[position];
    const sec = position === own ? row.stops[own]?.startSec : next?.startSec;
    const place = boardWords.spots.placeOf(row.rigName, position + 1, others.length + 1);
    const beside =
      next === undefined
        ? last === undefined
          ? ''
          : boardWords.spots.after(last.name)
        : boardWords.spots.before(next.name);
    return {
      position,
      sec: sec ?? last?.endSec ?? row.startSec,
      words: `${place}${position === own ? boardWords.spots.asItIs : beside}`,
    };
  });
}

/** The place in the order that a spot of a row stands for. */
export function positionOf(
  spot: Exclude<Spot, { readonly kind: 'date' }>,
  rows: readonly BoardRow[],
  key: string,
): number {
  if (spot.kind === 'place') return spot.position;
  const row = rows.find((each) => each.rigId === spot.rigId);
  const hours = hoursOf(rows);
  return row === undefined ? 0 : positionAt(row, hours.startSec + spot.share * (hours.endSec - hours.startSec), key);
}

export function sameTarget(one: Spot, other: Spot): boolean {
  if (one.kind === 'date' || other.kind === 'date')
    return one.kind === 'date' && other.kind === 'date' && one.date === other.date;
  if (one.rigId !== other.rigId || one.kind !== other.kind) return false;
  return one.kind === 'moment' || (other.kind === 'place' && one.position === other.position);
}

export type KeySpace = {
  readonly dates: readonly string[];
  /** The date that is shown. */
  readonly date: string;
  readonly rigIds: readonly string[];
  /** How many places a rig's row has. */
  readonly placesAt: (rigId: string) => number;
};

/**
 * Where the arrow keys go from a spot while something is carried from the keyboard: along the order, to other rigs, and with Page Up
 * and Page Down to the other dates; null for a key that means nothing here.
 */
export function spotAfter(key: string, at: Spot, home: Spot, { dates, date, rigIds, placesAt }: KeySpace): Spot | null {
  const dateBeside = (from: string, step: number): Spot | null => {
    const others = dates.filter((each) => each === from || each !== date);
    const next = others[others.indexOf(from) + step];
    return next === undefined || next === date ? null : { kind: 'date', date: next };
  };
  if (at.kind === 'date') {
    if (key === 'ArrowLeft' || key === 'PageUp') return dateBeside(at.date, -1);
    if (key === 'ArrowRight' || key === 'PageDown') return dateBeside(at.date, 1);
    return key === 'ArrowDown' || key === 'ArrowUp' ? home : null;
  }
  if (at.kind === 'moment') return null;
  const place = (rigId: string, position: number): Spot => ({
    kind: 'place',
    rigId,
    position: Math.max(0, Math.min(placesAt(rigId) - 1, position)),
  });
  const row = rigIds.indexOf(at.rigId);
  switch (key) {
    case 'ArrowLeft':
      return place(at.rigId, at.position - 1);
    case 'ArrowRight':
      return place(at.rigId, at.position + 1);
    case 'Home':
      return place(at.rigId, 0);
    case 'End':
      return place(at.rigId, Number.MAX_SAFE_INTEGER);
    case 'ArrowUp':
      return place(rigIds[row - 1] ?? at.rigId, at.position);
    case 'ArrowDown':
      return place(rigIds[row + 1] ?? at.rigId, at.position);
    case 'PageUp':
      return dateBeside(date, -1);
    case 'PageDown':
      return dateBeside(date, 1);
    default:
      return null;
  }
}
