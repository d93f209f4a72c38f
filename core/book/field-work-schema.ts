import * as v from 'valibot';
import { finite, notNegative, positive, textSchema } from './schema-parts.ts';

const shapePart = { take: v.optional(v.picklist(['add', 'subtract']), 'add'), note: v.optional(textSchema, '') };

/** A plain shape measured by tape or wheel, ft. */
export const plainShapeSchema = v.variant('kind', [
  v.object({ ...shapePart, kind: v.literal('rectangle'), lengthFt: positive, widthFt: positive }),
  v.object({ ...shapePart, kind: v.literal('triangle'), baseFt: positive, heightFt: positive }),
  v.object({ ...shapePart, kind: v.literal('circle'), diameterFt: positive }),
  v.object({ ...shapePart, kind: v.literal('trapezoid'), sideFt: positive, otherSideFt: positive, apartFt: positive }),
  v.object({ ...shapePart, kind: v.literal('ellipse'), lengthFt: positive, widthFt: positive }),
]);

/** What was measured on site where there is no outline, kept with the area that was worked out from it. */
export const areaWorkingSchema = v.variant('kind', [
  v.object({ kind: v.literal('shapes'), shapes: v.pipe(v.array(plainShapeSchema), v.minLength(1)) }),
  v.object({
    kind: v.literal('offsets'),
    rule: v.picklist(['trapezoid', 'simpson']),
    /** Distance between two offsets, ft. */
    intervalFt: positive,
    /** Widths across, from one end of the base line to the other, ft. */
    offsetsFt: v.pipe(v.array(notNegative), v.minLength(2)),
  }),
  v.object({ kind: v.literal('mean-radius'), radiiFt: v.pipe(v.array(positive), v.minLength(3)) }),
]);

/** How a slope was found. */
export const slopeWorkingSchema = v.variant('kind', [
  v.object({ kind: v.literal('rise-run'), riseFt: notNegative, runFt: positive }),
  v.object({ kind: v.literal('level'), degrees: finite }),
  v.object({ kind: v.literal('elevation'), source: textSchema }),
]);
