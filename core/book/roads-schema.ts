import * as v from 'valibot';
import {
  areaGeometrySchema,
  dateSchema,
  finite,
  idSchema,
  minuteOfDay,
  nameSchema,
  notNegative,
  positive,
  share,
  textSchema,
  wholeNumber,
} from './schema-parts.ts';

/** A factor on driving times: from a tenth to ten times. */
const timeFactor = v.pipe(finite, v.minValue(0.1), v.maxValue(10));
const speedMph = v.pipe(positive, v.maxValue(130));

/** An extract of a road map that was imported. The road file beside the book can be made again from it. */
export const roadExtractSchema = v.object({
  /** Name of the file. */
  name: nameSchema,
  attribution: textSchema,
  licence: textSchema,
  /** Fingerprint of the roads that were read from it. */
  hash: nameSchema,
  importedOn: dateSchema,
  /** Moment of the data as the file tells it; absent where it does not. */
  dataOf: v.optional(nameSchema),
  /** Ways that a truck might drive on. */
  roads: wholeNumber,
  /** West, south, east, north, degrees. */
  bounds: v.tuple([finite, finite, finite, finite]),
});

/** Classes of road are named as in the table of docs/methods/roads.md. Everything that is absent is as the program has it there. */
export const roadSettingsSchema = v.object({
  /** Off: travel is the estimate, though roads are at hand. */
  use: v.optional(v.boolean(), true),
  extract: v.optional(roadExtractSchema),
  /** Speeds that differ from the program's own table. */
  speeds: v.optional(v.array(v.object({ roadClass: nameSchema, mph: speedMph })), []),
  /** Share of a posted limit that is driven in the mean. */
  shareOfLimit: v.optional(v.pipe(share, v.gtValue(0))),
  /** A place farther than this from any road is listed, and its ways are an estimate. */
  mostFt: v.optional(v.pipe(positive, v.maxValue(10_000)), 1000),
  /** Arrive so that the kerb of the lawn is on the truck's own side. */
  kerbSide: v.optional(v.boolean(), false),
  drivesOn: v.optional(v.picklist(['right', 'left']), 'right'),
  /** Whether private roads may be used where a place lies on them. */
  privateRoads: v.optional(v.boolean(), true),
  /** Limits of the truck; absent: no limit matters. */
  truck: v.optional(
    v.object({
      heightFt: v.optional(positive),
      widthFt: v.optional(positive),
      /** With everything aboard, lb. */
      weightLb: v.optional(positive),
      trailer: v.optional(v.boolean(), false),
      /** Rules for heavy goods vehicles hold for it. */
      heavy: v.optional(v.boolean(), false),
    }),
  ),
  /** Areas that are not driven through, but for places inside. */
  avoid: v.optional(v.array(v.object({ id: idSchema, name: nameSchema, area: areaGeometrySchema })), []),
  /** Hours in which driving takes longer, such as school and rush. */
  times: v.optional(
    v.array(
      v.object({
        name: nameSchema,
        fromMin: minuteOfDay,
        toMin: minuteOfDay,
        factor: timeFactor,
        /** Only on these classes; absent: on all. */
        roadClasses: v.optional(v.array(nameSchema)),
      }),
    ),
    [],
  ),
  /** Corrections of driving times by class of road, taken over from drives that were written down. */
  learned: v.optional(
    v.object({
      use: v.optional(v.boolean(), true),
      on: dateSchema,
      factors: v.array(v.object({ roadClass: nameSchema, trips: wholeNumber, timeFactor: timeFactor })),
    }),
  ),
  /** Seconds lost at turns towards and across the traffic, at turning round, and at a signal. */
  turns: v.optional(
    v.object({
      nearSec: v.optional(notNegative),
      acrossSec: v.optional(notNegative),
      roundSec: v.optional(notNegative),
      signalSec: v.optional(notNegative),
    }),
  ),
});
