import * as v from 'valibot';
import {
  areaGeometrySchema,
  EXCLUSION_KINDS,
  idSchema,
  nameSchema,
  positionSchema,
  textSchema,
} from '../book/index.ts';

const positive = v.pipe(v.number(), v.finite(), v.gtValue(0));
const index = v.pipe(v.number(), v.integer(), v.minValue(0));
const cornersSchema = v.array(positionSchema);
const propertyId = idSchema;
const zoneId = idSchema;
const name = v.optional(nameSchema, '');

const DRAFT_TOOLS = ['polygon', 'rectangle', 'circle', 'walk'] as const;

const purposeSchema = v.variant('kind', [
  v.object({ kind: v.literal('zone'), propertyId, zoneId, name }),
  v.object({
    kind: v.literal('exclusion'),
    propertyId,
    exclusionId: idSchema,
    name,
    what: v.picklist(EXCLUSION_KINDS),
  }),
  v.object({ kind: v.literal('gate'), propertyId, gateId: idSchema, name, clearWidthIn: positive }),
  v.object({ kind: v.literal('parking'), propertyId }),
  v.object({ kind: v.literal('hose-stand'), propertyId, zoneId }),
  /** Ground wholly inside a zone that is taken out of it. */
  v.object({ kind: v.literal('hole'), propertyId, zoneId }),
  /** Ground that is taken off a zone and may reach over its edge. */
  v.object({ kind: v.literal('cut'), propertyId, zoneId }),
  /** A line across a zone that makes several of it. */
  v.object({ kind: v.literal('split-line'), propertyId, zoneId }),
  /** Ground of no lawn, which trucks drive round. */
  v.object({ kind: v.literal('avoid'), areaId: idSchema, name }),
]);

/** Steps with the same key that follow each other are taken back as one: a drag. */
const mergeKey = v.optional(v.string());

const stepSchema = v.variant('kind', [
  /** A new corner before the one at `index`; at the end where it is absent. */
  v.object({ kind: v.literal('add'), at: positionSchema, index: v.optional(index), mergeKey }),
  v.object({ kind: v.literal('move'), index, to: positionSchema, mergeKey }),
  v.object({ kind: v.literal('remove'), index, mergeKey }),
  /** Other corners for all of them: squared up, nudged, typed. */
  v.object({ kind: v.literal('replace'), corners: cornersSchema, mergeKey }),
]);

/** A draft as it is stored. */
export const draftSchema = v.object({
  purpose: purposeSchema,
  tool: v.picklist(DRAFT_TOOLS),
  corners: cornersSchema,
  /** The outline that is edited, and the ring of it whose corners these are; absent for something new. */
  base: v.optional(v.object({ geometry: areaGeometrySchema, place: v.object({ polygon: index, ring: index }) })),
  /** Set where the property is new as well: what to call it. */
  newPropertyName: v.optional(nameSchema),
  /** What it is drawn over, and how far its outline may be out, ft; both go into the zone. */
  drawnOver: v.optional(textSchema),
  outlineErrorFt: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0))),
  /** Steps that take the draft back, newest last, and those that were taken back. */
  undo: v.array(stepSchema),
  redo: v.array(stepSchema),
});
