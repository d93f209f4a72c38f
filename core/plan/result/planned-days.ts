import type { Plan } from './types.ts';

/** The days on which plans have properties: round, then property, then the date of its last visit there, YYYY-MM-DD. */
export function plannedDays(plans: readonly Plan[]): Readonly<Record<string, Readonly<Record<string, string>>>> {
  return Object.fromEntries(
    plans.map(({ roundId, days }) => {
      const lastOf: Record<string, string> = {};
      for (const { date, stops } of days) {
        for (const { propertyId } of stops) if (date > (lastOf[propertyId] ?? '')) lastOf[propertyId] = date;
      }
      return [roundId, lastOf];
    }),
  );
}
