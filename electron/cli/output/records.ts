import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { figure, format, issueSchema, text, unit } from './parts.ts';

const element = v.strictObject({ id: text, text, from: v.picklist(['known', 'planned', 'hand', 'missing']) });
const missing = v.strictObject({ element: text, product: text, askedBy: text });

/** Answer of `records`: versions of application records as they are kept, and visits of which none is. */
export const recordsSchema = v.strictObject({
  ...format('swardway-records'),
  bookId: text,
  records: v.array(
    v.strictObject({
      recordId: text,
      version: v.pipe(v.number(), v.integer(), v.minValue(1)),
      newest: v.boolean(),
      withdrawn: v.boolean(),
      on: text,
      propertyId: text,
      roundId: text,
      rigId: text,
      writtenAt: text,
      writtenBy: text,
      why: text,
      elements: v.array(element),
      products: v.array(
        v.strictObject({
          treatmentId: text,
          productId: text,
          amount: figure,
          /** Null where the book no longer had the product. */
          unit: v.nullable(unit),
          areaSqFt: figure,
          elements: v.array(element),
        }),
      ),
      missing: v.array(missing),
    }),
  ),
  /** Visits that were done and of which no record was kept. */
  notKept: v.array(v.strictObject({ on: text, propertyId: text, roundId: text, rigId: text })),
  issues: v.array(issueSchema),
});

/** What `records --json` prints. */
export type RecordsOutput = Frozen<v.InferOutput<typeof recordsSchema>>;
