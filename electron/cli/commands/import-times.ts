import { type Issue, issue, ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { previewMatrix } from '../../../core/formats/index.ts';
import type { ImportOutput } from '../output/index.ts';

/** A book after an import, and what is told of it. */
export type Imported = { readonly book: Book; readonly output: ImportOutput };

const NO_COUNTS = { new: 0, changed: 0, same: 0, part: 0, rejected: 0 };

/** Takes a table of travel times into a book. Errors: those of the table. */
export function importTimes(book: Book, text: string, where: string): Result<Imported> {
  const read = previewMatrix(text, where);
  if (!read.ok) return read;
  const { matrix, found, accepted, rejected, issues } = read.value;
  const known = new Set([...book.fillPoints, ...book.properties].map((each) => each.id));
  const strange = matrix.placeIds.filter((id) => !known.has(id));
  const output: ImportOutput = {
    format: 'swardway-import',
    version: 2,
    from: 'csv-matrix',
    bookId: book.id,
    found,
    accepted,
    rejected,
    counts: NO_COUNTS,
    records: [],
    added: [],
    changed: [],
    same: [],
    leftOut: [],
    properties: book.properties.length,
    matrixPlaces: matrix.placeIds.length,
    issues: [...issues, ...strange.map((id) => unknownPlace(where, id))],
  };
  return ok({ book: accepted > 0 ? { ...book, matrix } : book, output });
}

function unknownPlace(where: string, id: string): Issue {
  const message = `The book has no property or fill point ${id}; its times are kept and not used.`;
  return issue('warning', 'place-unknown', where, message);
}
