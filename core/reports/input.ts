import type { Book } from '../book/index.ts';
import type { PropertyMeasure } from '../measure/index.ts';
import type { Plan, PlanDay } from '../plan/result/index.ts';
import type { Sheet, SheetKind } from './blocks.ts';

/** What sheets are made from. Sheets about days need a plan; sheets about lawns need measures. */
export type SheetInput = {
  readonly book: Book;
  readonly plan: Plan | null;
  readonly measures: readonly PropertyMeasure[];
};

/** Which sheets are wanted; everything where a member is absent. */
export type SheetFilter = { readonly date?: string; readonly rigId?: string; readonly propertyId?: string };

/** One kind of sheet: what it is called, what it is for, and how it is made. */
export type SheetMaker = {
  readonly kind: SheetKind;
  readonly name: string;
  /** What it is for, one sentence. */
  readonly about: string;
  readonly needsPlan: boolean;
  readonly make: (input: SheetInput, filter: SheetFilter) => readonly Sheet[];
};

/** The days of a plan that a filter lets through. */
export function daysWanted(input: SheetInput, filter: SheetFilter): readonly PlanDay[] {
  const days = input.plan?.days ?? [];
  return days.filter(
    (day) =>
      (filter.date === undefined || day.date === filter.date) &&
      (filter.rigId === undefined || day.rigId === filter.rigId) &&
      (filter.propertyId === undefined || day.stops.some((stop) => stop.propertyId === filter.propertyId)),
  );
}

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** A calendar date in words, "Tuesday 16 March 2027"; the text itself where it is no date. */
export function dateWords(date: string): string {
  const at = new Date(`${date}T00:00:00Z`);
  if (Number.isNaN(at.getTime())) return date;
  return `${WEEKDAYS[at.getUTCDay()]} ${at.getUTCDate()} ${MONTHS[at.getUTCMonth()]} ${at.getUTCFullYear()}`;
}
