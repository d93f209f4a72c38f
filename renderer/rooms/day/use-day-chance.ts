import { useEffect, useMemo, useState } from 'react';
import type { Book, Spread } from '../../../core/book/index.ts';
import { Chances, type ChanceWish, type DayChance } from '../../../core/plan/chance/index.ts';
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

/** Days that are played. A share is then known to two points in a hundred or better. */
const PLAYED = 1000;
const SEED = 1;

/** How long the thread that draws may be kept at a time. milliseconds */
const SLICE_MS = 8;
const DAYS_AT_ONCE = 10;

/**
 * How sure a day is, by the spread of the book; null until it is known. It is worked out in short parts, between what else there is to do, and
 * kept as long as day, rig, hours and spread stay what they are.
 */
export function useDayChance(day: PlanDay): DayChance | null {
  const book = useBook((state) => state.open?.book ?? null);
  const known = kept.get(day);
  const wish = useMemo(() => (book === null ? null : wishOf(book, day)), [book, day]);
  const key =
    wish === null ? '' : JSON.stringify([wish.spread, [...wish.hours], wish.shiftEndSec, wish.extraRefillSec]);
  const [, show] = useState(0);
  useEffect(() => {
    if (wish === null || kept.get(day)?.key === key) return;
    const chances = new Chances(day, wish);
    let timer = 0;
    const work = () => {
      const startMs = performance.now();
      while (chances.left > 0 && performance.now() - startMs < SLICE_MS) chances.play(DAYS_AT_ONCE);
      if (chances.left > 0) timer = window.setTimeout(work);
      else {
        kept.set(day, { key, chance: chances.found() });
        show((count) => count + 1);
      }
    };
    timer = window.setTimeout(work);
    return () => window.clearTimeout(timer);
  }, [day, key, wish]);
  return known?.key === key ? known.chance : null;
}

/** What was found for days, by what it depends on. */
const kept = new WeakMap<PlanDay, { readonly key: string; readonly chance: DayChance }>();

function wishOf(book: Book, day: PlanDay): ChanceWish | null {
  const rig = book.rigs.find((each) => each.id === day.rigId);
  if (rig === undefined) return null;
  const coming = new Set(day.stops.map((stop) => stop.propertyId));
  const hours = book.properties.flatMap(({ id, hours: open }) =>
    open === undefined || !coming.has(id)
      ? []
      : [[id, { openSec: open.openMin * MINUTE, closeSec: open.closeMin * MINUTE }] as const],
  );
  return {
    spread: book.spread ?? USUAL_SPREAD,
    hours: new Map(hours),
    extraRefillSec: (rig.refillMin + rig.midZoneMin) * MINUTE,
    shiftEndSec: shiftEndSec(rig),
    seed: SEED,
    played: PLAYED,
  };
}

const MINUTE = 60;

export function shiftEndSec(rig: Book['rigs'][number]): number {
  return (rig.shiftStartMin + rig.shiftMin) * MINUTE;
}
