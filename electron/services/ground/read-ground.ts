import { open, stat } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Progress, type Result } from '../../../core/base/index.ts';
import type { Position } from '../../../core/book/index.ts';
import type { Elevation } from '../../../core/contract/index.ts';
import {
  type GeoPackageContent,
  GROUND_READ_OPTIONS,
  type GroundSource,
  geopackageReader,
} from '../../../core/formats/index.ts';
import { describePlace, fileFailure, isFileError } from '../files/index.ts';
import { fileTooLarge, readingCancelled, tookTooLong } from './failures.ts';
import { readGeopackageRows } from './geopackage-rows.ts';
import { runGroundWorker, type WorkerAnswer } from './run-worker.ts';
import { watchTime } from './watch.ts';

/** What reading a file of ground needs beside its path. */
export type ReadGroundOptions = {
  /** The bundled ground-worker. */
  readonly workerFile: string;
  /** What the file is called for people, where that is not its own name. */
  readonly fileName?: string | undefined;
  /** Ends the reading with the error `cancelled`. */
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
};

const MEBIBYTE = 1024 * 1024;
/** Larger files are refused before they are opened. */
const LARGEST_FILE = 512 * MEBIBYTE;
const LIMITS = { ...GROUND_READ_OPTIONS.limits, fileBytes: LARGEST_FILE };

/** A small file may take two seconds of the processor, a larger one ten more for each MiB: ten times what 120,000 parcels took. */
const LEAST_MS = 2000;
const MS_PER_MEBIBYTE = 10_000;
/** A picture of heights is read in parts, however large it is. */
const MOST_ELEVATION_MS = 20_000;

/** Enough of a file to tell a database. */
const GLANCE_BYTES = 100;

/**
 * Everything that a file of ground holds, in any of the formats of GROUND_READERS. It is read in a thread of its own, within
 * limits of time and memory; a GeoPackage's rows are read here and made sense of there.
 * Errors: those of the readers; `file-not-found`, `file-not-readable`, `file-too-large`, `cancelled`.
 */
export async function readGroundFile(file: string, options: ReadGroundOptions): Promise<Result<GroundSource>> {
  const fileName = options.fileName ?? path.basename(file);
  const look = await glance(file);
  if (!look.ok) return look;
  const { size, beginning } = look.value;
  if (size > LARGEST_FILE) return fileTooLarge(fileName, size, LARGEST_FILE);
  const limitMs = limitFor(size);
  const isDatabase = geopackageReader.looksLike(beginning, fileName);
  const rows = isDatabase ? await readRows(file, fileName, limitMs, options.signal) : ok(null);
  if (!rows.ok) return rows;
  const work = { kind: 'read', file, fileName, geopackage: rows.value, limits: LIMITS } as const;
  const answer = await runGroundWorker(work, { ...options, where: fileName, limitMs });
  return pick(answer, (value) => (value.kind === 'read' ? value.source : null));
}

/**
 * Heights at some positions out of a GeoTIFF of heights, in the order of the positions. Errors: `format-invalid` where the file
 * is none or does not say where it lies; `file-not-found`, `file-not-readable`, `file-too-large`, `cancelled`.
 */
export async function readElevationFile(
  file: string,
  positions: readonly Position[],
  options: ReadGroundOptions,
): Promise<Result<Elevation>> {
  const where = options.fileName ?? path.basename(file);
  const look = await glance(file);
  if (!look.ok) return look;
  const limitMs = Math.min(MOST_ELEVATION_MS, limitFor(look.value.size));
  const work = { kind: 'elevation', file, where, positions } as const;
  const answer = await runGroundWorker(work, { ...options, where, limitMs });
  return pick(answer, (value) => (value.kind === 'elevation' ? value.elevation : null));
}

function limitFor(size: number): number {
  return Math.ceil(LEAST_MS + (size / MEBIBYTE) * MS_PER_MEBIBYTE);
}

function pick<T>(answer: Result<WorkerAnswer>, choose: (value: WorkerAnswer) => T | null): Result<T> {
  if (!answer.ok) return answer;
  const value = choose(answer.value);
  if (value === null) throw new Error('the thread answered another question');
  return ok(value);
}

async function glance(file: string): Promise<Result<{ readonly size: number; readonly beginning: Uint8Array }>> {
  try {
    const status = await stat(file);
    if (!status.isFile()) return err('file-not-readable', describePlace(file), 'This is no file.', 'Choose a file.');
    const handle = await open(file, 'r');
    try {
      const { buffer, bytesRead } = await handle.read(new Uint8Array(GLANCE_BYTES), 0, GLANCE_BYTES, 0);
      return ok({ size: status.size, beginning: buffer.subarray(0, bytesRead) });
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (!isFileError(error)) throw error;
    return fileFailure(error, file);
  }
}

/** Ends the database's work after the time limit, and when the reading is cancelled. */
async function readRows(
  file: string,
  where: string,
  limitMs: number,
  cancel: AbortSignal | undefined,
): Promise<Result<GeoPackageContent>> {
  const over = new AbortController();
  const watch = watchTime(limitMs, () => over.abort());
  const signal = cancel === undefined ? over.signal : AbortSignal.any([over.signal, cancel]);
  try {
    return ok(await readGeopackageRows(file, LIMITS, signal));
  } catch (error) {
    if (cancel?.aborted === true) return readingCancelled(where);
    if (over.signal.aborted) return tookTooLong(where, limitMs);
    const words = error instanceof Error ? error.message : String(error);
    const hint = 'Export or download it again; if it opens in another program, save it there anew.';
    return err('format-invalid', where, `The GeoPackage is damaged or incomplete (${words.slice(0, 120)}).`, hint);
  } finally {
    watch.stop();
  }
}
