import type { Book, Property, Round } from '../../../core/book/index.ts';
import { lastChange } from '../../../core/measure/index.ts';
import type { PassesOf } from '../../../core/passes/index.ts';
import type { Plan, PlanDay } from '../../../core/plan/result/index.ts';
import { lawnQuote } from '../../../core/quote/index.ts';
import {
  type DayPasses,
  type DayWays,
  type MapPicture,
  type PropertyInput,
  type RoundInput,
  SHEETS,
  type Sheet,
  type SheetKind,
  type SheetPasses,
} from '../../../core/reports/index.ts';
import type { SeasonLedger } from '../../../core/round/ledger/index.ts';
import type { Need } from '../../next/index.ts';
import { measureOf } from '../../stores/index.ts';
import { paperWords } from '../../texts/index.ts';

/** Kinds of sheet that there are. */
export const SHEET_COUNT = SHEETS.length;

export type SheetSource = {
  readonly book: Book;
  readonly plan: Plan | null;
  readonly round: Round | null;
  readonly day: PlanDay | null;
  readonly property: Property | null;
  /** Of the chosen year; null while it is reckoned. */
  readonly ledger: SeasonLedger | null;
  readonly fleetPlans: RoundInput['fleetPlans'];
  /** Whose copy of a sheet about a lawn it is. */
  readonly reader: 'office' | 'customer';
  /** Passes to be drawn on the plan of the lawn. */
  readonly passes: SheetPasses | null;
  /** Passes that are known, for minutes and prices. */
  readonly passesOf: PassesOf;
  /** Passes to be drawn on the maps of the day. */
  readonly dayPasses: readonly DayPasses[];
  /** The book's own pictures, to be drawn below the maps of the day. */
  readonly pictures: readonly MapPicture[];
  /** The drives of the day along the roads, where there are any. */
  readonly ways: DayWays | undefined;
};

/** Why there is no sheet: what it is made from, and what is missing for that; null where it only takes a while. */
export type NoSheet = { readonly kind: 'none'; readonly words: string; readonly needs: Need | null };

const none = (needs: Need | null, words: string): NoSheet => ({ kind: 'none', words, needs });

/** The sheet of a kind, or why there is none. */
export function makeSheet(kind: SheetKind, source: SheetSource): Sheet | NoSheet {
  const { book, plan, round, day, property } = source;
  switch (kind.scope) {
    case 'day':
      return plan === null || day === null
        ? none('stops', paperWords.sheets.needsPlan)
        : kind.make({
            scope: 'day',
            book,
            plan,
            day,
            passes: source.dayPasses,
            pictures: source.pictures,
            ...(source.ways === undefined ? {} : { ways: source.ways }),
          });
    case 'property':
      return property === null
        ? none('lawns', paperWords.sheets.needsLawn)
        : kind.make(propertyInput(source, property));
    case 'round':
      return round === null
        ? none('round', paperWords.sheets.needsRound)
        : kind.make({ scope: 'round', book, round, plan, fleetPlans: source.fleetPlans });
    case 'year':
      return source.ledger === null
        ? none(null, paperWords.sheets.reckoningTheSeason)
        : kind.make({ scope: 'year', book, ledger: source.ledger });
    case 'book':
      return kind.make({ scope: 'book', book });
  }
}

function propertyInput({ book, reader, passes, passesOf }: SheetSource, property: Property): PropertyInput {
  const measure = measureOf(property);
  const change = lastChange(property, measure);
  const quote = lawnQuote(book, property, measure, passesOf);
  return { scope: 'property', book, property, measure, change, quote, reader, passes };
}
