import * as v from 'valibot';
import { dateSchema, idSchema, nameSchema, notNegative, textSchema, wholeNumber } from './schema-parts.ts';
import { PRODUCT_UNITS } from './work-schema.ts';

/** The firm as papers name it. */
export const firmSchema = v.object({
  name: v.optional(nameSchema, ''),
  address: v.optional(textSchema, ''),
  phone: v.optional(nameSchema, ''),
  /** Number of the business licence. */
  licence: v.optional(nameSchema, ''),
  /** What is treated, as records name it, where a lawn says nothing else: "residential lawn". */
  siteUse: v.optional(nameSchema, ''),
});

const TEMPLATE_KINDS = ['notice', 'posting'] as const;

/** The user's own text with fields in braces: a notice for a customer, or a sign to post. */
export const templateSchema = v.object({
  id: idSchema,
  name: nameSchema,
  what: v.picklist(TEMPLATE_KINDS),
  text: textSchema,
});

/** One element of an application record as it was written. */
const writtenElementSchema = v.object({
  id: idSchema,
  text: textSchema,
  /**
   * 'planned': as it was planned, since nothing else was written down; 'hand': typed into the record; 'missing': it was asked for and not
   * known, its text is ''. Absent: from the book and what was written down.
   */
  from: v.optional(v.picklist(['planned', 'hand', 'missing'])),
});

/** One product of one treatment. */
const appliedProductSchema = v.object({
  treatmentId: idSchema,
  productId: idSchema,
  zoneIds: v.array(idSchema),
  /** In all, in `unit`. */
  amount: notNegative,
  /** Absent: the book no longer had the product when it was written. */
  unit: v.optional(v.picklist(PRODUCT_UNITS)),
  /** Ground treated, ft2. */
  areaSqFt: notNegative,
  elements: v.array(writtenElementSchema),
});

/** A date and a time by the clock on the wall, YYYY-MM-DDTHH:MM. */
const wallTimeSchema = v.pipe(
  v.string(),
  v.regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d$/),
);

/**
 * One version of one application record: what was applied to one property on one day by one rig for one round. Written once; a
 * correction is another version. It holds words and figures of its own, so that a book changed later changes no record.
 */
export const applicationRecordSchema = v.object({
  id: idSchema,
  /** What all versions of one record have in common. */
  recordId: idSchema,
  /** Counted from 1. */
  version: v.pipe(wholeNumber, v.minValue(1)),
  on: dateSchema,
  propertyId: idSchema,
  roundId: idSchema,
  rigId: idSchema,
  writtenAt: wallTimeSchema,
  writtenBy: v.pipe(nameSchema, v.minLength(1)),
  /** Why there is this version; '' for the first. */
  why: v.optional(textSchema, ''),
  /** True where the record holds no more; what it said before stays to be read. */
  withdrawn: v.optional(v.literal(true)),
  elements: v.array(writtenElementSchema),
  products: v.array(appliedProductSchema),
  /** Of this version and the one before, so that a change by another program is noticed. */
  fingerprint: v.string(),
});
