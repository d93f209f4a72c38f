import { closeSync, openSync, readFileSync, readSync } from 'node:fs';
import { parentPort, workerData } from 'node:worker_threads';
import type { Clock, Result, StopSignal } from '../../../core/base/index.ts';
import { findGroundReader, GROUND_READ_OPTIONS, type GroundSource } from '../../../core/formats/index.ts';
import { throttleProgress } from '../jobs/index.ts';
import { readElevation } from './elevation.ts';
import { textTooLarge } from './failures.ts';
import type { GroundMessage, GroundOrder } from './messages.ts';

/** The worker thread that reads one file of ground and ends. Started by runGroundWorker in every host. */

const order = workerData as GroundOrder;
const tell = (message: GroundMessage): void => parentPort?.postMessage(message);
const clock: Clock = { nowMs: () => performance.now() };
const flag = new Int32Array(order.stopFlag);
const signal: StopSignal = { stopped: () => Atomics.load(flag, 0) !== 0 };
const onProgress = throttleProgress((progress) => tell({ kind: 'progress', progress }), clock);

/** Archives and databases are read part by part; all other files are text, which takes several times its size while it is read. */
const READ_IN_PARTS = ['shapefile', 'geopackage'];
const BEGINNING_BYTES = 4096;
const LARGEST_TEXT = 128 * 1024 * 1024;

async function run(): Promise<GroundMessage> {
  if (order.kind === 'elevation') {
    const elevation = await readElevation(order.file, order.where, order.positions);
    return elevation.ok
      ? { kind: 'elevation', elevation: elevation.value }
      : { kind: 'failed', error: elevation.error };
  }
  const source = await read(order);
  return source.ok ? { kind: 'read', source: source.value } : { kind: 'failed', error: source.error };
}

async function read(work: GroundOrder & { readonly kind: 'read' }): Promise<Result<GroundSource>> {
  const { file, fileName, geopackage, limits } = work;
  // Of a database, whose rows are at hand, only the beginning is looked at.
  const bytes = geopackage === null ? new Uint8Array(readFileSync(file)) : readBeginning(file);
  const reader = findGroundReader(bytes, fileName);
  if (!reader.ok) return reader;
  if (bytes.length > LARGEST_TEXT && !READ_IN_PARTS.includes(reader.value.id))
    return textTooLarge(fileName, bytes.length);
  return reader.value.read(bytes, fileName, {
    ...GROUND_READ_OPTIONS,
    limits,
    signal,
    onProgress,
    decode,
    ...(geopackage === null ? {} : { geopackage }),
  });
}

function readBeginning(file: string): Uint8Array {
  const bytes = new Uint8Array(BEGINNING_BYTES);
  const handle = openSync(file, 'r');
  try {
    return bytes.subarray(0, readSync(handle, bytes));
  } finally {
    closeSync(handle);
  }
}

function decode(bytes: Uint8Array, encoding: string): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    // Either the runtime does not know the encoding, or the bytes are not in it.
    return null;
  }
}

tell({ kind: 'begun' });
void run().then(tell);
