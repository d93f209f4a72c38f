import path from 'node:path';
import { type AppError, err, ok, type Result } from '../../../core/base/index.ts';
import { type Book, writeBook } from '../../../core/book/index.ts';
import { looksLikeTimes } from '../../../core/formats/index.ts';
import { withPastMeasure } from '../../../core/measure/index.ts';
import { describePlace, readText, writeWhole } from '../../services/files/index.ts';
import { createStoreFile } from '../../services/store/index.ts';
import { type Answer, type Command, fileOf, type Typed, type World } from '../command.ts';
import {
  type BookInput,
  MAPPING_OPTIONS,
  mappingOf,
  mayWrite,
  readBookFile,
  readGround,
  readStreetFile,
} from '../input/index.ts';
import type { ImportOutput } from '../output/index.ts';
import { counted, issueLines } from '../text/index.ts';
import { importGround } from './import-ground.ts';
import { type Imported, importTimes } from './import-times.ts';

const BOOK_ENDING = '.swardway';

export const importCommand: Command = {
  name: 'import',
  summary: 'Adds the lawns of a file, or a table of travel times, to a book and writes it into a file.',
  details: [
    'Reads GeoJSON, KML, KMZ, GPX, shapefiles in a zip, GeoPackage, DXF, and CSV with well-known text, latitude and longitude, stated areas or addresses. What the layers are and what their fields mean is guessed from their names and content, and can be said with --layer and --map. Fields that look like names of people are left out unless --map names them.',
    'Nothing is dropped in silence: every record is new, changed, the same, part of the property of another record, or rejected with an error that names its place; the counts add up to what was found. A property that the book has already keeps what the file does not speak of; its earlier total is kept when its area changes.',
    'A drawing (DXF) has no place on earth: give two --point, or one with --unit-m and --bearing. Rows with an address alone are placed by the address ranges of a street file, --streets (GeoJSON), and marked so.',
    'The book is written to --out only; --into is read and stays as it is unless --out names the same file. With the ending .swardway a new book file is made, otherwise the JSON form. An existing file is overwritten only where it holds a book in its JSON form.',
  ],
  operands: [
    {
      name: 'FILE',
      words:
        'a file of ground (GeoJSON, KML, GPX, zip, GeoPackage, DXF, CSV), or travel times (CSV: from, to, seconds, metres)',
    },
  ],
  options: [
    { name: 'into', value: 'BOOK', words: 'book file or its JSON form to start from' },
    { name: 'out', value: 'FILE', words: 'where the new book goes' },
    ...MAPPING_OPTIONS,
    { name: 'streets', value: 'FILE', words: 'street lines with address ranges, to place addresses by' },
  ],
  required: ['into', 'out'],
  schema: 'import',
  example: 'npx swardway import parcels.zip --into book.json --out more.json --map id=PARCEL --merge place',
  run: async (typed, world) => {
    const file = fileOf(typed, 'FILE');
    const out = fileOf(typed, 'out');
    const free = await mayWrite(out, /^\uFEFF?\s*\{\s*"format"\s*:\s*"swardway-book"/, 'book in its JSON form');
    if (!free.ok) return free;
    const read = await readBookFile(fileOf(typed, 'into'));
    if (!read.ok) return read;
    const imported = await importFile(read.value.book, file, typed, world);
    return imported.ok ? finish(read.value, imported.value, file, out) : imported;
  },
};

async function importFile(book: Book, file: string, typed: Typed, world: World): Promise<Result<Imported>> {
  if (/\.(?:csv|txt)$/i.test(file)) {
    const text = await readText(file);
    if (text.ok && looksLikeTimes(text.value)) return importTimes(book, text.value, describePlace(file));
  }
  const streets = typed.options.streets === undefined ? null : await readStreetFile(fileOf(typed, 'streets'));
  if (streets !== null && !streets.ok) return streets;
  const source = await readGround(file, world);
  if (!source.ok) return source;
  const fileName = path.basename(file);
  const mapped = mappingOf(source.value, typed, fileName);
  if (!mapped.ok) return mapped;
  const today = localDate(new Date());
  return importGround(book, source.value, mapped.value, fileName, {
    keepPast: (before, after) => withPastMeasure(before, after, today),
    ...(streets === null ? {} : { findPlace: streets.value }),
  });
}

function localDate(now: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

async function finish(read: BookInput, { book, output }: Imported, file: string, out: string): Promise<Result<Answer>> {
  if (output.accepted === 0) return { ok: false, error: nothingUsable(output, file) };
  const written = out.endsWith(BOOK_ENDING) ? await createStoreFile(out, book) : await writeWhole(out, writeBook(book));
  if (!written.ok) return written;
  const people = output.leftOut.length === 0 ? [] : [`left out, names of people: ${output.leftOut.join(', ')}`];
  const remarks = [...issueLines([...read.issues, ...output.issues]), ...people, `book written: ${describePlace(out)}`];
  return ok({ json: output, text: () => textOf(output), remarks });
}

function nothingUsable({ issues, found, rejected }: ImportOutput, file: string): AppError {
  const first = issues.find((each) => each.severity === 'error') ?? issues[0];
  const name = path.basename(file);
  const inside = first?.where.startsWith(name) ? first.where.slice(name.length) : '';
  const detail =
    found === 0
      ? 'The file holds nothing that could be a lawn'
      : `Nothing in the file could be used (${rejected} of ${found} rejected)`;
  return err(
    'format-invalid',
    `${describePlace(file)}${inside}`,
    first === undefined ? `${detail}.` : `${detail}: ${first.message}`,
    'Correct the file and import it again; no book was written.',
  ).error;
}

function textOf(output: ImportOutput): string {
  const { counts } = output;
  const lines = [`${output.found} found, ${output.accepted} accepted, ${output.rejected} rejected`];
  if (output.matrixPlaces > 0) lines.push(`Travel times between ${output.matrixPlaces} places`);
  else {
    lines.push(
      `Records: ${counts.new} new, ${counts.changed} changed, ${counts.same} the same, ${counts.part} part of another one's property, ${counts.rejected} rejected`,
      `Properties: ${output.added.length} new, ${output.changed.length} changed, ${output.same.length} the same as before`,
    );
  }
  lines.push(`The book now has ${counted(output.properties, 'property', 'properties')}.`);
  return lines.join('\n');
}
