import { createReadStream, readFileSync, statSync } from 'node:fs';
import { parentPort, workerData } from 'node:worker_threads';
import { type Clock, ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { type RoadMap, readRoadMap, readRoads, writeRoadMap } from '../../../core/roads/index.ts';
import {
  type DrivenRoads,
  drivenRoads,
  drivePositions,
  driveTable,
  learnFromDrives,
  waysAlong,
} from '../../../core/travel/by-road/index.ts';
import { fileFailure, isFileError } from '../files/index.ts';
import { throttleProgress } from '../jobs/index.ts';
import type { ImportMessage, RoadAsked, RoadOrder, RoadQuestion, RoadReply, RoadTold } from './messages.ts';
import { signalOf } from './reins.ts';

/** The worker thread that reads an extract and ends, or that stays with the roads of one file and answers questions about them. */

const order = workerData as RoadOrder;
const signal = signalOf(order.reins);
const clock: Clock = { nowMs: () => performance.now() };

/** Reads an extract piece by piece, twice. */
async function readExtract(onProgress: Parameters<typeof throttleProgress>[0]): Promise<Result<RoadMap>> {
  const { file, where } = order;
  try {
    const totalBytes = statSync(file).size;
    return await readRoads(() => createReadStream(file), { where, totalBytes, signal, onProgress });
  } catch (error) {
    if (!isFileError(error)) throw error;
    return fileFailure(error, file);
  }
}

async function importAll(): Promise<void> {
  const tell = (message: ImportMessage, moved: readonly ArrayBuffer[] = []): void =>
    parentPort?.postMessage(message, [...moved]);
  const read = await readExtract(throttleProgress((progress) => tell({ kind: 'progress', progress }), clock));
  if (!read.ok) {
    tell({ kind: 'failed', error: read.error });
    return;
  }
  const { about, fingerprint } = read.value;
  const bytes = writeRoadMap(read.value);
  tell({ kind: 'read', bytes, about: { about, fingerprint } }, [bytes.buffer as ArrayBuffer]);
}

/** A road file; where it is none, the file is taken for an extract. */
async function loadMap(): Promise<Result<RoadMap>> {
  try {
    // A plain array: parts of a Buffer are views of a larger one.
    const stored = readRoadMap(new Uint8Array(readFileSync(order.file)), order.where);
    return stored.ok || stored.error.code !== 'format-unknown' ? stored : readExtract(() => undefined);
  } catch (error) {
    if (!isFileError(error)) throw error;
    return fileFailure(error, order.file);
  }
}

/** The network of the last question is kept: most questions come with the settings of the one before. */
function networks(map: RoadMap): (book: Book) => DrivenRoads {
  let last: { readonly key: string; readonly roads: DrivenRoads } | null = null;
  return (book) => {
    const key = JSON.stringify([book.roads ?? null, book.rigs.map((each) => [each.shiftStartMin, each.shiftMin])]);
    if (last?.key !== key) last = { key, roads: drivenRoads(map, book) };
    return last.roads;
  };
}

function sitAtDesk(): void {
  const loading = loadMap();
  let roadsOf: ReturnType<typeof networks> | null = null;
  const answer = async (question: RoadQuestion): Promise<Result<RoadReply[keyof RoadReply]>> => {
    const loaded = await loading;
    if (!loaded.ok) return loaded;
    const map = loaded.value;
    roadsOf ??= networks(map);
    switch (question.kind) {
      case 'about':
        return ok({ about: map.about, fingerprint: map.fingerprint });
      case 'drives':
        return driveTable(roadsOf(question.book), drivePositions(question.book), {
          known: question.known ?? undefined,
          signal,
        });
      case 'ways': {
        const roads = roadsOf(question.book);
        return ok({ ways: waysAlong(roads, question.stops), credit: roads.credit });
      }
      case 'learn':
        return ok(learnFromDrives(map, question.book));
    }
  };
  parentPort?.on('message', ({ id, question }: RoadAsked) => {
    void answer(question).then((result) => {
      const told: RoadTold = { id, result };
      parentPort?.postMessage(told);
    });
  });
}

if (order.kind === 'import') void importAll();
else sitAtDesk();
