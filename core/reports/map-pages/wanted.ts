import type { PlanDay } from '../../plan/result/index.ts';
import type { DayPasses } from '../input.ts';

/** Passes that the maps of a day show: each zone with each head that is driven over it, once, in the order of the day. */
export function passesWanted({ stops }: PlanDay): readonly Omit<DayPasses, 'picture'>[] {
  const wanted = stops.flatMap((stop) =>
    stop.tasks.flatMap(({ propertyId, zoneId, method, handTrim }) =>
      method.kind === 'machine' && handTrim !== true
        ? [{ propertyId, zoneId, machineId: method.machineId, headId: method.headId }]
        : [],
    ),
  );
  return [...new Map(wanted.map((each) => [JSON.stringify(each), each])).values()];
}
