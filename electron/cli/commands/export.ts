import { ok, type Result } from '../../../core/base/index.ts';
import { type GroundWriter, WRITERS } from '../../../core/formats/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { describePlace, writeWhole } from '../../services/files/index.ts';
import { type Answer, type Command, fileOf, type Typed, UsageFault } from '../command.ts';
import { type BookInput, mayWrite, readBookFile } from '../input/index.ts';
import type { ExportOutput } from '../output/index.ts';
import { counted, issueLines } from '../text/index.ts';

const IDS = WRITERS.map((each) => each.id).join(', ');

/** How an earlier output of each kind begins, so that it may be written over. */
const EARLIER: Readonly<Record<string, RegExp>> = {
  geojson: /^\s*\{\s*"type"\s*:\s*"FeatureCollection"/,
  kml: /<kml[\s>]/,
  gpx: /<gpx[\s>]/,
  csv: /^property,property name,/,
};

export const exportCommand: Command = {
  name: 'export',
  summary: 'Writes the lawns of a book as a file for other programs: GeoJSON, KML, GPX or CSV.',
  details: [
    `Kinds: ${WRITERS.map((each) => `${each.id} (${each.title}. ${each.leavesOut})`).join('; ')}`,
    'Outlines have nine decimals. GeoJSON, KML and CSV are read back by import without a change. Without --out the file is printed; an existing file is overwritten only where it is of the same kind.',
  ],
  operands: [{ name: 'BOOK', words: 'book file or its JSON form' }],
  options: [
    { name: 'as', value: 'KIND', words: `kind of file: ${IDS}` },
    { name: 'out', value: 'FILE', words: 'write the file here instead of printing it' },
  ],
  required: ['as'],
  schema: 'export',
  example: 'npx swardway export sample-routes/residential-day.json --as kml --out lawns.kml',
  run: async (typed) => {
    const writer = writerOf(typed);
    if (typed.options.out !== undefined) {
      const free = await mayWrite(fileOf(typed, 'out'), EARLIER[writer.id] ?? /^$/, writer.title);
      if (!free.ok) return free;
    }
    const read = await readBookFile(fileOf(typed, 'BOOK'));
    return read.ok ? finish(read.value, writer, typed) : read;
  },
};

function writerOf(typed: Typed): GroundWriter {
  const found = WRITERS.find((each) => each.id === typed.options.as);
  if (found === undefined) throw new UsageFault(`--as knows ${IDS}; not "${typed.options.as}".`);
  return found;
}

async function finish({ book, issues }: BookInput, writer: GroundWriter, typed: Typed): Promise<Result<Answer>> {
  const text = writer.write(book.properties, { title: book.name, measure: measureProperty });
  const json: ExportOutput = {
    format: 'swardway-export',
    version: 1,
    bookId: book.id,
    as: writer.id,
    properties: book.properties.length,
    leavesOut: writer.leavesOut,
    text: typed.options.out === undefined ? text : '',
    issues,
  };
  const remarks = [...issueLines(issues)];
  if (typed.options.out === undefined) return ok({ json, text: () => text.trimEnd(), remarks });
  const file = fileOf(typed, 'out');
  const written = await writeWhole(file, text);
  if (!written.ok) return written;
  remarks.push(`file written: ${describePlace(file)}`);
  const words = `${counted(json.properties, 'property', 'properties')} written. ${writer.leavesOut}`;
  return ok({ json, text: () => words, remarks });
}
