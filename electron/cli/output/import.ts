import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { figure, issueSchema, text } from './parts.ts';

const kind = v.picklist(['new', 'changed', 'same', 'part', 'rejected']);

/**
 * Answer of `import`. `accepted + rejected = found`, and the counts of the kinds add up to `found`; every rejected record has its
 * reason in `issues`, an error unless its layer was left out.
 */
export const importSchema = v.strictObject({
  format: v.literal('swardway-import'),
  version: v.literal(2),
  /** What was read: the id of a file format. */
  from: text,
  bookId: text,
  /** Rows of a table or records of a file of ground. */
  found: figure,
  accepted: figure,
  rejected: figure,
  /** Records by what becomes of them; a part is joined into the property of another record. Zero for travel times. */
  counts: v.strictObject({ new: figure, changed: figure, same: figure, part: figure, rejected: figure }),
  /** One for each record of a file of ground, in its order. */
  records: v.array(v.strictObject({ where: text, kind, words: text, propertyIds: v.array(text) })),
  /** Ids of properties that are new in the book. */
  added: v.array(text),
  /** Ids of properties of the book that the file changes; what it does not speak of stays. */
  changed: v.array(text),
  /** Ids of properties that the book has already, with the same content. */
  same: v.array(text),
  /** Fields that look like names of people, which were not taken. */
  leftOut: v.array(text),
  /** Properties in the written book. */
  properties: figure,
  /** Places of an imported travel matrix; 0 where lawns were imported. */
  matrixPlaces: figure,
  issues: v.array(issueSchema),
});

/** What `import --json` prints. */
export type ImportOutput = Frozen<v.InferOutput<typeof importSchema>>;
