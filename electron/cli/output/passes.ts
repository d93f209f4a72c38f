import * as v from 'valibot';
import { EXCLUSION_KINDS, type Frozen } from '../../../core/book/index.ts';
import { figure, format, issueSchema, text } from './parts.ts';

const position = v.tuple([figure, figure]);

/** Passes of one head over one zone. Lengths and areas are on the map; shares are of the zone's treatable area. */
const answerSchema = v.strictObject({
  /** Null where the head was given on the command line. */
  machineId: v.nullable(text),
  headId: v.nullable(text),
  name: text,
  swathFt: figure,
  overlapFt: figure,
  trimPasses: figure,
  trimSwathFt: figure,
  turnSec: figure,
  speedMph: figure,
  transitMph: figure,
  /** Boom sections, left to right; null where the swath is shut as a whole. */
  sectionsFt: v.nullable(v.array(figure)),
  shieldedSide: v.nullable(v.picklist(['left', 'right'])),
  /** Whether corners of trim passes are driven out. */
  squareCorners: v.boolean(),
  areaSqFt: figure,
  swathCount: figure,
  trimCount: figure,
  /** Straight runs into corners of trim passes. */
  cornerCount: figure,
  turnCount: figure,
  sprayedM: figure,
  /** Of it the straight swaths. */
  swathM: figure,
  /** What shows where the last swath was: the way that is marked, and what that takes; null where nothing does. */
  mark: v.nullable(
    v.strictObject({ what: v.picklist(['foam', 'dye']), flOzPer1000Ft: figure, markedM: figure, flOz: figure }),
  ),
  unsprayedM: figure,
  minutes: figure,
  /** What comes out over the treated ground, as a multiple of one pass; and most passes over one place. */
  averagePasses: figure,
  worstPasses: figure,
  /** Ground that the material goes over, overlap included. */
  appliedSqFt: figure,
  overlapShare: figure,
  missedShare: figure,
  offTargetShare: figure,
  handTrimSqFt: figure,
  /** Direction of the swaths, degrees anticlockwise from east; null without swaths. */
  angleDeg: v.nullable(figure),
  /** GeoJSON; left out with --figures. */
  handTrim: v.optional(
    v.variant('type', [
      v.strictObject({ type: v.literal('Polygon'), coordinates: v.array(v.array(position)) }),
      v.strictObject({ type: v.literal('MultiPolygon'), coordinates: v.array(v.array(v.array(position))) }),
    ]),
  ),
  /** Longitudes and latitudes of the machine's middle, leg by leg; left out with --figures. */
  path: v.optional(
    v.array(
      v.strictObject({
        kind: v.picklist(['trim', 'corner', 'swath', 'transit']),
        widthM: figure,
        /** Of a trim pass: it is taken up again where it was broken off for a run into a corner. */
        goesOn: v.optional(v.literal(true)),
        /** Of a swath with sections: where each is open, metres from its beginning, sections from the left. */
        open: v.optional(v.array(v.strictObject({ section: figure, fromM: figure, toM: figure }))),
        coordinates: v.array(position),
      }),
    ),
  ),
  notes: v.array(v.strictObject({ code: text, message: text })),
});

/** Answer of `passes`. */
export const passesSchema = v.strictObject({
  ...format('swardway-passes'),
  zones: v.array(
    v.strictObject({
      propertyId: text,
      propertyName: text,
      zoneId: text,
      zoneName: text,
      /** What lies beyond the edge of what is treated, on the map, longest first; 'zone' another zone, 'open' nothing that is drawn. */
      edges: v.array(v.strictObject({ kind: v.picklist([...EXCLUSION_KINDS, 'zone', 'open']), lengthFt: figure })),
      heads: v.array(answerSchema),
    }),
  ),
  issues: v.array(issueSchema),
});

/** What `passes --json` prints. */
export type PassesOutput = Frozen<v.InferOutput<typeof passesSchema>>;
