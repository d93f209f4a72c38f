import * as v from 'valibot';
import { idSchema, notNegative, positive, share, wholeNumber } from './schema-parts.ts';

/** How the owner turns area and hours into a price; every figure is the user's own. Dollars. */
export const estimateSchema = v.object({
  /** Price per 1,000 ft2 by the size of the lawn: each step holds for the ground up to its end; the last has no end. */
  steps: v.optional(v.array(v.object({ upToSqFt: v.nullable(positive), dollarsPer1000SqFt: notNegative })), []),
  /** Least price of one visit. */
  leastPerVisit: v.optional(notNegative, 0),
  roundsPerSeason: v.optional(v.pipe(wholeNumber, v.minValue(1)), 1),
  /** Cost of everything that is not work, miles and product, as a share of those. */
  overheadShare: v.optional(share, 0),
  /** Treatments that make up a usual season; absent: all of the book. */
  treatmentIds: v.optional(v.array(idSchema)),
  /** What a gallon of spray costs beside its products: water and its fetching. */
  carrierDollarsPerGal: v.optional(notNegative, 0),
  /** Share of the day's driving that one visit has to carry. */
  milesPerVisit: v.optional(notNegative, 0),
  drivingMinPerVisit: v.optional(notNegative, 0),
});
