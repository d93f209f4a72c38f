import type { DoneWork, Outage, ProblemOptions } from '../problem/index.ts';
import type { Plan } from './types.ts';

/** What the problem of a plan was asked with beside book, round and days: what stands in the plan, so that it can be built again. */
export type AskedOfPlan = {
  readonly evenUsdPerHour: number;
  readonly outages: readonly Outage[];
  readonly done: readonly DoneWork[];
} & OptionsOfRest;

type OptionsOfRest = Pick<ProblemOptions, 'dates' | 'underWay' | 'propertyIds'>;

/** What a plan was asked with, to build its problem again. Price in dollars an hour; 0 where none was asked for. */
export function askedOf({ evenDays, outages = [], done = [], rest }: Plan): AskedOfPlan {
  return { evenUsdPerHour: evenDays?.usdPerHour ?? 0, outages, done, ...optionsOfRest(rest) };
}

/** What is asked for where the rest of a day is planned, or was; nothing where whole days are. */
export function optionsOfRest(rest: Plan['rest']): OptionsOfRest {
  return rest === undefined ? {} : { dates: [rest.date], underWay: rest.rigs, propertyIds: rest.propertyIds };
}
