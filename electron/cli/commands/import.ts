import { type AppError, canonicalJson, err, type Issue, issue, ok, type Result } from '../../../core/base/index.ts';
import { type Book, type Property, writeBook } from '../../../core/book/index.ts';
import { findFormat, type GroundPreview, type MatrixPreview } from '../../../core/formats/index.ts';
import { describePlace, readText, writeWhole } from '../../services/files/index.ts';
import { createStoreFile } from '../../services/store/index.ts';
import { type Answer, type Command, fileOf } from '../command.ts';
import { type BookInput, mayWrite, readBookFile } from '../input/index.ts';
import type { ImportOutput } from '../output/index.ts';
import { counted, issueLines } from '../text/index.ts';

const BOOK_ENDING = '.swardway';

export const importCommand: Command = {
  name: 'import',
  summary: 'Adds the lawns of a file, or a table of travel times, to a book and writes it into a file.',
  details: [
    'Nothing is dropped in silence: accepted and rejected add up to what was found, and every rejected row or feature has an error with its place. A property whose id the book has already keeps what the book says.',
    'The book is written to --out only; --into is read and stays as it is unless --out names the same file. With the ending .swardway a new book file is made, otherwise the JSON form. An existing file is overwritten only where it holds a book in its JSON form.',
  ],
  operands: [
    { name: 'FILE', words: 'outlines (GeoJSON), lawns (CSV), or travel times (CSV: from, to, seconds, metres)' },
  ],
  options: [
    { name: 'into', value: 'BOOK', words: 'book file or its JSON form to start from' },
    { name: 'out', value: 'FILE', words: 'where the new book goes' },
  ],
  required: ['into', 'out'],
  schema: 'import',
  example: 'npx swardway import lawns.csv --into book.json --out book-with-lawns.json',
  run: async (typed) => {
    const file = fileOf(typed, 'FILE');
    const out = fileOf(typed, 'out');
    const free = await mayWrite(out, /^\uFEFF?\s*\{\s*"format"\s*:\s*"swardway-book"/, 'book in its JSON form');
    if (!free.ok) return free;
    const read = await readBookFile(fileOf(typed, 'into'));
    if (!read.ok) return read;
    const text = await readText(file);
    if (!text.ok) return text;
    const imported = importText(read.value.book, file, text.value);
    return imported.ok ? finish(read.value, imported.value, file, out) : imported;
  },
};

type Imported = { readonly book: Book; readonly output: ImportOutput };

function importText(book: Book, file: string, text: string): Result<Imported> {
  const format = findFormat(file, text);
  if (!format.ok) return format;
  const where = describePlace(file);
  if (format.value.kind === 'matrix') {
    const matrix = format.value.read(text, where);
    return matrix.ok ? ok(withMatrix(book, matrix.value, format.value.id)) : matrix;
  }
  const ground = format.value.read(text, where);
  return ground.ok ? ok(withGround(book, ground.value, format.value.id, where)) : ground;
}

function withMatrix(book: Book, preview: MatrixPreview, from: string): Imported {
  const { matrix, found, accepted, rejected, issues } = preview;
  const known = new Set([...book.fillPoints, ...book.properties].map((each) => each.id));
  const strange = matrix.placeIds.filter((id) => !known.has(id));
  const all = [...issues, ...strange.map((id) => unknownPlace(matrix.source, id))];
  const after = accepted > 0 ? { ...book, matrix } : book;
  const output = outputOf(book, { from, found, accepted, rejected, issues: all });
  return { book: after, output: { ...output, matrixPlaces: matrix.placeIds.length } };
}

function unknownPlace(where: string, id: string): Issue {
  const message = `The book has no property or fill point ${id}; its times are kept and not used.`;
  return issue('warning', 'place-unknown', where, message);
}

function withGround(book: Book, preview: GroundPreview, from: string, where: string): Imported {
  const own = new Map(book.properties.map((each) => [each.id, each]));
  const fillPoints = new Set(book.fillPoints.map((each) => each.id));
  const added: Property[] = [];
  const same: string[] = [];
  const kept: string[] = [];
  const issues: Issue[] = [...preview.issues];
  for (const property of preview.properties) {
    const before = own.get(property.id);
    if (before !== undefined && canonicalJson(before) === canonicalJson(property)) same.push(property.id);
    else if (before !== undefined || fillPoints.has(property.id)) {
      kept.push(property.id);
      issues.push(alreadyThere(where, property.id));
    } else added.push(property);
  }
  const { found, accepted, rejected } = preview;
  const after = { ...book, properties: [...book.properties, ...added] };
  const output = outputOf(after, { from, found, accepted, rejected, issues });
  return { book: after, output: { ...output, added: added.map((each) => each.id), same, kept } };
}

function alreadyThere(where: string, id: string): Issue {
  const message = `The book has the id ${id} already, with other content, which was kept. Give the new one another id.`;
  return issue('warning', 'id-already-in-book', `${where}, ${id}`, message);
}

function outputOf(
  book: Book,
  counts: Pick<ImportOutput, 'from' | 'found' | 'accepted' | 'rejected' | 'issues'>,
): ImportOutput {
  const { from, found, accepted, rejected, issues } = counts;
  return {
    format: 'swardway-import',
    version: 1,
    from,
    bookId: book.id,
    found,
    accepted,
    rejected,
    added: [],
    same: [],
    kept: [],
    properties: book.properties.length,
    matrixPlaces: 0,
    issues,
  };
}

async function finish(read: BookInput, { book, output }: Imported, file: string, out: string): Promise<Result<Answer>> {
  if (output.accepted === 0) return { ok: false, error: nothingUsable(output, file) };
  const written = out.endsWith(BOOK_ENDING) ? await createStoreFile(out, book) : await writeWhole(out, writeBook(book));
  if (!written.ok) return written;
  const remarks = [...issueLines([...read.issues, ...output.issues]), `book written: ${describePlace(out)}`];
  return ok({ json: output, text: () => textOf(output), remarks });
}

function nothingUsable(output: ImportOutput, file: string): AppError {
  const first = output.issues.find((each) => each.severity === 'error');
  const detail = `Nothing in the file could be used (${output.rejected} of ${output.found} rejected)`;
  return err(
    'format-invalid',
    first?.where ?? describePlace(file),
    first === undefined ? `${detail}.` : `${detail}: ${first.message}`,
    'Correct the file and import it again; no book was written.',
  ).error;
}

function textOf(output: ImportOutput): string {
  const lines = [`${output.found} found, ${output.accepted} accepted, ${output.rejected} rejected`];
  if (output.matrixPlaces > 0) lines.push(`Travel times between ${output.matrixPlaces} places`);
  else {
    lines.push(
      `${counted(output.added.length, 'property', 'properties')} new, ${output.same.length} the same as before, ${output.kept.length} kept as the book has them`,
    );
  }
  lines.push(`The book now has ${counted(output.properties, 'property', 'properties')}.`);
  return lines.join('\n');
}
