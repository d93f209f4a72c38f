import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { figure, format, text } from './parts.ts';

const amount = v.strictObject({
  /** The option that takes such a figure, without its dashes; a few are only ever worked out. */
  name: text,
  value: figure,
  /** "gal/acre"; '' for a plain number, 'share' for 0 to 1. */
  unit: text,
});

/** Answer of `calibrate`. */
export const calibrateSchema = v.strictObject({
  ...format('swardway-calibration'),
  kind: text,
  /** What was filled in, in the units of its names. */
  given: v.array(amount),
  answers: v.array(amount),
  /** The arithmetic, a line for each step. */
  working: v.array(text),
  source: text,
  /** Only where a rate is wanted from tips: the nearest first. */
  combinations: v.optional(
    v.array(
      v.strictObject({
        size: text,
        colour: text,
        psi: figure,
        mph: figure,
        gpm: figure,
        galPer1000SqFt: figure,
        gpa: figure,
        /** Share off the wanted rate: 0.02 is 2 % above. */
        difference: figure,
      }),
    ),
  ),
  /** What the maker states of the droplets, as it was given. */
  droplets: v.optional(text),
});

/** What `calibrate --json` prints. */
export type CalibrateOutput = Frozen<v.InferOutput<typeof calibrateSchema>>;
