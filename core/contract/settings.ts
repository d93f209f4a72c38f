import * as v from 'valibot';

/** What the user chose once for all books on this machine. Window places are not settings; what a book needs is in the book. */
export const settingsSchema = v.looseObject({
  /** Units that the screens show; files are the same either way. */
  units: v.optional(v.fallback(v.picklist(['us', 'metric']), 'us'), 'us'),
  /** Light, dark, or as the system has it. */
  appearance: v.optional(v.fallback(v.picklist(['system', 'light', 'dark']), 'system'), 'system'),
  /** How long planning searches before it stops by itself, seconds. */
  planSeconds: v.optional(v.fallback(v.pipe(v.number(), v.minValue(1), v.maxValue(3600)), 10), 10),
  /** Seed of the planning search. */
  planSeed: v.optional(v.fallback(v.pipe(v.number(), v.integer()), 1), 1),
  /** Whether single-letter keys choose tools (WCAG 2.1.4 asks that they can be turned off). */
  letterKeys: v.optional(v.fallback(v.boolean(), true), true),
});

export type Settings = Readonly<v.InferOutput<typeof settingsSchema>>;

/** A change of some settings; here a bad value is refused, while a bad value in the stored file falls back to its default. */
export const settingsChangeSchema = v.strictObject({
  units: v.optional(v.picklist(['us', 'metric'])),
  appearance: v.optional(v.picklist(['system', 'light', 'dark'])),
  planSeconds: v.optional(v.pipe(v.number(), v.minValue(1), v.maxValue(3600))),
  planSeed: v.optional(v.pipe(v.number(), v.integer())),
  letterKeys: v.optional(v.boolean()),
});

export const DEFAULT_SETTINGS: Settings = v.parse(settingsSchema, {});
