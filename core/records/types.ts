import type { ApplicationRecord, Applicator, Book, Product, Property, Treatment, Visit } from '../book/index.ts';
import type { PlanStop } from '../plan/result/index.ts';
import type { RuleId } from './rules.ts';

/** What a record is about: one property, one day, one rig, one round. */
export type RecordSubject = Pick<ApplicationRecord, 'propertyId' | 'on' | 'roundId' | 'rigId'>;

/**
 * What an element of a record says: known from the book and what was written down, typed by hand, as planned since nothing was written
 * down, missing with where it is to be entered, or not asked of this work.
 */
export type Answer =
  | { readonly kind: 'known' | 'hand'; readonly text: string }
  | { readonly kind: 'planned'; readonly text: string; readonly lacks: string }
  | { readonly kind: 'missing'; readonly lacks: string }
  | { readonly kind: 'not-asked'; readonly why: string };

/** What the elements about the whole visit are filled from. */
export type VisitFacts = {
  readonly book: Book;
  readonly subject: RecordSubject;
  readonly property: Property | undefined;
  /** What was written down, or what was planned where nothing was. */
  readonly visit: Visit;
  readonly isWritten: boolean;
  /** The stop of a plan at hand. */
  readonly stop: PlanStop | undefined;
  /** Who applied; null where nobody is named. */
  readonly applicator: Applicator | null;
  /** The certified applicator who applied or supervised. */
  readonly certified: Applicator | null;
};

/** One product of one treatment on the property. */
export type Applied = {
  readonly treatmentId: string;
  readonly productId: string;
  readonly zoneIds: readonly string[];
  /** In the product's unit. */
  readonly amount: number;
  readonly areaSqFt: number;
  /** Mix that it went down in, gal; 0 for dry products. */
  readonly mixGal: number;
  /** True where it was written down what was used. */
  readonly isMeasured: boolean;
  /** What it was done with, by name; empty where the visit does not say. */
  readonly equipment: readonly string[];
};

/** What the elements about one product are filled from. */
export type ProductFacts = {
  readonly facts: VisitFacts;
  readonly applied: Applied;
  readonly product: Product | undefined;
  readonly treatment: Treatment | undefined;
};

/** An element of a record: what it is called, which rules ask for it, and how it is filled. */
export type RecordElement<Facts> = {
  readonly id: string;
  readonly words: string;
  readonly askedBy: readonly RuleId[];
  readonly fill: (facts: Facts) => Answer;
  /** False for figures, which are corrected where they were written down. */
  readonly canType: boolean;
};

/** An element of a record with what was filled in. */
export type Filled = {
  readonly id: string;
  readonly words: string;
  readonly askedBy: readonly RuleId[];
  readonly canType: boolean;
  readonly answer: Answer;
};

/** One product of a record: the amount in its unit, the ground in square feet, and its elements. */
export type FilledProduct = Pick<Applied, 'treatmentId' | 'productId' | 'zoneIds' | 'amount' | 'areaSqFt'> & {
  readonly name: string;
  readonly treatmentName: string;
  /** Absent where the book has no such product. */
  readonly unit?: Product['unit'];
  readonly elements: readonly Filled[];
};

/** A record as it would be written now. */
export type Draft = {
  readonly subject: RecordSubject;
  /** False where nothing was written down of the visit: everything is as planned, and it cannot be kept. */
  readonly isWritten: boolean;
  readonly elements: readonly Filled[];
  readonly products: readonly FilledProduct[];
};
