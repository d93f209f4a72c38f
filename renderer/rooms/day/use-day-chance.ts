import { useMemo } from 'react';
import type { Book, Spread } from '../../../core/book/index.ts';
import { type DayChance, dayChance } from '../../../core/plan/chance/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { useBook } from '../../stores/index.ts';

/** What counts where the book says nothing. */
export const USUAL_SPREAD: Spread = {
  drive: 0.2,
  setUp: 0.25,
  treat: 0.1,
  used: 0.05,
  driveMean: 1,
  setUpMean: 1,
  treatMean: 1,
  usedMean: 1,
  inCommon: 0.5,
};

/** Days that are played: a few tens of milliseconds. A share is then known to two points in a hundred or better. */
const PLAYED = 1000;
const SEED = 1;

/** How sure a day is, by the spread of the book; null without a book. Kept as long as day, rig, hours and spread stay what they are. */
export function useDayChance(day: PlanDay): DayChance | null {
  const book = useBook((state) => state.open?.book ?? null);
  return useMemo(() => (book === null ? null : chanceOf(book, day)), [book, day]);
}

function chanceOf(book: Book, day: PlanDay): DayChance | null {
  const rig = book.rigs.find((each) => each.id === day.rigId);
  if (rig === undefined) return null;
  const coming = new Set(day.stops.map((stop) => stop.propertyId));
  const hours = book.properties.flatMap(({ id, hours: open }) =>
    open === undefined || !coming.has(id)
      ? []
      : [[id, { openSec: open.openMin * MINUTE, closeSec: open.closeMin * MINUTE }] as const],
  );
  return dayChance(day, {
    spread: book.spread ?? USUAL_SPREAD,
    hours: new Map(hours),
    extraRefillSec: (rig.refillMin + rig.midZoneMin) * MINUTE,
    shiftEndSec: shiftEndSec(rig),
    seed: SEED,
    played: PLAYED,
  });
}

const MINUTE = 60;

export function shiftEndSec(rig: Book['rigs'][number]): number {
  return (rig.shiftStartMin + rig.shiftMin) * MINUTE;
}
