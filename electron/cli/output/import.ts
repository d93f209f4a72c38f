import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { figure, format, issueSchema, text } from './parts.ts';

/** Answer of `import`. `accepted + rejected = found`; every rejected one has an error in `issues`. */
export const importSchema = v.strictObject({
  ...format('swardway-import'),
  /** What was read: the id of a file format. */
  from: text,
  bookId: text,
  /** Rows of a table or features of a file of outlines. */
  found: figure,
  accepted: figure,
  rejected: figure,
  /** Ids of properties that are new in the book. */
  added: v.array(text),
  /** Ids that the book has already, with the same content. */
  same: v.array(text),
  /** Ids that the book has already, with other content: the book's own was kept. */
  kept: v.array(text),
  /** Properties in the written book. */
  properties: figure,
  /** Places of an imported travel matrix; 0 where lawns were imported. */
  matrixPlaces: figure,
  issues: v.array(issueSchema),
});

export type ImportOutput = Frozen<v.InferOutput<typeof importSchema>>;
