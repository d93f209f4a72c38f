import type { Book, Property } from '../book/index.ts';
import type { MeasureChange, PropertyMeasure } from '../measure/index.ts';
import type { PassPicture } from '../passes/index.ts';
import type { Plan, PlanDay } from '../plan/result/index.ts';
import type { LawnQuote } from '../quote/index.ts';

/** What a sheet is made from. */
export type DayInput = { readonly scope: 'day'; readonly book: Book; readonly plan: Plan; readonly day: PlanDay };
/** Passes over zones of a lawn, and what drives them. */
export type SheetPasses = { readonly by: string; readonly pictures: readonly PassPicture[] };

export type PropertyInput = {
  readonly scope: 'property';
  readonly book: Book;
  readonly property: Property;
  readonly measure: PropertyMeasure;
  /** The total against the last earlier one. */
  readonly change?: MeasureChange | null;
  /** Machines, products, costs and price; absent: the sheet is of the ground alone. */
  readonly quote?: LawnQuote | null;
  /** Passes of one head over the zones, to be drawn on the plan; absent: none are drawn. */
  readonly passes?: SheetPasses | null;
  /** The customer's copy has neither machines nor costs nor margin; absent: the office's. */
  readonly reader?: 'office' | 'customer';
};
export type SheetInput = DayInput | PropertyInput;
