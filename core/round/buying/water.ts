import type { Book } from '../../book/index.ts';
import { waterIn } from '../../demand/index.ts';
import type { Plan, PlanActivity, PlanDay } from '../../plan/result/index.ts';
import { isRestOfDay } from './rest-of-day.ts';
import type { WaterAt } from './types.ts';

type Filling = Extract<PlanActivity, { readonly kind: 'morning' | 'refill' }>;
type Taken = {
  readonly fillPointId: string;
  readonly gal: number;
  readonly inMorning: boolean;
  /** False for what only counts here since the nurse tank was filled here. */
  readonly isVisit: boolean;
};

/**
 * Gallons of water that a plan takes at each fill point: into nurse tanks, into mixes (less their liquid products), for rinsing, and for
 * what stays below the reach of a pump. What a machine gets from its nurse tank was taken where that was filled. Fill points in the
 * order of the book; those that give no water are left out.
 */
export function waterByFillPoint(book: Book, plan: Plan): readonly WaterAt[] {
  const days = plan.days.map((day) => {
    const homeId = book.rigs.find((each) => each.id === day.rigId)?.homeId ?? '';
    const taken = takenOn(day, homeId);
    return { day, taken: isRestOfDay(book, day) ? taken.slice(1) : taken };
  });
  const ids = book.fillPoints.map((each) => each.id);
  return ids.flatMap((fillPointId) => {
    const byDay = days.flatMap(({ day: { date, rigId }, taken }) => {
      const gal = sum(taken.filter((each) => each.fillPointId === fillPointId));
      return gal > 0 ? [{ date, rigId, gal }] : [];
    });
    const here = days.flatMap((each) => each.taken).filter((each) => each.fillPointId === fillPointId && each.gal > 0);
    if (here.length === 0) return [];
    return [
      {
        fillPointId,
        morningGal: sum(here.filter((each) => each.inMorning)),
        visitsGal: sum(here.filter((each) => !each.inMorning)),
        visits: here.filter((each) => each.isVisit).length,
        byDay,
      },
    ];
  });
}

function takenOn(day: PlanDay, homeId: string): readonly Taken[] {
  let nurse = { fillPointId: homeId, inMorning: true };
  return day.activities
    .filter((each): each is Filling => each.kind === 'morning' || each.kind === 'refill')
    .map((filling) => {
      const from = filling.kind === 'morning' ? homeId : filling.fillPointId;
      const sumpGal = day.loads
        .filter((load) => load.startSec === filling.startSec && load.kind === 'tank')
        .reduce((total, load) => total + load.sumpGal, 0);
      const inMorning = filling.kind === 'morning';
      // From the rig: nothing but what the sumps take, which no stock of the plan counts.
      if (from === '') return { ...nurse, gal: sumpGal, isVisit: false };
      const nurseGal = filling.stock.reduce((total, each) => total + (each.stock === 'water' ? each.volumeGal : 0), 0);
      if (nurseGal > 0) nurse = { fillPointId: from, inMorning };
      const mixedGal = filling.fills.reduce((total, each) => total + waterIn(each.volumeGal, each.products), 0);
      const rinseGal = filling.kind === 'morning' ? 0 : filling.rinseGal;
      return { fillPointId: from, gal: nurseGal + mixedGal + rinseGal + sumpGal, inMorning, isVisit: !inMorning };
    });
}

function sum(taken: readonly Taken[]): number {
  return taken.reduce((total, each) => total + each.gal, 0);
}
