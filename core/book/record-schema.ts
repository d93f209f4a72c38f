import * as v from 'valibot';
import {
  bearingSchema,
  dateSchema,
  finite,
  idSchema,
  minuteOfDay,
  nameSchema,
  notNegative,
  textSchema,
  wholeNumber,
} from './schema-parts.ts';

/** What was done to one zone, as it was written down. */
const doneTaskSchema = v.object({
  zoneId: idSchema,
  treatmentId: idSchema,
  /** Of a treatment in two steps: 0 for the seed, 1 for its starter; absent: the first one that weighs, and the other by its rate. */
  step: v.optional(wholeNumber),
  /** Ground treated, ft2. */
  treatedSqFt: notNegative,
  /** What the plan had for it, and what it really took: gallons of mix, or pounds. */
  expectedGal: v.optional(notNegative),
  usedGal: v.optional(notNegative),
  expectedLb: v.optional(notNegative),
  usedLb: v.optional(notNegative),
  /** What went down of each product, in its own unit, so that a recipe changed later changes no record; absent: by the treatment as it is now. */
  products: v.optional(v.array(v.object({ productId: idSchema, amount: notNegative }))),
  /** Machines with their heads, and hand methods, by name: what it was done with, whatever becomes of the plan. */
  equipment: v.optional(v.array(nameSchema)),
});

/** One visit to one property: done, or left out with the reason. */
export const visitSchema = v.object({
  id: idSchema,
  on: dateSchema,
  roundId: idSchema,
  rigId: idSchema,
  propertyId: idSchema,
  outcome: v.variant('kind', [
    v.object({ kind: v.literal('done'), tasks: v.array(doneTaskSchema) }),
    v.object({
      kind: v.literal('skipped'),
      reason: textSchema,
      /** True: nobody comes back in this round; absent: the lawn is still to be done. */
      notAgain: v.optional(v.boolean()),
    }),
  ]),
  /** By the clock on the wall, minutes after midnight. */
  arriveMin: v.optional(minuteOfDay),
  leaveMin: v.optional(minuteOfDay),
  /** What the plan had, minutes, so that the two can be held against each other later. */
  plannedDriveMin: v.optional(notNegative),
  plannedSetUpMin: v.optional(notNegative),
  plannedTreatMin: v.optional(notNegative),
  drivenMin: v.optional(notNegative),
  applicatorId: v.optional(idSchema),
  /** The certified applicator under whom it was done, where the one who applied is not certified. */
  supervisorId: v.optional(idSchema),
  /** Others who applied under supervision, by name. */
  helpers: v.optional(v.array(nameSchema)),
  /** Weather as it was read on site during the work; a forecast is none of it. */
  conditions: v.optional(
    v.object({
      windMph: v.optional(notNegative),
      /** Where the wind came from. */
      windFromDeg: v.optional(bearingSchema),
      airF: v.optional(finite),
      /** In the words of who looked: "clear", "light cloud". */
      sky: v.optional(nameSchema),
    }),
  ),
  note: v.optional(textSchema, ''),
});

/** What a rig has aboard at one time of one day, read from its gauges. */
export const gaugeSchema = v.object({
  id: idSchema,
  on: dateSchema,
  rigId: idSchema,
  atMin: minuteOfDay,
  /** Compartments as the plan names them; `material` is a mix or a product, '' for empty. */
  compartments: v.array(
    v.object({
      compartmentId: nameSchema,
      materialId: v.optional(v.string(), ''),
      gal: v.optional(notNegative),
      lb: v.optional(notNegative),
    }),
  ),
  /** Water of the nurse tank; absent: not read. */
  nurseGal: v.optional(notNegative),
  bags: v.optional(v.array(v.object({ productId: idSchema, lb: notNegative })), []),
});
