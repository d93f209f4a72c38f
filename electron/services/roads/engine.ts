import { err, fingerprint, ok, type Result } from '../../../core/base/index.ts';
import type { Position } from '../../../core/book/index.ts';
import {
  type Asked,
  type Block,
  blocksFor,
  type Engine,
  type EngineCells,
  readEngineAddress,
  readRefusal,
  readTableAnswer,
  requestFor,
} from '../../../core/travel/engines/index.ts';
import { type DriveTable, NO_WAY, type OffRoad } from '../../../core/travel/index.ts';

export type EngineLimits = {
  /** For one request, milliseconds. */
  readonly requestMs: number;
  /** For the whole table, milliseconds. */
  readonly totalMs: number;
  /** Of one answer, bytes. */
  readonly mostBytes: number;
};

export const ENGINE_LIMITS: EngineLimits = { requestMs: 15_000, totalMs: 180_000, mostBytes: 8 * 1024 * 1024 };

/** What is asked of an engine. */
export type EngineWish = {
  readonly engine: Engine;
  readonly at: readonly Position[];
  /** A place farther from any road than this is off the road, m. */
  readonly mostM: number;
  readonly known?: DriveTable | undefined;
  readonly limits?: EngineLimits;
};

/** What a table made by an engine is known by. */
export function engineMadeFrom({ kind, address }: Engine, mostM: number): string {
  return fingerprint({ engine: kind, address, mostM });
}

/**
 * Drive times from an engine that the user runs, asked for block by block; a table made before is only added to. Nothing but
 * positions is sent, to no other machine than the one named: an answer that points elsewhere is not followed. Errors: 'not-available'
 * where it does not answer, refuses or is too slow, 'not-allowed' where it points elsewhere, 'format-invalid' for an answer that is no
 * table or cannot be true, 'file-too-large', 'request-invalid' for a bad address.
 */
export async function askEngine(wish: EngineWish): Promise<Result<DriveTable>> {
  const { engine, mostM, limits = ENGINE_LIMITS } = wish;
  const address = readEngineAddress(engine.address);
  if (!address.ok) return address;
  const where = new URL(address.value).host;
  const madeFrom = engineMadeFrom(engine, mostM);
  const drawer = takeKnown(wish, madeFrom);
  const { at } = drawer;
  const overall = AbortSignal.timeout(limits.totalMs);
  const asker = { engine: { ...engine, address: address.value }, at, mostM, where, limits, overall };
  for (const block of blocksFor(at.length, drawer.known)) {
    const cells = await askBlock(asker, block, drawer.offRoad);
    if (!cells.ok) return cells;
    fill(drawer, block, cells.value);
  }
  return ok(inOrder(drawer, wish.at, madeFrom));
}

/** Places in the order in which they are asked for: those that are known already come first. */
type Drawer = {
  readonly at: readonly Position[];
  readonly known: number;
  readonly durationSec: Int32Array;
  readonly distanceM: Int32Array;
  readonly offRoad: Map<number, number | null>;
};

const keyOf = (at: Position): string => at.join(' ');

function takeKnown({ at, known }: EngineWish, madeFrom: string): Drawer {
  const usable = known?.madeFrom === madeFrom ? known : undefined;
  const rows = new Map(usable?.at.map((each, row) => [keyOf(each), row]));
  const old = at.filter((each) => rows.has(keyOf(each)));
  const all = [...old, ...at.filter((each) => !rows.has(keyOf(each)))];
  const count = all.length;
  const durationSec = new Int32Array(count * count).fill(NO_WAY);
  const distanceM = new Int32Array(count * count).fill(NO_WAY);
  const offRoad = new Map<number, number | null>();
  for (const [row, from] of old.entries()) {
    const before = rows.get(keyOf(from)) ?? 0;
    const off = usable?.offRoad.find((each) => each.row === before);
    if (off !== undefined) offRoad.set(row, off.nearestM);
    for (const [column, to] of old.entries()) {
      const cell = before * (usable?.at.length ?? 0) + (rows.get(keyOf(to)) ?? 0);
      durationSec[row * count + column] = usable?.durationSec[cell] ?? NO_WAY;
      distanceM[row * count + column] = usable?.distanceM[cell] ?? NO_WAY;
    }
  }
  return { at: all, known: old.length, durationSec, distanceM, offRoad };
}

function fill({ at, durationSec, distanceM, offRoad }: Drawer, block: Block, cells: EngineCells): void {
  block.sources.forEach((source, row) => {
    block.targets.forEach((target, column) => {
      const from = row * block.targets.length + column;
      const cell = source * at.length + target;
      durationSec[cell] = cells.durationSec[from] ?? NO_WAY;
      distanceM[cell] = cells.distanceM[from] ?? NO_WAY;
    });
  });
  for (const [place, metres] of cells.offRoadM) offRoad.set(place, metres);
}

function inOrder(drawer: Drawer, at: readonly Position[], madeFrom: string): DriveTable {
  const count = at.length;
  const placeOf = new Map(drawer.at.map((each, place) => [keyOf(each), place]));
  const places = at.map((each) => placeOf.get(keyOf(each)) ?? 0);
  const cells = (from: Int32Array): Int32Array => {
    const sorted = new Int32Array(count * count);
    places.forEach((source, row) => {
      places.forEach((target, column) => {
        sorted[row * count + column] = from[source * count + target] ?? NO_WAY;
      });
    });
    return sorted;
  };
  const offRoad = places.flatMap((place, row): OffRoad[] =>
    drawer.offRoad.has(place) ? [{ row, kind: 'too-far', nearestM: drawer.offRoad.get(place) ?? null }] : [],
  );
  return {
    madeFrom,
    credit: '',
    at,
    durationSec: cells(drawer.durationSec),
    distanceM: cells(drawer.distanceM),
    offRoad,
  };
}

type Asker = {
  readonly engine: Engine;
  readonly at: readonly Position[];
  readonly mostM: number;
  readonly where: string;
  readonly limits: EngineLimits;
  readonly overall: AbortSignal;
};

const NO_CELLS: EngineCells = { durationSec: new Int32Array(0), distanceM: new Int32Array(0), offRoadM: new Map() };

/**
 * One block. An engine that refuses a whole block because one of its places has no road near (Valhalla does) is asked about each
 * place alone, and then for the rest of the block.
 */
async function askBlock(asker: Asker, block: Block, offRoad: Map<number, number | null>): Promise<Result<EngineCells>> {
  const joined = (places: readonly number[]): readonly number[] => places.filter((each) => !offRoad.has(each));
  const part = { sources: joined(block.sources), targets: joined(block.targets) };
  if (part.sources.length === 0 || part.targets.length === 0) return ok(spread(block, part, NO_CELLS));
  const answer = await send(asker, part);
  if (!answer.ok) return answer;
  if (answer.value !== 'no-road-near') return ok(spread(block, part, answer.value));
  const places = [...new Set([...part.sources, ...part.targets])];
  const before = offRoad.size;
  for (const place of places) {
    const alone = await send(asker, { sources: [place], targets: [place] });
    if (!alone.ok) return alone;
    if (alone.value === 'no-road-near') offRoad.set(place, null);
  }
  if (offRoad.size === before) {
    const detail = 'It says that a place has no road near, and of each place alone that it has one.';
    return err('format-invalid', asker.where, detail, 'Its answers are not used; check what the engine runs on.');
  }
  return askBlock(asker, block, offRoad);
}

/** The cells of a part of a block at their places in the block; the others are no way. */
function spread(block: Block, part: Block, cells: EngineCells): EngineCells {
  const columns = block.targets.length;
  const durationSec = new Int32Array(block.sources.length * columns).fill(NO_WAY);
  const distanceM = new Int32Array(durationSec.length).fill(NO_WAY);
  part.sources.forEach((source, row) => {
    part.targets.forEach((target, column) => {
      const cell = block.sources.indexOf(source) * columns + block.targets.indexOf(target);
      durationSec[cell] = cells.durationSec[row * part.targets.length + column] ?? NO_WAY;
      distanceM[cell] = cells.distanceM[row * part.targets.length + column] ?? NO_WAY;
    });
  });
  return { durationSec, distanceM, offRoadM: cells.offRoadM };
}

async function send(asker: Asker, block: Block): Promise<Result<EngineCells | 'no-road-near'>> {
  const { engine, at, mostM, where, limits, overall } = asker;
  const asked: Asked = { at, block, mostM };
  const { url, body } = requestFor(engine, asked);
  const signal = AbortSignal.any([overall, AbortSignal.timeout(limits.requestMs)]);
  try {
    const answer = await fetch(url, {
      method: body === null ? 'GET' : 'POST',
      redirect: 'manual',
      credentials: 'omit',
      signal,
      headers: { Accept: 'application/json', ...(body === null ? {} : { 'Content-Type': 'application/json' }) },
      ...(body === null ? {} : { body }),
    });
    if (answer.status >= 300 && answer.status < 400) {
      await answer.body?.cancel();
      return pointsElsewhere(where);
    }
    const text = await readUpTo(answer, limits.mostBytes);
    if (text === null) return tooLong(where);
    if (readRefusal(text)?.isNoRoadNear === true) return ok('no-road-near');
    if (answer.status >= 500 && readRefusal(text) === null)
      return silent(where, `It answered with the status ${answer.status}.`);
    return readTableAnswer(engine, text, asked, where);
  } catch (error) {
    const isLate = error instanceof Error && (error.name === 'TimeoutError' || error.name === 'AbortError');
    return silent(where, isLate ? 'It did not answer in time.' : 'It cannot be reached.');
  }
}

/** Null where there is more. */
async function readUpTo(answer: Response, most: number): Promise<string | null> {
  if (answer.body === null) return '';
  const parts: Uint8Array[] = [];
  let total = 0;
  for await (const part of answer.body as unknown as AsyncIterable<Uint8Array>) {
    total += part.byteLength;
    if (total > most) return null;
    parts.push(part);
  }
  return Buffer.concat(parts).toString('utf8');
}

function silent(where: string, detail: string): Result<never> {
  const hint = 'Start the engine, or check its address; drive times are an estimate meanwhile.';
  return err('not-available', where, detail, hint);
}

function pointsElsewhere(where: string): Result<never> {
  const detail = 'It points to another address, which is not followed.';
  return err('not-allowed', where, detail, 'Enter the address of the engine itself.');
}

function tooLong(where: string): Result<never> {
  return err('file-too-large', where, 'Its answer is longer than 8 MiB.', 'Check the address of the engine.');
}
