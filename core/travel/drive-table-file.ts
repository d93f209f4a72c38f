import { err, fingerprintNumbers, ok, type Result } from '../base/index.ts';
import type { Position } from '../book/index.ts';
import { type DriveTable, OFF_ROAD_KINDS, type OffRoad } from './drive-table.ts';

/** The first bytes of a file of drive times: a name and a version. */
const MARK = 'SWARDWAY-DRIVES-1\n';
/** A table of 8,000 places has 64 million pairs; a larger one is no table of ours. */
const MOST_PLACES = 8000;
const WORD = 4;

type Head = {
  readonly madeFrom: string;
  readonly credit: string;
  readonly at: readonly Position[];
  readonly offRoad: readonly OffRoad[];
  readonly check: string;
};

/**
 * A table of drive times as bytes: mark, length of the head (32 bits, low byte first), head as JSON in UTF-8 padded with spaces to
 * whole words, then durations and distances as 32-bit numbers, low byte first. It can be thrown away at any time.
 */
export function writeDriveTable(table: DriveTable): Uint8Array {
  const numbers = joined(table);
  const head: Head = {
    madeFrom: table.madeFrom,
    credit: table.credit,
    at: table.at,
    offRoad: table.offRoad,
    check: fingerprintNumbers(numbers),
  };
  // Escaped, so that a byte is a character whatever the credit says.
  const json = escaped(JSON.stringify(head));
  const text = json.padEnd(json.length + ((WORD - ((MARK.length + WORD + json.length) % WORD)) % WORD));
  const start = MARK.length + WORD + text.length;
  const bytes = new Uint8Array(start + numbers.length * WORD);
  bytes.set(bytesOf(MARK), 0);
  const view = new DataView(bytes.buffer);
  view.setUint32(MARK.length, text.length, true);
  bytes.set(bytesOf(text), MARK.length + WORD);
  numbers.forEach((each, index) => {
    view.setInt32(start + index * WORD, each, true);
  });
  return bytes;
}

/** Reads what `writeDriveTable` wrote. Fails with 'format-invalid' for anything else, and for a table that was cut or changed. */
export function readDriveTable(bytes: Uint8Array, where: string): Result<DriveTable> {
  const head = headOf(bytes);
  if (head === null) return damaged(where);
  const { at, madeFrom, credit, offRoad, check, start } = head;
  const count = at.length;
  const words = 2 * count * count;
  if (bytes.length !== start + words * WORD) return damaged(where);
  const view = new DataView(bytes.buffer, bytes.byteOffset + start);
  const numbers = new Int32Array(words);
  for (let index = 0; index < words; index += 1) numbers[index] = view.getInt32(index * WORD, true);
  if (fingerprintNumbers(numbers) !== check) return damaged(where);
  const cells = count * count;
  return ok({
    madeFrom,
    credit,
    at,
    durationSec: numbers.subarray(0, cells),
    distanceM: numbers.subarray(cells),
    offRoad,
  });
}

function joined({ durationSec, distanceM }: DriveTable): Int32Array {
  const numbers = new Int32Array(durationSec.length + distanceM.length);
  numbers.set(durationSec, 0);
  numbers.set(distanceM, durationSec.length);
  return numbers;
}

function headOf(bytes: Uint8Array): (Head & { readonly start: number }) | null {
  const begin = MARK.length + WORD;
  if (bytes.length < begin || textOf(bytes.subarray(0, MARK.length)) !== MARK) return null;
  const length = new DataView(bytes.buffer, bytes.byteOffset).getUint32(MARK.length, true);
  if (length > bytes.length - begin) return null;
  try {
    const head: unknown = JSON.parse(textOf(bytes.subarray(begin, begin + length)));
    return isHead(head) ? { ...head, start: begin + length } : null;
  } catch {
    return null;
  }
}

function isHead(head: unknown): head is Head {
  if (typeof head !== 'object' || head === null) return false;
  const { madeFrom, credit, at, offRoad, check } = head as Partial<Record<keyof Head, unknown>>;
  if (typeof madeFrom !== 'string' || typeof credit !== 'string' || typeof check !== 'string') return false;
  if (!Array.isArray(at) || at.length > MOST_PLACES || !at.every(isPosition)) return false;
  return Array.isArray(offRoad) && offRoad.every((each) => isOffRoad(each, at.length));
}

function isOffRoad(value: unknown, count: number): value is OffRoad {
  if (typeof value !== 'object' || value === null) return false;
  const { row, kind, nearestM } = value as Partial<Record<keyof OffRoad, unknown>>;
  const isRow = Number.isInteger(row) && Number(row) >= 0 && Number(row) < count;
  return isRow && OFF_ROAD_KINDS.some((each) => each === kind) && (nearestM === null || Number.isFinite(nearestM));
}

function isPosition(value: unknown): value is Position {
  return Array.isArray(value) && value.length === 2 && value.every((each) => Number.isFinite(each));
}

function escaped(json: string): string {
  return json.replace(/[\u0080-\uffff]/g, (each) => `\\u${each.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

function bytesOf(plain: string): Uint8Array {
  return Uint8Array.from(plain, (each) => each.charCodeAt(0));
}

function textOf(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192) parts.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
  return parts.join('');
}

function damaged(where: string): Result<never> {
  const detail = 'This is no table of drive times that this program wrote, or it is damaged.';
  return err('format-invalid', where, detail, 'It is made again from the roads by itself.');
}
