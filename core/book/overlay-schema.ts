import * as v from 'valibot';
import { finite, idSchema, nameSchema, positionSchema, positive, share } from './schema-parts.ts';

export const OVERLAY_FITS = ['similarity', 'affine', 'projective'] as const;

/** A picture or scanned plan laid over the map by points that are known in both. */
export const overlaySchema = v.object({
  id: idSchema,
  name: nameSchema,
  /** Name under which the book file keeps the picture's bytes. */
  picture: nameSchema,
  widthPx: positive,
  heightPx: positive,
  /** Pixels from the picture's upper left corner, and the place on the ground. */
  points: v.array(v.object({ px: v.tuple([finite, finite]), at: positionSchema })),
  /** How the picture may be bent to fit; absent: by the number of points. */
  fit: v.optional(v.picklist(OVERLAY_FITS)),
  opacity: v.optional(share, 0.7),
});
