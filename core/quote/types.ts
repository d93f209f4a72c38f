import type { FitTrim, ReachAnswer } from '../reach/index.ts';

/** One figure of a quote, dollars, with the arithmetic that gives it. */
export type MoneyLine = { readonly what: string; readonly arithmetic: string; readonly dollars: number };

/** Whether one method can treat one zone, in words, and how long it takes where it can. */
export type MethodFit = {
  readonly name: string;
  readonly answer: ReachAnswer;
  /** Hand trim included. */
  readonly minutes: number | null;
  /** Hand trim of what a machine leaves; null for none. */
  readonly trim: FitTrim | null;
  /** Ground that a machine leaves and nobody trims. ft2 */
  readonly notReachedSqFt: number;
};

/** One zone under one treatment. */
export type ZoneWork = {
  readonly zoneId: string;
  readonly zoneName: string;
  readonly treatedSqFt: number;
  /** Every method of the book that is made for the treatment. */
  readonly fits: readonly MethodFit[];
  /** The quickest that fits; null where none does. */
  readonly chosen: MethodFit | null;
};

/** How much of a product a treatment takes, in the product's unit. */
export type ProductUse = {
  readonly name: string;
  readonly amount: number;
  readonly unit: 'fl-oz' | 'oz' | 'lb';
  /** Dollars per unit; 0 where the book has no price. */
  readonly pricePerUnit: number;
};

/** What one treatment takes on the whole of a lawn. */
export type LawnWork = {
  readonly treatmentId: string;
  readonly name: string;
  /** The rig that would do it best; '' where the book has none. */
  readonly rigName: string;
  readonly crew: number;
  /** Dollars per hour and person: of the rig, else of the book. */
  readonly wagePerHour: number;
  readonly zones: readonly ZoneWork[];
  /** With the methods chosen, without hand trim. */
  readonly treatingMin: number;
  readonly handTrimMin: number;
  readonly handTrimSqFt: number;
  readonly notReachedSqFt: number;
  /** Unloading, hose out and in, loading: once for each method that is used. */
  readonly setUpMin: number;
  /** Park, walk the hazards, flag, leave the notice. */
  readonly stopMin: number;
  readonly volumeGal: number;
  readonly products: readonly ProductUse[];
  /** Why something of it cannot be done or reckoned. */
  readonly remarks: readonly string[];
};

/** What one visit with one treatment costs and brings. */
export type VisitQuote = {
  readonly work: LawnWork;
  readonly minutes: number;
  readonly lines: readonly MoneyLine[];
  readonly costDollars: number;
  /** Null where the book has no price steps. */
  readonly priceDollars: number | null;
  readonly marginDollars: number | null;
  /** Of the price; null where there is none or it is nothing. */
  readonly marginShare: number | null;
};

/** The price of one visit by the owner's steps, dollars, and how it comes about. */
export type VisitPrice = { readonly dollars: number; readonly lines: readonly string[] };

/**
 * What a season of visits costs and brings, dollars; null where the book has no price steps. `marginShare` is of the
 * price.
 */
export type SeasonQuote = {
  readonly visits: number;
  readonly cost: MoneyLine;
  readonly price: MoneyLine | null;
  readonly marginDollars: number | null;
  readonly marginShare: number | null;
};

/** What a lawn of so many square feet takes, costs and brings. */
export type LawnQuote = {
  readonly areaSqFt: number;
  readonly visits: readonly VisitQuote[];
  readonly price: VisitPrice | null;
  /** Null where there is no treatment to reckon with. */
  readonly season: SeasonQuote | null;
};
