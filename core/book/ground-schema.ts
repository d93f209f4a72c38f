import * as v from 'valibot';
import { areaWorkingSchema, slopeWorkingSchema } from './field-work-schema.ts';
import {
  areaGeometrySchema,
  bearingSchema,
  dateSchema,
  hoursSchema,
  idSchema,
  nameSchema,
  notNegative,
  positionSchema,
  positive,
  textSchema,
  WEEKDAYS,
  wholeNumber,
} from './schema-parts.ts';
import { SITES } from './season-schema.ts';

/** An opening on the way to turf. */
export const gateSchema = v.object({
  id: idSchema,
  name: nameSchema,
  /** Clear width between the posts, inches. */
  clearWidthIn: positive,
  at: v.optional(positionSchema),
  locked: v.optional(v.boolean(), false),
});

/** Where the area of a zone comes from: an outline, or a figure from a card. */
export const zoneShapeSchema = v.variant('kind', [
  v.object({
    kind: v.literal('drawn'),
    geometry: areaGeometrySchema,
    /** How far the outline may lie too far out or in, ft; absent: not known. */
    outlineErrorFt: v.optional(notNegative),
    /** What it was drawn over or read from, for instance "aerial picture" or "parcels.zip". */
    drawnOver: v.optional(textSchema),
  }),
  v.object({
    kind: v.literal('stated'),
    /** Ground area, ft2, as somebody wrote it down; slope is not applied to it again. */
    areaSqFt: notNegative,
    /** How it was found, for instance "old card". */
    method: v.optional(textSchema, ''),
    /** The field work behind the figure, where there is any. */
    working: v.optional(areaWorkingSchema),
  }),
]);

/** An area of turf treated in one way. */
export const zoneSchema = v.object({
  id: idSchema,
  name: nameSchema,
  /** Words by which zones are chosen for a treatment. */
  tags: v.optional(v.array(nameSchema)),
  shape: zoneShapeSchema,
  /** Slope of the ground, degrees from level. */
  slopeDeg: v.optional(v.pipe(notNegative, v.maxValue(60)), 0),
  /** How the slope was found; absent: somebody's word. */
  slopeWorking: v.optional(slopeWorkingSchema),
  /** Which way the ground falls, degrees clockwise from north; absent: not known. */
  downhillDeg: v.optional(bearingSchema),
  /** Direction in which swaths are to run, degrees clockwise from north; absent: the quickest, or up and down the slope. */
  swathDeg: v.optional(bearingSchema),
  /** An area from a card or a customer to hold a drawn zone against, ft2. */
  statedAreaSqFt: v.optional(positive),
  /** The gates that have to be passed to reach the zone from the parking point, in any order. */
  gateIds: v.optional(v.array(idSchema), []),
  /** Heaviest machine that the ground carries when wet, lb; absent where the ground is firm. */
  wetLimitLb: v.optional(positive),
  /** Where the machine or the hose reel can stand to serve the zone; absent: the property's parking point. */
  hoseStand: v.optional(positionSchema),
  /** Hose needed to the farthest corner as paced on site, ft; absent: measured from the outline. */
  hosePathFt: v.optional(notNegative),
  /** Length of turf along pavement, ft, for band treatments of a stated area. */
  pavementEdgeFt: v.optional(notNegative),
  /** Length of turf along beds, ft, for band treatments of a stated area. */
  bedEdgeFt: v.optional(notNegative),
});

/** What an exclusion is. */
export const EXCLUSION_KINDS = ['building', 'paving', 'bed', 'water', 'play', 'garden', 'other'] as const;

/** Ground inside or beside turf that is not treated. */
export const exclusionSchema = v.object({
  id: idSchema,
  name: v.optional(nameSchema, ''),
  what: v.picklist(EXCLUSION_KINDS),
  geometry: areaGeometrySchema,
  /** Turf within this distance is left untreated as well, ft. */
  keepAwayFt: v.optional(notNegative, 0),
});

/** What a crew has to mind on a property. */
export const CAUTIONS = [
  'pets',
  'children',
  'water',
  'steep',
  'locked',
  'traffic',
  'neighbour-garden',
  'beehives',
] as const;

/** A total that was found for the whole property once, so that a new one can be held against it. */
export const pastMeasureSchema = v.object({
  /** When it was found; absent: not written down. */
  on: v.optional(dateSchema),
  treatableSqFt: notNegative,
  errorSqFt: v.optional(notNegative),
  how: v.optional(textSchema, ''),
});

/** Why a lawn is left out of rounds for a time. */
export const HOLDS = ['seeding', 'new', 'on-hold'] as const;

/** Days on which a lawn cannot be worked on, for a reason of the customer's. */
const closedSchema = v.variant('kind', [
  v.object({ kind: v.literal('weekday'), weekday: v.picklist(WEEKDAYS), why: nameSchema }),
  v.object({ kind: v.literal('date'), on: dateSchema, why: nameSchema }),
]);

export const PLACED_BY = ['hand', 'file', 'address-range'] as const;

/** One address with its lawn. */
export const propertySchema = v.object({
  id: idSchema,
  name: nameSchema,
  address: v.optional(textSchema, ''),
  /** Where the rig parks. */
  parking: positionSchema,
  /** How the parking point came to be there; absent: not known. */
  placedBy: v.optional(v.picklist(PLACED_BY)),
  /** The whole lot, to hold zones against. */
  parcel: v.optional(areaGeometrySchema),
  /** True where neither street nor lot takes a trailer. */
  noTrailer: v.optional(v.boolean(), false),
  gates: v.optional(v.array(gateSchema), []),
  zones: v.array(zoneSchema),
  exclusions: v.optional(v.array(exclusionSchema), []),
  /** When work may start on the property; absent: any time of the shift. */
  hours: v.optional(hoursSchema),
  /** Days of the week on which work may be done; absent: any. */
  weekdays: v.optional(v.pipe(v.array(v.picklist(WEEKDAYS)), v.minLength(1))),
  /** Days on which no work may be done: mowing, watering. */
  closed: v.optional(v.array(closedSchema)),
  /** Words by which lawns are chosen for a round. */
  tags: v.optional(v.array(nameSchema)),
  /** What makes its soil warmer or cooler than that of the station. */
  sites: v.optional(v.array(v.picklist(SITES))),
  /** Why it is left out of rounds, and to which day; without a day, until it is taken away. */
  hold: v.optional(v.object({ why: v.picklist(HOLDS), until: v.optional(dateSchema) })),
  /** Day on which ground of it was seeded, or is to be. */
  seededOn: v.optional(dateSchema),
  /** Days before the work on which people have to be told; absent: as the calendar says. */
  noticeDays: v.optional(wholeNumber),
  cautions: v.optional(v.array(v.picklist(CAUTIONS)), []),
  note: v.optional(textSchema, ''),
  /** For whom the lawn is treated. */
  customer: v.optional(
    v.object({
      name: nameSchema,
      /** Absent: that of the property. */
      address: v.optional(textSchema),
      phone: v.optional(nameSchema),
    }),
  ),
  /** What is treated, as records name it: "residential lawn"; absent: as the firm says. */
  siteUse: v.optional(nameSchema),
  /** When and how the lawn was measured. */
  measuredOn: v.optional(dateSchema),
  /** Earlier totals, oldest first. */
  pastMeasures: v.optional(v.array(pastMeasureSchema)),
});
