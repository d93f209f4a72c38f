import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Result } from '../../../core/base/index.ts';
import { BOOK_FORMAT, type Book, readBook } from '../../../core/book/index.ts';
import type { SampleInfo } from '../../../core/contract/index.ts';
import { readText } from '../files/index.ts';

/** The invented books that come with the program, read from its sample folder. */
export type Samples = {
  /** The one to be looked at first, then the others by name. */
  readonly list: () => Promise<readonly SampleInfo[]>;
  readonly read: (sampleId: string) => Promise<Result<Book>>;
  /** The extract of a road map that belongs to a sample: NAME.osm beside NAME.json, NAME/roads.osm beside NAME/book.json; null for none. */
  readonly extractOf: (sampleId: string) => Promise<string | null>;
};

/** The sample that is offered first: two rigs, and a sports ground on which every compartment runs dry between its edges. */
const SHOWN_FIRST = 'mixed-day';

type SampleFile = { readonly sampleId: string; readonly file: string };

/**
 * Every book in its JSON form in the folder, or one folder deeper: NAME.json and NAME/book.json are both the sample NAME.
 * Other JSON files (expected figures, matrices) are passed over.
 */
export function createSamples(folder: string): Samples {
  const find = async (): Promise<readonly SampleFile[]> => {
    const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
    const found = await Promise.all(
      entries.map(async (entry): Promise<readonly SampleFile[]> => {
        if (entry.isFile() && entry.name.endsWith('.json')) {
          return [{ sampleId: entry.name.slice(0, -'.json'.length), file: path.join(folder, entry.name) }];
        }
        if (!entry.isDirectory()) return [];
        const inside: readonly string[] = await readdir(path.join(folder, entry.name)).catch(() => []);
        return inside.includes('book.json')
          ? [{ sampleId: entry.name, file: path.join(folder, entry.name, 'book.json') }]
          : [];
      }),
    );
    const place = ({ sampleId }: SampleFile): string => (sampleId === SHOWN_FIRST ? '' : sampleId);
    return found.flat().sort((a, b) => (place(a) < place(b) ? -1 : 1));
  };
  return {
    list: async () => {
      const described = await Promise.all((await find()).map(describe));
      return described.filter((sample) => sample !== null);
    },
    extractOf: async (sampleId) => {
      const sample = (await find()).find((each) => each.sampleId === sampleId);
      if (sample === undefined) return null;
      const folderOf = path.dirname(sample.file);
      const name = path.basename(sample.file) === 'book.json' ? 'roads.osm' : `${sampleId}.osm`;
      const extract = path.join(folderOf, name);
      return (await stat(extract).catch(() => null)) === null ? null : extract;
    },
    read: async (sampleId) => {
      const sample = (await find()).find((each) => each.sampleId === sampleId);
      if (sample === undefined) return unknownSample(sampleId);
      const text = await readText(sample.file);
      if (!text.ok) return text;
      const read = readBook(text.value, path.basename(sample.file));
      return read.ok ? ok(read.value.book) : read;
    },
  };
}

/** Reads only what the list shows; the book is checked when it is opened. */
async function describe({ sampleId, file }: SampleFile): Promise<SampleInfo | null> {
  const text = await readText(file);
  if (!text.ok) return null;
  let value: Readonly<Record<string, unknown>>;
  try {
    value = JSON.parse(text.value) as Readonly<Record<string, unknown>>;
  } catch {
    return null;
  }
  if (value === null || typeof value !== 'object' || value.format !== BOOK_FORMAT) return null;
  const count = (list: unknown): number => (Array.isArray(list) ? list.length : 0);
  return {
    sampleId,
    name: typeof value.name === 'string' ? value.name : sampleId,
    note: typeof value.note === 'string' ? value.note : '',
    properties: count(value.properties),
    rigs: count(value.rigs),
  };
}

function unknownSample(sampleId: string): Result<never> {
  return err(
    'file-not-found',
    `sample ${sampleId}`,
    'There is no sample of this name.',
    'Choose one from the list of samples.',
  );
}
