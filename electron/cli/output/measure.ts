import * as v from 'valibot';
import { errorSchema, figure, format, issueSchema, text } from './parts.ts';

/** Answer of `measure`. Areas are null where an outline cannot be measured; `issues` then says why. */
export const measureSchema = v.strictObject({
  ...format('swardway-measure'),
  properties: v.array(
    v.strictObject({
      id: text,
      name: text,
      zones: v.array(
        v.strictObject({
          id: text,
          name: text,
          planAreaSqFt: v.nullable(figure),
          areaSqFt: v.nullable(figure),
          /** Likely error of the area from its drawing; null where not known. */
          errorSqFt: v.nullable(figure),
          source: v.picklist(['drawn', 'stated']),
          slopeDeg: figure,
          plannable: v.boolean(),
        }),
      ),
      exclusionsSqFt: v.nullable(figure),
      treatableSqFt: v.nullable(figure),
      /** Sum of the zones' errors; null where one of them is not known. */
      errorSqFt: v.nullable(figure),
    }),
  ),
  totalSqFt: figure,
  issues: v.array(issueSchema),
  /** Only where nothing at all could be measured (exit code 1). */
  error: v.optional(errorSchema),
});
