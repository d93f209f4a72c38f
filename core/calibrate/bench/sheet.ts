import type { Result } from '../../base/index.ts';
import type { ProductUnit } from '../../units/index.ts';

/** How a figure of the bench is typed, and what it is measured in. */
export type Reading =
  | 'length'
  | 'width'
  | 'area'
  | 'volume'
  | 'weight'
  | 'fluid'
  | 'flow'
  | 'speed'
  | 'seconds'
  | 'minutes'
  | 'gal-per-1000'
  | 'gal-per-acre'
  | 'lb-per-1000'
  | 'lb-per-acre'
  | 'product'
  | 'share'
  | 'number';

/** A blank to fill in: one figure, known or asked for. */
export type Blank = {
  /** Short and with its unit: "spacing-in". */
  readonly name: string;
  /** As answers carry it: "in"; 'product' stands for the unit of the product. */
  readonly unit: string;
  readonly words: string;
  readonly reading: Reading;
  /** Largest value that makes sense, in its unit; everything has to be above zero. */
  readonly most: number;
  /** Several readings may be given; their mean counts. */
  readonly many: boolean;
  /** Never filled in, only worked out. */
  readonly onlyFound: boolean;
  readonly mayBeZero: boolean;
};

/**
 * left = factor x above / (over x below). A name that stands there twice is squared. Any one of the names can be found from the others.
 */
export type Rule = {
  readonly left: string;
  readonly factor: number;
  /** 1 where it is not said. */
  readonly over?: number;
  readonly above: readonly string[];
  readonly below: readonly string[];
  readonly source: string;
};

/** Values by the names of their blanks. */
export type Values = Readonly<Record<string, number>>;

/** What was filled in. */
export type Entries = {
  readonly values: Values;
  /** Every reading of blanks that take several. */
  readonly lists: Readonly<Record<string, readonly number[]>>;
  /** Size of a tip as ISO 10625 numbers it. */
  readonly tipSize?: string;
  /** Unit of the product; fluid ounces where it is not said. */
  readonly productUnit?: ProductUnit;
};

/** Something found beside the rules: values, lines of working, and the names that it used. */
export type Finding = {
  readonly values: Values;
  readonly lines: readonly string[];
  readonly used: readonly string[];
  readonly sources: readonly string[];
};

/** One calculation of the bench. */
export type Sheet = {
  readonly kind: string;
  readonly words: string;
  readonly blanks: readonly Blank[];
  readonly rules: (entries: Entries) => readonly Rule[];
  /** What is worked out from the entries before the rules are tried. */
  readonly before?: (entries: Entries) => Result<Finding>;
  /** What follows when everything that can be known is known. */
  readonly after?: (values: Values, entries: Entries) => Result<Finding>;
};

export const NO_FINDING: Finding = { values: {}, lines: [], used: [], sources: [] };
