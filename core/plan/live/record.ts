import type { Book, Visit } from '../../book/index.ts';
import { methodName } from '../../reach/index.ts';
import type { PlanDay, PlanStop } from '../result/index.ts';
import { type DoneTask, withProducts } from './products.ts';

/**
 * The visit of a planned stop as it would be written down if all went as planned, its products by the recipes of the book: to be
 * corrected by what really happened.
 */
export function visitAsPlanned(book: Book, id: string, roundId: string, day: PlanDay, stop: PlanStop): Visit {
  const works = new Map<string, DoneTask>();
  for (const task of stop.tasks) {
    const key = JSON.stringify([task.zoneId, task.treatmentId, task.step]);
    const before = works.get(key);
    works.set(key, {
      zoneId: task.zoneId,
      treatmentId: task.treatmentId,
      step: task.step,
      treatedSqFt: (before?.treatedSqFt ?? 0) + task.areaSqFt,
      equipment: [...new Set([...(before?.equipment ?? []), methodName(book, task.method)])],
      ...sum('expectedGal', before?.expectedGal, task.volumeGal),
      ...sum('expectedLb', before?.expectedLb, task.weightLb),
    });
  }
  const onSite = day.activities.filter((each) => each.startSec >= stop.arriveSec && each.endSec <= stop.leaveSec);
  const minutes = (kinds: readonly string[]): number =>
    onSite.reduce((all, each) => all + (kinds.includes(each.kind) ? each.endSec - each.startSec : 0), 0) / SECONDS;
  return {
    id,
    on: day.date,
    roundId,
    rigId: day.rigId,
    propertyId: stop.propertyId,
    outcome: { kind: 'done', tasks: [...works.values()].map((task) => withProducts(book, task)) },
    plannedDriveMin: stop.driveSec / SECONDS,
    plannedSetUpMin: minutes(['set-up', 'pack-up', 'swap-head', 'refill', 'pour']),
    plannedTreatMin: minutes(['treat']),
    note: '',
  };
}

const SECONDS = 60;

function sum<Name extends 'expectedGal' | 'expectedLb'>(
  name: Name,
  before: number | undefined,
  more: number,
): Partial<Record<Name, number>> {
  const all = (before ?? 0) + more;
  return all > 0 ? ({ [name]: all } as Partial<Record<Name, number>>) : {};
}
