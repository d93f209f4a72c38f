import * as v from 'valibot';
import {
  areaGeometrySchema,
  dateSchema,
  hoursSchema,
  idSchema,
  nameSchema,
  notNegative,
  positionSchema,
  positive,
  textSchema,
} from './schema-parts.ts';

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
  v.object({ kind: v.literal('drawn'), geometry: areaGeometrySchema }),
  v.object({
    kind: v.literal('stated'),
    /** Ground area, ft2, as somebody wrote it down; slope is not applied to it again. */
    areaSqFt: notNegative,
    /** How it was found, for instance "old card". */
    method: v.optional(textSchema, ''),
  }),
]);

/** An area of turf treated in one way. */
export const zoneSchema = v.object({
  id: idSchema,
  name: nameSchema,
  shape: zoneShapeSchema,
  /** Slope of the ground, degrees from level. */
  slopeDeg: v.optional(v.pipe(notNegative, v.maxValue(60)), 0),
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

/** One address with its lawn. */
export const propertySchema = v.object({
  id: idSchema,
  name: nameSchema,
  address: v.optional(textSchema, ''),
  /** Where the rig parks. */
  parking: positionSchema,
  /** True where neither street nor lot takes a trailer. */
  noTrailer: v.optional(v.boolean(), false),
  gates: v.optional(v.array(gateSchema), []),
  zones: v.array(zoneSchema),
  exclusions: v.optional(v.array(exclusionSchema), []),
  /** When work may start on the property; absent: any time of the shift. */
  hours: v.optional(hoursSchema),
  cautions: v.optional(v.array(v.picklist(CAUTIONS)), []),
  note: v.optional(textSchema, ''),
  /** When and how the lawn was measured. */
  measuredOn: v.optional(dateSchema),
});
