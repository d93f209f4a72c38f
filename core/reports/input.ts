import type { Book, Property, Round } from '../book/index.ts';
import type { MeasureChange, PropertyMeasure } from '../measure/index.ts';
import type { PassPicture } from '../passes/index.ts';
import type { Plan, PlanDay } from '../plan/result/index.ts';
import type { LawnQuote } from '../quote/index.ts';
import type { SeasonLedger } from '../round/ledger/index.ts';
import type { MapPicture } from './blocks.ts';
import type { DayWays } from './ways.ts';

/** Passes of a head over a zone of a day. */
export type DayPasses = {
  readonly propertyId: string;
  readonly zoneId: string;
  readonly machineId: string;
  readonly headId: string;
  readonly picture: PassPicture;
};

/** What sheets about a rig's day are made from. */
export type DayInput = {
  readonly scope: 'day';
  readonly book: Book;
  readonly plan: Plan;
  readonly day: PlanDay;
  /** What `passesWanted` asks for, as far as it can be laid; absent: nothing was laid, and none are drawn. */
  readonly passes?: readonly DayPasses[];
  /** The user's own plans and photos, to be drawn below the maps; absent: none are. */
  readonly pictures?: readonly MapPicture[];
  /** Drives along the roads; absent: every drive is drawn straight. */
  readonly ways?: DayWays;
};
/** Passes over zones of a lawn, and what drives them. */
export type SheetPasses = { readonly by: string; readonly pictures: readonly PassPicture[] };

/** What sheets about one lawn are made from. */
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

/** What sheets about a round are made from; without a plan they say what is missing. */
export type RoundInput = {
  readonly scope: 'round';
  readonly book: Book;
  readonly round: Round;
  readonly plan: Plan | null;
  /** Plans of the same round by fleets of the book; those that were made. */
  readonly fleetPlans: readonly { readonly fleetId: string; readonly plan: Plan }[];
};

/** What sheets about a calendar year are made from. */
export type YearInput = { readonly scope: 'year'; readonly book: Book; readonly ledger: SeasonLedger };

/** What sheets about the whole book are made from. */
export type BookInput = { readonly scope: 'book'; readonly book: Book };

/** What a sheet is made from, by what it is chosen by. */
export type SheetInput = DayInput | PropertyInput | RoundInput | YearInput | BookInput;
/** What a sheet is chosen by. */
export type SheetScope = SheetInput['scope'];
