import { formatNumber } from '../../../core/units/index.ts';

/** "1 day", "4 days", "1,200 days". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${formatNumber(count)} ${count === 1 ? one : many}`;
}

/** "4 days", or "1 day, 2 rig days" where several rigs work on a date. A rig is planned once on a date at most. */
export function rigDays(dates: readonly string[]): string {
  const days = new Set(dates).size;
  const apart = days === dates.length ? '' : `, ${counted(dates.length, 'rig day')}`;
  return `${counted(days, 'day')}${apart}`;
}
