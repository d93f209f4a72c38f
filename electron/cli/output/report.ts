import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { format, issueSchema, text } from './parts.ts';

/** Answer of `report`: the sheets in the order in which they are printed. */
export const reportSchema = v.strictObject({
  ...format('swardway-report'),
  bookId: text,
  /** '' where there is no plan. */
  roundId: text,
  /** False where the book was changed after the plan was made. */
  current: v.boolean(),
  sheets: v.array(
    v.strictObject({
      /** Kind of sheet, as --sheet names it. */
      sheet: text,
      /** Day and rig of the sheet; '' for other sheets. */
      date: text,
      rigId: text,
      /** '' for sheets that are not of one lawn. */
      propertyId: text,
      title: text,
      subtitle: text,
      invented: v.boolean(),
      /** The whole sheet as plain text. */
      text,
    }),
  ),
  issues: v.array(issueSchema),
});

/** What `report --json` prints. */
export type ReportOutput = Frozen<v.InferOutput<typeof reportSchema>>;
