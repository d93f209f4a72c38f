import type { Book, Property } from '../../../core/book/index.ts';
import { lastChange } from '../../../core/measure/index.ts';
import type { PassesOf } from '../../../core/passes/index.ts';
import type { Plan, PlanDay } from '../../../core/plan/result/index.ts';
import { lawnQuote } from '../../../core/quote/index.ts';
import { SHEETS, type Sheet, type SheetKind, type SheetPasses } from '../../../core/reports/index.ts';
import { measureOf } from '../../stores/index.ts';

/** Kinds of sheet that there are. */
export const SHEET_COUNT = SHEETS.length;

export type SheetSource = {
  readonly book: Book;
  readonly plan: Plan | null;
  readonly day: PlanDay | null;
  readonly property: Property | null;
  /** Whose copy of a sheet about a lawn it is. */
  readonly reader: 'office' | 'customer';
  /** Passes to be drawn on the plan of the lawn. */
  readonly passes: SheetPasses | null;
  /** Passes that are known, for minutes and prices. */
  readonly passesOf: PassesOf;
};

/** The sheet of a kind, or why there is none. */
export function makeSheet(
  kind: SheetKind,
  { book, plan, day, property, reader, passes, passesOf }: SheetSource,
): Sheet | string {
  if (kind.scope === 'day') {
    return plan === null || day === null
      ? 'Plan a round first: this sheet is made from a planned day.'
      : kind.make({ scope: 'day', book, plan, day });
  }
  if (property === null) return 'Choose a lawn in the Ground room first.';
  const measure = measureOf(property);
  const change = lastChange(property, measure);
  return kind.make({
    scope: 'property',
    book,
    property,
    measure,
    change,
    quote: lawnQuote(book, property, measure, passesOf),
    reader,
    passes,
  });
}
