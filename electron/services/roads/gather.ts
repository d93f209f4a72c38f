import { readFile, stat } from 'node:fs/promises';
import { type AppError, ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { drivePositions, mostMetres } from '../../../core/travel/by-road/index.ts';
import type { Engine } from '../../../core/travel/engines/index.ts';
import { type DriveTable, positionKey, readDriveTable, writeDriveTable } from '../../../core/travel/index.ts';
import { writeWhole } from '../files/index.ts';
import type { Desk } from './desk.ts';
import { askEngine, engineMadeFrom } from './engine.ts';

/** Where drive times by road come from for one book. */
export type DriveSource = {
  /** The road file, or an extract; null where there is none. */
  readonly roadsFile: string | null;
  readonly deskFor: (roadsFile: string) => Desk;
  /** Where the table is kept between two runs; null where nothing may be written. */
  readonly drivesFile: string | null;
  /** A table service of the user's own goes before the road file; null for none. */
  readonly engine: Engine | null;
};

/** A table of 4,000 places has 16 million pairs, 128 MB; more are left to the estimate. */
const MOST_PLACES = 4000;

/**
 * Drive times by road for a book: what has to be handed to `buildProblem` wherever one is built. Only new places are reckoned; the rest
 * comes from `last` or from the file of drive times. Undefined where the book does not use roads or there are none: travel is then
 * the estimate. What went wrong is told in the table's `trouble`, and the pairs that it does not know are estimates.
 */
export async function gatherDrives(
  book: Book,
  source: DriveSource,
  last: DriveTable | undefined,
): Promise<DriveTable | undefined> {
  if (book.roads?.use === false) return undefined;
  const { engine, roadsFile } = source;
  const isThere = roadsFile !== null && (await stat(roadsFile).catch(() => null)) !== null;
  if (engine === null && !isThere) {
    const { extract } = book.roads ?? {};
    if (extract === undefined) return undefined;
    return nothingKnown(`The roads of ${extract.name} are not beside the book any more. Import the extract again.`);
  }
  const places = drivePositions(book);
  if (places.length > MOST_PLACES) {
    return nothingKnown(
      `The book has ${places.length} places; drive times by road are reckoned for up to ${MOST_PLACES}.`,
    );
  }
  const known = last ?? (await readKept(source.drivesFile));
  const made = await make(book, source, known);
  if (!made.ok) return { ...nothingKnown(troubleWords(made.error)), ...stillGood(book, source, known) };
  if (made.value.madeFrom !== known?.madeFrom || !samePlaces(made.value, known))
    await keep(source.drivesFile, made.value);
  return shared(made.value);
}

async function make(book: Book, source: DriveSource, known: DriveTable | undefined): Promise<Result<DriveTable>> {
  const { engine, roadsFile, deskFor } = source;
  if (engine !== null) return askEngine({ engine, at: drivePositions(book), mostM: mostMetres(book.roads), known });
  if (roadsFile === null) return ok(nothingKnown(''));
  return deskFor(roadsFile).ask({ kind: 'drives', book, known: known ?? null });
}

/** Where an engine does not answer, what it said before still holds; its address has not changed. */
function stillGood(book: Book, { engine }: DriveSource, known: DriveTable | undefined): Partial<DriveTable> {
  if (engine === null || known?.madeFrom !== engineMadeFrom(engine, mostMetres(book.roads))) return {};
  const { trouble: _, ...rest } = known;
  return rest;
}

function nothingKnown(trouble: string): DriveTable {
  return {
    madeFrom: '',
    credit: '',
    at: [],
    durationSec: new Int32Array(0),
    distanceM: new Int32Array(0),
    offRoad: [],
    ...(trouble === '' ? {} : { trouble }),
  };
}

function troubleWords({ where, detail, hint }: AppError): string {
  return `Drive times by road are not to be had from ${where}: ${detail} ${hint}`;
}

function samePlaces(one: DriveTable, other: DriveTable): boolean {
  return (
    one.at.length === other.at.length &&
    one.at.every((each, index) => positionKey(each) === positionKey(other.at[index] ?? [0, 0]))
  );
}

async function readKept(file: string | null): Promise<DriveTable | undefined> {
  if (file === null) return undefined;
  const bytes = await readFile(file).catch(() => null);
  const read = bytes === null ? null : readDriveTable(bytes, file);
  return read?.ok === true ? read.value : undefined;
}

/** Beside a book that cannot be written nothing is kept: it is reckoned anew the next time. */
async function keep(file: string | null, table: DriveTable): Promise<void> {
  if (file !== null) await writeWhole(file, writeDriveTable(table));
}

/** Several threads use the same table: they share its figures instead of each holding a copy. */
function shared(table: DriveTable): DriveTable {
  const share = (numbers: Int32Array): Int32Array => {
    if (numbers.buffer instanceof SharedArrayBuffer) return numbers;
    const copy = new Int32Array(new SharedArrayBuffer(numbers.byteLength));
    copy.set(numbers);
    return copy;
  };
  return { ...table, durationSec: share(table.durationSec), distanceM: share(table.distanceM) };
}
