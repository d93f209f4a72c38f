import * as v from 'valibot';
import { idSchema, nameSchema, notNegative, positionSchema, positive, share, wholeNumber } from './schema-parts.ts';

/** How the owner turns area and hours into a price; every figure is the user's own. Dollars. */
export const estimateSchema = v.object({
  /** Price per 1,000 ft2 by the size of the lawn: each step holds for the ground up to its end; the last has no end. */
  steps: v.optional(v.array(v.object({ upToSqFt: v.nullable(positive), dollarsPer1000SqFt: notNegative })), []),
  /** Least price of one visit. */
  leastPerVisit: v.optional(notNegative, 0),
  roundsPerSeason: v.optional(v.pipe(wholeNumber, v.minValue(1)), 1),
  /** Cost of everything that is not work, miles and product, as a share of those. */
  overheadShare: v.optional(share, 0),
});

/** A picture or scanned plan laid over the map by points that are known in both. */
export const overlaySchema = v.object({
  id: idSchema,
  name: nameSchema,
  /** Name of the picture in the book's own folder of pictures. */
  picture: nameSchema,
  widthPx: positive,
  heightPx: positive,
  points: v.array(v.object({ px: v.tuple([v.number(), v.number()]), at: positionSchema })),
  opacity: v.optional(share, 0.7),
});
