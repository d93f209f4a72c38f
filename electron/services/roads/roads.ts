import { rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { fingerprint, ok, type Progress, type Result } from '../../../core/base/index.ts';
import type { Book, Position } from '../../../core/book/index.ts';
import type { RoadsFile, RoadsStatus, RoadWays } from '../../../core/contract/index.ts';
import type { Learnt } from '../../../core/travel/by-road/index.ts';
import { drivePositions } from '../../../core/travel/by-road/index.ts';
import type { Engine } from '../../../core/travel/engines/index.ts';
import { type DriveTable, placesOffRoad } from '../../../core/travel/index.ts';
import { createTurn, type Turn } from '../files/index.ts';
import { type Desk, openDesk } from './desk.ts';
import { noRoads } from './failures.ts';
import { type DriveSource, gatherDrives } from './gather.ts';
import { importRoads } from './import-roads.ts';
import { roadFilesOf } from './road-files.ts';

/** A book and its file. */
export type BookAt = { readonly file: string; readonly book: Book };

/** The roads of the books that are open: imported, asked, and put away. */
export type Roads = {
  /**
   * Drive times by road, for whoever builds a problem of the book; undefined where it uses none. Never rejects, and never fails: what
   * went wrong is told in the table.
   */
  readonly drivesFor: (at: BookAt) => Promise<DriveTable | undefined>;
  readonly status: (at: BookAt) => Promise<RoadsStatus>;
  /** Ways along the roads from each position to the next; all null where there are no roads. */
  readonly ways: (at: BookAt, stops: readonly Position[]) => Promise<RoadWays>;
  /** Error: 'not-available' without roads; those of reading the road file. */
  readonly learn: (at: BookAt) => Promise<Result<Learnt>>;
  /** Makes the road file of a book from an extract. See `importRoads`. */
  readonly importFrom: (
    bookFile: string,
    extract: string,
    onProgress: (progress: Progress) => void,
  ) => Promise<Result<RoadsFile>>;
  /** Ends the import of a book's roads soon; it then fails with 'cancelled'. */
  readonly cancel: (bookFile: string) => void;
  /** Removes the roads of a book and its drive times. */
  readonly forget: (bookFile: string) => Promise<void>;
  /** Puts away what is kept of books that are not open any more. */
  readonly keepOnly: (openFiles: readonly string[]) => void;
  readonly endAll: () => void;
};

type Tools = {
  /** The bundled roads-worker. */
  readonly workerFile: string;
  /** The table service that the user named; null for none. */
  readonly engine: () => Promise<Engine | null>;
};

/** A table, what it was gathered for, and until when it is not asked again though something went wrong. */
type Gathered = { readonly key: string; readonly table: DriveTable | undefined; readonly untilMs: number };

/** An engine that does not answer is not asked with every move of a stop. */
const TRY_AGAIN_MS = 30_000;

/** Changes whenever the table may be another one: settings, places, shifts, the road file, the engine. */
async function keyOf(book: Book, { roadsFile, engine }: DriveSource): Promise<string> {
  const file = roadsFile === null ? null : await stat(roadsFile).catch(() => null);
  return fingerprint({
    file: file === null ? null : [file.mtimeMs, file.size],
    engine,
    roads: book.roads ?? null,
    shifts: book.rigs.map((each) => [each.shiftStartMin, each.shiftMin]),
    at: drivePositions(book),
  });
}

/** The roads of all open books; a thread for each book is started when it is needed. */
export function createRoads({ workerFile, engine }: Tools): Roads {
  const desks = new Map<string, Desk>();
  const gathered = new Map<string, Gathered>();
  const turns = new Map<string, Turn>();
  const imports = new Map<string, AbortController>();

  const deskFor = (roadsFile: string): Desk => {
    const known = desks.get(roadsFile);
    if (known !== undefined) return known;
    const onEnd = (): void => {
      if (desks.get(roadsFile) === desk) desks.delete(roadsFile);
    };
    const desk = openDesk(workerFile, roadsFile, { onEnd });
    desks.set(roadsFile, desk);
    return desk;
  };
  const putAway = (bookFile: string): void => {
    desks.get(roadFilesOf(bookFile).roads)?.end();
    gathered.delete(bookFile);
  };
  const turnOf = (bookFile: string): Turn => {
    const known = turns.get(bookFile) ?? createTurn();
    turns.set(bookFile, known);
    return known;
  };
  /** One after the other: who asks second finds what the first one has reckoned. */
  const drivesFor: Roads['drivesFor'] = ({ file, book }) =>
    turnOf(file)(async () => {
      const { roads, drives } = roadFilesOf(file);
      const source = { roadsFile: roads, deskFor, drivesFile: drives, engine: await engine() };
      const key = await keyOf(book, source);
      const known = gathered.get(file);
      const isFresh = known !== undefined && (known.table?.trouble === undefined || performance.now() < known.untilMs);
      if (isFresh && known.key === key) return known.table;
      const table = await gatherDrives(book, source, known?.table?.trouble === undefined ? known?.table : undefined);
      gathered.set(file, { key, table, untilMs: performance.now() + TRY_AGAIN_MS });
      return table;
    });
  const isThere = async (file: string): Promise<boolean> => (await stat(file).catch(() => null)) !== null;
  const about = async (bookFile: string): Promise<Result<RoadsFile | null>> => {
    const { roads } = roadFilesOf(bookFile);
    if (!(await isThere(roads))) return ok(null);
    const told = await deskFor(roads).ask({ kind: 'about' });
    return told.ok ? ok(describe(told.value)) : told;
  };

  return {
    drivesFor,
    status: async (at) => {
      const file = await about(at.file);
      const table = await drivesFor(at);
      const named = await engine();
      return {
        roads: file.ok ? file.value : null,
        fault: file.ok ? null : file.error,
        engine: named?.address ?? null,
        ...countPairs(table, at.book),
        trouble: table?.trouble ?? null,
      };
    },
    ways: async ({ file, book }, stops) => {
      const { roads } = roadFilesOf(file);
      const none = { ways: stops.slice(1).map(() => null), credit: '' };
      if (book.roads?.use === false || !(await isThere(roads))) return none;
      const told = await deskFor(roads).ask({ kind: 'ways', book, stops });
      return told.ok ? told.value : none;
    },
    learn: async ({ file, book }) => {
      const { roads } = roadFilesOf(file);
      return (await isThere(roads)) ? deskFor(roads).ask({ kind: 'learn', book }) : noRoads(path.basename(file));
    },
    importFrom: async (bookFile, extract, onProgress) => {
      imports.get(bookFile)?.abort();
      const controller = new AbortController();
      imports.set(bookFile, controller);
      const { signal } = controller;
      const made = await importRoads(extract, roadFilesOf(bookFile).roads, { workerFile, signal, onProgress });
      if (imports.get(bookFile) === controller) imports.delete(bookFile);
      if (!made.ok) return made;
      putAway(bookFile);
      return ok(describe(made.value));
    },
    cancel: (bookFile) => imports.get(bookFile)?.abort(),
    forget: async (bookFile) => {
      putAway(bookFile);
      const { roads, drives } = roadFilesOf(bookFile);
      await Promise.all([rm(roads, { force: true }), rm(drives, { force: true })]);
    },
    keepOnly: (openFiles) => {
      const open = new Set(openFiles.map((each) => roadFilesOf(each).roads));
      for (const [roadsFile, desk] of [...desks]) if (!open.has(roadsFile)) desk.end();
      for (const [bookFile, controller] of imports) if (!openFiles.includes(bookFile)) controller.abort();
      for (const bookFile of [...turns.keys()]) {
        if (openFiles.includes(bookFile)) continue;
        gathered.delete(bookFile);
        turns.delete(bookFile);
      }
    },
    endAll: () => {
      for (const controller of imports.values()) controller.abort();
      for (const desk of [...desks.values()]) desk.end();
      gathered.clear();
    },
  };
}

function describe({
  about,
  fingerprint,
}: {
  readonly about: RoadsFile['about'];
  readonly fingerprint: string;
}): RoadsFile {
  return { about, fingerprint };
}

/** Pairs of different places, how many of them are by road, and the places that no road reaches. */
function countPairs(
  table: DriveTable | undefined,
  book: Book,
): Pick<RoadsStatus, 'places' | 'pairs' | 'byRoad' | 'offRoad'> {
  const count = drivePositions(book).length;
  const pairs = count * (count - 1);
  if (table === undefined) return { places: count, pairs, byRoad: 0, offRoad: [] };
  const cells = table.at.length;
  let byRoad = 0;
  table.durationSec.forEach((each, cell) => {
    if (each >= 0 && Math.floor(cell / cells) !== cell % cells) byRoad += 1;
  });
  const places = [
    ...book.fillPoints.map((each) => ({ id: each.id, name: each.name, at: each.at, what: 'fill point' as const })),
    ...book.properties.map((each) => ({ id: each.id, name: each.name, at: each.parking, what: 'property' as const })),
  ];
  const byId = new Map(places.map((each) => [each.id, each]));
  const offRoad = placesOffRoad(table, places).flatMap(({ id, kind, nearestM }) => {
    const place = byId.get(id);
    return place === undefined ? [] : [{ id, name: place.name, what: place.what, kind, nearestM }];
  });
  return { places: count, pairs, byRoad, offRoad };
}
