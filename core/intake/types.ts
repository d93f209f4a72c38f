import type { Issue } from '../base/index.ts';
import type { Position, Property } from '../book/index.ts';

/** What becomes of one record of a file. A 'part' is joined into the property of another record. */
export const ROW_KINDS = ['new', 'changed', 'same', 'part', 'rejected'] as const;
/** One of `ROW_KINDS`. */
export type RowKind = (typeof ROW_KINDS)[number];

/** What becomes of one record of a file, and why. */
export type IntakeRow = {
  /** File and record in words. */
  readonly where: string;
  /** Name or id of what the record is about. */
  readonly name: string;
  readonly kind: RowKind;
  /** What changes, or why it is rejected. */
  readonly words: string;
  /** Ids of the properties that it goes into; empty where it is rejected. */
  readonly propertyIds: readonly string[];
  /** What is doubtful in the record; a rejected one has its reason here, an error unless its layer was left out. */
  readonly issues: readonly Issue[];
};

/** One property that the file speaks of. */
export type PropertyChange = {
  readonly kind: 'new' | 'changed' | 'same';
  /** What the book has, or null. */
  readonly before: Property | null;
  readonly after: Property;
  /** What differs, in words. */
  readonly words: readonly string[];
  readonly parkingAssumed: boolean;
};

/** How many records there are of each kind, and in all. */
export type IntakeCounts = Readonly<Record<RowKind, number>> & { readonly found: number };

/** What an import would do, to the last row. The counts of all kinds add up to `found`. */
export type IntakePreview = {
  readonly fileName: string;
  readonly rows: readonly IntakeRow[];
  readonly counts: IntakeCounts;
  readonly properties: readonly PropertyChange[];
  /** About the file and its layers as a whole; those of single records are with their rows. */
  readonly issues: readonly Issue[];
  /** The properties of the book that was looked at. */
  readonly base: readonly Property[];
};

/** What an import asks of other parts of the program; all of it may be missing. */
export type IntakeTools = {
  /** Place of an address by address ranges, or null. */
  readonly findPlace?: (address: string) => Position | null;
  /** A changed property with its earlier total kept among its past measures. */
  readonly keepPast?: (before: Property, after: Property) => Property;
};
