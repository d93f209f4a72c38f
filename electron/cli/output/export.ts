import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { format, issueSchema, text } from './parts.ts';

/** Answer of `export`: the file that was made, or where it was written. */
export const exportSchema = v.strictObject({
  ...format('swardway-export'),
  bookId: text,
  /** Kind of file, as --as names it. */
  as: text,
  /** How many properties it holds. */
  properties: v.pipe(v.number(), v.integer(), v.minValue(0)),
  /** How many days of a plan it holds, each of one rig; 0 without --plan. */
  days: v.pipe(v.number(), v.integer(), v.minValue(0)),
  /** What stays in the book. */
  leavesOut: text,
  /** The whole file; '' where --out wrote it. */
  text,
  issues: v.array(issueSchema),
});

/** What `export --json` prints. */
export type ExportOutput = Frozen<v.InferOutput<typeof exportSchema>>;
