import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { figure, format, issueSchema, methodSchema, text } from './parts.ts';

/** One method on one zone. `minutes` is the time of treating, hand trim included, null where the method cannot do it. */
const answerSchema = v.strictObject({
  method: methodSchema,
  name: text,
  can: v.boolean(),
  reason: v.picklist([
    'fits',
    'gate-tight',
    'gate-too-narrow',
    'too-steep',
    'hose-too-short',
    'not-carried',
    'no-trailer-access',
    'no-agitation',
    'too-heavy-when-wet',
    'no-head-for-treatment',
    'method-wrong-for-treatment',
    'vessel-below-least-volume',
    'zone-not-measured',
    'no-room-for-swath',
  ]),
  tight: v.boolean(),
  words: text,
  minutes: v.nullable(figure),
  /** What a machine leaves and a hand tool treats, as a plan would have it; null for none. */
  handTrim: v.nullable(v.strictObject({ handMethodId: text, name: text, minutes: figure, areaSqFt: figure })),
  /** Ground that a machine leaves and nobody trims. */
  notReachedSqFt: figure,
});

/** Answer of `reach`. */
export const reachSchema = v.strictObject({
  ...format('swardway-reach'),
  bookId: text,
  roundId: text,
  /** Null where no rig was asked about: then any rig of the book may carry the method. */
  rigId: v.nullable(text),
  wetGround: v.boolean(),
  treatments: v.array(
    v.strictObject({
      treatmentId: text,
      name: text,
      zones: v.array(
        v.strictObject({
          propertyId: text,
          propertyName: text,
          zoneId: text,
          zoneName: text,
          treatedSqFt: figure,
          /** Whether any of the methods can. */
          reachable: v.boolean(),
          answers: v.array(answerSchema),
        }),
      ),
    }),
  ),
  /** Zones, counted once for each treatment, that no method can treat. */
  unreachable: figure,
  issues: v.array(issueSchema),
});

/** What `reach --json` prints. */
export type ReachOutput = Frozen<v.InferOutput<typeof reachSchema>>;
