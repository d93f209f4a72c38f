import * as v from 'valibot';
import {
  dateSchema,
  finite,
  idSchema,
  nameSchema,
  notNegative,
  positive,
  share,
  textSchema,
  wholeNumber,
} from './schema-parts.ts';
import { choiceSchema } from './season-schema.ts';

/** Limits that the label of a product sets; entered by the user, never by the program. */
export const labelSchema = v.object({
  /** Registration number as the label prints it (in the United States the EPA's). */
  registration: v.optional(textSchema, ''),
  /** Whether the label says "restricted use"; absent: not entered. */
  restrictedUse: v.optional(v.boolean()),
  /** When people and pets may come back, in the words of the label; absent: not entered. */
  reentry: v.optional(textSchema),
  /** Most per application, in the product's unit per 1,000 ft2. */
  mostPerApplication: v.optional(positive),
  /** Most per year, in the product's unit per 1,000 ft2. */
  mostPerYear: v.optional(positive),
  /** Fewest days between two applications on the same ground. */
  leastDaysBetween: v.optional(v.pipe(wholeNumber, v.minValue(1))),
  leastCarrierGalPer1000SqFt: v.optional(positive),
  mostCarrierGalPer1000SqFt: v.optional(positive),
  mostWindMph: v.optional(positive),
  /** Air temperature between which it may be applied, F. */
  leastAirF: v.optional(finite),
  mostAirF: v.optional(finite),
  /** Hours without rain that it needs afterwards. */
  dryHours: v.optional(positive),
  /** Days that have to lie between it and seeding the same ground: before the seed, and after it. */
  daysBeforeSeeding: v.optional(v.pipe(wholeNumber, v.minValue(1))),
  daysAfterSeeding: v.optional(v.pipe(wholeNumber, v.minValue(1))),
  needsAgitation: v.optional(v.boolean(), false),
  note: v.optional(textSchema, ''),
});

/** What products are measured in: fluid ounces by volume, ounces and pounds by weight. */
export const PRODUCT_UNITS = ['fl-oz', 'oz', 'lb'] as const;

/** What is applied. `unit` is what it is measured in: fl-oz by volume, oz and lb by weight. */
export const productSchema = v.object({
  id: idSchema,
  name: nameSchema,
  form: v.picklist(['liquid', 'dry', 'granular', 'seed']),
  unit: v.picklist(PRODUCT_UNITS),
  /** Who makes it. */
  maker: v.optional(nameSchema),
  /** What sort of product it is, for records and notices: "herbicide", "fertilizer". */
  type: v.optional(nameSchema),
  /** Whether it is a pesticide by law; absent: not entered. Seed is none. */
  pesticide: v.optional(v.boolean()),
  /** Weight of one bag, lb; for granular products and seed. */
  bagLb: v.optional(positive),
  /** Weight of a gallon, lb, as it is printed; for liquids whose analysis is counted. */
  lbPerGal: v.optional(positive),
  /** Shares by weight, 0 to 1, of the printed analysis. */
  analysis: v.optional(v.object({ nitrogen: share, phosphate: share, potash: share })),
  /** Active ingredients, lb in one unit of the product. */
  actives: v.optional(v.array(v.object({ name: nameSchema, lbPerUnit: positive }))),
  pricePerUnit: v.optional(notNegative, 0),
  /** What lies in the store, in the product's unit; absent: nothing. */
  onHand: v.optional(notNegative),
  /** Days from ordering it to having it in the store; absent: a week. */
  leadDays: v.optional(wholeNumber),
  label: labelSchema,
  note: v.optional(textSchema, ''),
});

/** One tank recipe. */
export const mixSchema = v.object({
  id: idSchema,
  name: nameSchema,
  carrierGalPer1000SqFt: positive,
  parts: v.array(v.object({ productId: idSchema, amountPer1000SqFt: positive })),
  needsAgitation: v.optional(v.boolean(), false),
  /** What it takes to rinse the tank before another mix. */
  rinseMin: v.optional(notNegative, 0),
  rinseGal: v.optional(notNegative, 0),
  /** Most that may be left of it in a tank at the end of the day or before another mix, gal; absent: nothing. */
  reserveGal: v.optional(notNegative),
});

export const coverageSchema = v.variant('kind', [
  v.object({ kind: v.literal('whole') }),
  /** Spots only: the share of the zone that is really sprayed; label limits still count on the sprayed ground. */
  v.object({ kind: v.literal('spot'), share: v.pipe(share, v.gtValue(0)) }),
  /** A strip along pavement, along beds, or both. */
  v.object({
    kind: v.literal('band'),
    widthFt: positive,
    along: v.pipe(v.array(v.picklist(['paving', 'bed'])), v.minLength(1)),
  }),
]);

const treatmentBase = {
  id: idSchema,
  name: nameSchema,
  coverage: v.optional(coverageSchema, { kind: 'whole' }),
  /** What it is applied against, or for: "crabgrass". */
  target: v.optional(textSchema),
  /** What has to be flagged before work starts, and the minutes it takes at each property. */
  flagFirst: v.optional(v.array(v.picklist(['sprinkler-heads', 'shallow-lines', 'edges'])), []),
  flagMin: v.optional(notNegative, 0),
};

/** The rate of a granular product: by product, or by nutrient and the printed analysis. */
export const spreadRateSchema = v.variant('kind', [
  v.object({ kind: v.literal('product'), lbPer1000SqFt: positive }),
  v.object({
    kind: v.literal('nutrient'),
    nutrient: v.picklist(['nitrogen', 'phosphate', 'potash']),
    lbPer1000SqFt: positive,
  }),
]);

/** What a round applies to a zone. */
export const treatmentSchema = v.variant('kind', [
  v.object({ ...treatmentBase, kind: v.literal('spray'), mixId: idSchema }),
  v.object({ ...treatmentBase, kind: v.literal('spread'), productId: idSchema, rate: spreadRateSchema }),
  v.object({
    ...treatmentBase,
    kind: v.literal('aerate'),
    passes: v.optional(v.pipe(wholeNumber, v.minValue(1)), 1),
  }),
  v.object({
    ...treatmentBase,
    kind: v.literal('seed'),
    productId: idSchema,
    lbPer1000SqFt: positive,
    passes: v.optional(v.pipe(wholeNumber, v.minValue(1)), 1),
    /** Starter fertiliser put down in the same visit, after the seed. */
    starter: v.optional(
      v.object({ productId: idSchema, rate: spreadRateSchema, passes: v.pipe(wholeNumber, v.minValue(1)) }),
    ),
  }),
]);

const WORK_KINDS = ['aerate', 'seed', 'spread', 'spray'] as const;

/** One pass over the customer list, with dates between which it must happen. */
export const roundSchema = v.object({
  id: idSchema,
  name: nameSchema,
  treatmentIds: v.pipe(v.array(idSchema), v.minLength(1)),
  /** Properties in the round; 'all' for every one of the book. */
  propertyIds: v.optional(v.union([v.literal('all'), v.array(idSchema)]), 'all'),
  /** Which of them; absent: all. */
  choice: v.optional(choiceSchema),
  /** Treatments that are not for every zone: zones by their own tags, lawns by the rest. */
  only: v.optional(v.array(v.object({ treatmentId: idSchema, choice: choiceSchema }))),
  skipped: v.optional(v.array(v.object({ propertyId: idSchema, reason: textSchema })), []),
  /** Days that customers were promised; plans keep them. */
  promised: v.optional(v.array(v.object({ propertyId: idSchema, on: dateSchema }))),
  /** The working days, in order. */
  dates: v.pipe(v.array(dateSchema), v.minLength(1)),
  /** Working days at its end that are held back for weather; absent: the calendar's share of them. */
  heldBack: v.optional(wholeNumber),
  /** Last useful day; later days are priced. */
  dueDate: v.optional(dateSchema),
  /** When it is of use; absent: whenever there is a working day. */
  timingId: v.optional(idSchema),
  /** True: nothing is planned after the last useful day of the timing; else such days count as late. */
  onlyInWindow: v.optional(v.boolean()),
  /** The programme and year that it is a round of. */
  season: v.optional(v.object({ programmeId: idSchema, stepId: idSchema, year: wholeNumber })),
  rigIds: v.pipe(v.array(idSchema), v.minLength(1)),
  /** True where the ground counts as wet, so that weight limits apply. */
  wetGround: v.optional(v.boolean(), false),
  /** Kinds of work on the same ground, first to last; kinds that are not named come after, in the usual order. Absent: the usual order. */
  workOrder: v.optional(v.array(v.picklist(WORK_KINDS))),
});
