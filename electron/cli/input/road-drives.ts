import { stat } from 'node:fs/promises';
import path from 'node:path';
import { ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import type { DayDrive, DayWays } from '../../../core/reports/index.ts';
import { programPlaces } from '../../program.ts';
import { type Desk, gatherDrives, openDesk, roadFilesOf } from '../../services/roads/index.ts';
import { fileOf, type Option, type Typed, type World } from '../command.ts';
import type { BookInput } from './read-book.ts';

/** Taken by every command that builds a problem of a book. */
export const ROADS_OPTION: Option = {
  name: 'roads',
  value: 'FILE',
  words:
    'roads to drive by: a road file or an extract (.osm.pbf, .osm); off: the estimate. Unless told, the file beside the book with its name and the ending .roads, .osm.pbf or .osm',
};

const OFF = 'off';

/**
 * The book with drive times by road, as --roads says. Nothing is written. Errors, for a file that was named: those of reading it; the
 * file beside the book may be missing or damaged, which the plan then says.
 *
 * @param drives those whose ways along the roads are wanted as well
 */
export async function withDrives(
  input: BookInput,
  typed: Typed,
  world: World,
  drives: readonly DayDrive[] = [],
): Promise<Result<BookInput>> {
  const { roads: named } = typed.options;
  if (named === OFF) return ok(input);
  const beside = named === undefined ? await fileBeside(fileOf(typed, 'BOOK')) : null;
  if (named === undefined && beside === null && input.book.roads?.extract === undefined) return ok(input);
  const file = named === undefined ? (beside ?? roadFilesOf(fileOf(typed, 'BOOK')).roads) : fileOf(typed, 'roads');
  const { roadsWorkerFile } = programPlaces(world.bundleFolder);
  const desk = openDesk(roadsWorkerFile, file);
  try {
    const told = named === undefined ? null : await desk.ask({ kind: 'about' });
    if (told !== null && !told.ok) return told;
    // Who names a file wants it used, whatever the book says.
    const { book } = input;
    const asked =
      named === undefined || book.roads === undefined ? book : { ...book, roads: { ...book.roads, use: true } };
    const source = { roadsFile: file, deskFor: () => desk, drivesFile: null, engine: null };
    const roads = await gatherDrives(asked, source, undefined);
    if (roads === undefined) return ok(input);
    const ways = await waysOf(desk, asked, drives);
    return ok({ ...input, roads, ...(ways === null ? {} : { ways }) });
  } finally {
    desk.end();
  }
}

/** The ways of drives; null where none was asked for or found. */
async function waysOf(desk: Desk, book: Book, drives: readonly DayDrive[]): Promise<DayWays | null> {
  if (drives.length === 0) return null;
  // Each drive by itself: what lies between two of them is not driven.
  const stops = drives.flatMap(({ from, to }) => [from, to]);
  const told = await desk.ask({ kind: 'ways', book, stops });
  if (!told.ok) return null;
  const found = drives.flatMap((drive, index) => {
    const along = told.value.ways[2 * index] ?? null;
    return along === null ? [] : [{ ...drive, along }];
  });
  return found.length === 0 ? null : { drives: found, credit: told.value.credit };
}

/** The roads of a book that nobody named: its road file, or an extract of the same name. */
async function fileBeside(bookFile: string): Promise<string | null> {
  const { roads } = roadFilesOf(bookFile);
  const base = roads.slice(0, -path.extname(roads).length);
  for (const file of [roads, `${base}.osm.pbf`, `${base}.osm`]) {
    if ((await stat(file).catch(() => null)) !== null) return file;
  }
  return null;
}
