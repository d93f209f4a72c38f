import type { PastMeasure, Property } from '../book/index.ts';
import { measureProperty } from './measure-property.ts';
import type { PropertyMeasure } from './types.ts';

/** Totals nearer to each other than this are the same, ft2. */
const SAME_SQ_FT = 0.5;

/**
 * The property after a change of its outlines or areas, with its earlier total kept: where the total differs and the earlier
 * one was not found today, it goes to the end of `pastMeasures` with its date (without one where nobody wrote it down), and
 * `measuredOn` becomes today. A date that the change itself brings stays. Where the total is the same, `after` comes back as
 * it is; a property that was never measured has nothing to keep, but gets its date.
 * @param before the property as it was; null for a new one
 * @param today  calendar date, YYYY-MM-DD
 * @param measure handed in where measures are known already
 */
export function withPastMeasure(
  before: Property | null,
  after: Property,
  today: string,
  measure: (property: Property) => PropertyMeasure = measureProperty,
): Property {
  // What was found today is corrected today: nothing to keep, and the date is there.
  if (before?.measuredOn === today && after.measuredOn === today) return after;
  const now = measure(after);
  const earlier = before === null ? null : measure(before);
  if (before === null || earlier === null || isEmpty(earlier)) {
    return isEmpty(now) || after.measuredOn !== undefined ? after : { ...after, measuredOn: today };
  }
  if (Math.abs((now.treatableSqFt ?? 0) - (earlier.treatableSqFt ?? 0)) < SAME_SQ_FT) return after;
  const bringsDate = after.measuredOn !== undefined && after.measuredOn !== before.measuredOn;
  const dated: Property = bringsDate ? after : { ...after, measuredOn: today };
  if (before.measuredOn === today) return dated;
  const past = after.pastMeasures ?? before.pastMeasures ?? [];
  return { ...dated, pastMeasures: [...past, pastOf(before, earlier)] };
}

function isEmpty({ treatableSqFt }: PropertyMeasure): boolean {
  return treatableSqFt === null || treatableSqFt === 0;
}

function pastOf(property: Property, measure: PropertyMeasure): PastMeasure {
  return {
    ...(property.measuredOn === undefined ? {} : { on: property.measuredOn }),
    treatableSqFt: measure.treatableSqFt ?? 0,
    ...(measure.errorSqFt === null ? {} : { errorSqFt: measure.errorSqFt }),
    how: howFound(property),
  };
}

/** "drawn over aerial picture, stated": how the areas of a property were found. */
function howFound(property: Property): string {
  const ways = property.zones.map(({ shape }) => {
    if (shape.kind === 'stated') return shape.method === '' ? 'stated' : `stated: ${shape.method}`;
    return shape.drawnOver === undefined ? 'drawn' : `drawn over ${shape.drawnOver}`;
  });
  return [...new Set(ways)].join(', ').slice(0, 400);
}

/** How a total stands against an earlier one. */
export type MeasureChange = {
  readonly past: PastMeasure;
  readonly nowSqFt: number;
  readonly nowErrorSqFt: number | null;
  /** Of the earlier total. */
  readonly changeShare: number;
  /** Whether the change is more than the likely errors, as far as they are known; null where neither is. */
  readonly moreThanError: boolean | null;
  /** The same in words: "more than the likely error". */
  readonly verdict: string;
};

/**
 * The newest total against the last earlier one; null where there is none. The two were found apart from each other, so their
 * errors are joined by the root of the sum of squares.
 */
export function lastChange(property: Property, measure: PropertyMeasure): MeasureChange | null {
  const past = property.pastMeasures?.at(-1);
  if (past === undefined || past.treatableSqFt === 0 || measure.treatableSqFt === null) return null;
  const change = measure.treatableSqFt - past.treatableSqFt;
  const knows = [measure.errorSqFt, past.errorSqFt ?? null].filter((each) => each !== null);
  const moreThanError = knows.length === 0 ? null : Math.abs(change) > Math.hypot(...knows);
  return {
    past,
    nowSqFt: measure.treatableSqFt,
    nowErrorSqFt: measure.errorSqFt,
    changeShare: change / past.treatableSqFt,
    moreThanError,
    verdict: verdictOf(moreThanError, knows.length),
  };
}

function verdictOf(moreThanError: boolean | null, known: number): string {
  if (moreThanError === null) return 'the likely error is not known';
  const words = moreThanError ? 'more than the likely error' : 'within the likely error';
  return known === 2 || !moreThanError ? words : `${words} as far as it is known`;
}
