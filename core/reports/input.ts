import type { Book, Property } from '../book/index.ts';
import type { PropertyMeasure } from '../measure/index.ts';
import type { Plan, PlanDay } from '../plan/result/index.ts';

/** What a sheet is made from. */
export type DayInput = { readonly scope: 'day'; readonly book: Book; readonly plan: Plan; readonly day: PlanDay };
export type PropertyInput = {
  readonly scope: 'property';
  readonly book: Book;
  readonly property: Property;
  readonly measure: PropertyMeasure;
};
export type SheetInput = DayInput | PropertyInput;
