import type { Property } from '../../book/index.ts';
import { bandAreaSqFt, type PropertyMeasure } from '../../measure/index.ts';
import type { Ground } from '../../round/ledger/index.ts';
import { quantity } from '../../units/index.ts';

type WithDates = {
  /** Days that labels and caps allow, null for all. */
  readonly labelDates: readonly string[] | null;
};

/** Days that all of these tasks may be done on by their labels; null for all days. */
export function commonDates(tasks: readonly WithDates[]): readonly string[] | null {
  return tasks.reduce<readonly string[] | null>((common, { labelDates }) => {
    if (common === null || labelDates === null) return common ?? labelDates;
    return common.filter((date) => labelDates.includes(date));
  }, null);
}

/** Tasks that their labels allow on no common day go into visits of their own; each joins the first visit that it can. */
export function splitByDays<Each extends WithDates>(tasks: readonly Each[]): readonly (readonly Each[])[] {
  const visits: Each[][] = [];
  for (const task of tasks) {
    const visit = visits.find((each) => commonDates([...each, task])?.length !== 0);
    if (visit === undefined) visits.push([task]);
    else visit.push(task);
  }
  return visits;
}

/** The ground of lawns, as they are measured. */
export function groundOf(measureOf: (property: Property) => PropertyMeasure): Ground {
  return {
    areaSqFt: (property, zoneId) => measureOf(property).zones.find((each) => each.zoneId === zoneId)?.areaSqFt ?? null,
    bandSqFt: (property, zone, { widthFt, along }) => bandAreaSqFt(property, zone, quantity(widthFt), along),
  };
}
