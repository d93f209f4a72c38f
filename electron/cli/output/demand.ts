import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { figure, format, issueSchema, text, unit } from './parts.ts';

/** Answer of `demand`. */
export const demandSchema = v.strictObject({
  ...format('swardway-demand'),
  bookId: text,
  roundId: text,
  demands: v.array(
    v.strictObject({
      propertyId: text,
      propertyName: text,
      zoneId: text,
      zoneName: text,
      treatmentId: text,
      treatmentName: text,
      /** 0, or 1 for the starter of a seed treatment. */
      step: figure,
      what: v.picklist(['spray', 'spread', 'aerate', 'seed']),
      /** Mix for 'spray', product for 'spread' and 'seed', '' for 'aerate'. */
      materialId: text,
      treatedSqFt: figure,
      volumeGal: figure,
      weightLb: figure,
      products: v.array(v.strictObject({ productId: text, amount: figure, unit })),
      passes: figure,
    }),
  ),
  totals: v.strictObject({
    /** Ground that several treatments go over counts for each of them. */
    treatedSqFt: figure,
    volumeGal: figure,
    weightLb: figure,
    products: v.array(
      v.strictObject({
        productId: text,
        name: text,
        amount: figure,
        unit,
        /** Whole bags to buy; null for products that come in no bags. */
        bags: v.nullable(figure),
        costUsd: figure,
      }),
    ),
  }),
  issues: v.array(issueSchema),
});

/** What `demand --json` prints. */
export type DemandOutput = Frozen<v.InferOutput<typeof demandSchema>>;
