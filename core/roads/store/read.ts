import * as v from 'valibot';
import { err, ok, type Result } from '../../base/index.ts';
import { crc32 } from '../../formats/index.ts';
import type { RoadMap } from '../types.ts';
import { faultIn } from './check.ts';
import { fingerprintOf } from './fingerprint.ts';
import { type MapRows, type NumberRow, ROWS, type RowLength, type RowSpec } from './sections.ts';
import { BEFORE_HEAD, MAGIC, padded, VERSION } from './write.ts';

const MOST_HEAD = 64 * 1024;
const count = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
const size = v.pipe(count, v.maxValue(2 ** 30));
const degrees = v.pipe(v.number(), v.minValue(-180), v.maxValue(180));
const headSchema = v.strictObject({
  about: v.strictObject({
    attribution: v.string(),
    licence: v.string(),
    writtenBy: v.string(),
    dataOf: v.string(),
    bounds: v.strictTuple([degrees, degrees, degrees, degrees]),
    counts: v.strictObject({
      nodes: count,
      ways: count,
      relations: count,
      roads: count,
      brokenRoads: count,
      missingNodes: count,
      restrictionsUsed: count,
      restrictionsViaWay: count,
      restrictionsIgnored: count,
    }),
  }),
  sizes: v.strictObject({ junctions: size, edges: size, shape: size, restrictions: size }),
  fingerprint: v.pipe(v.string(), v.regex(/^[0-9a-f]{16}$/)),
});
type Head = v.InferOutput<typeof headSchema>;

/**
 * The map that `writeRoadMap` wrote. Nothing in it leads beyond its own bounds, whatever the bytes were. Errors:
 * `format-unknown` for other files, `newer-version`, and `format-invalid` for files that are damaged or make no sense.
 */
export function readRoadMap(bytes: Uint8Array, where: string): Result<RoadMap> {
  if (bytes.length < BEFORE_HEAD + 4) return refused(where, 'it is too short');
  if (String.fromCharCode(...bytes.subarray(0, MAGIC.length)) !== MAGIC) {
    return err('format-unknown', where, 'The file holds no roads of this program.', 'Import the extract again.');
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const version = view.getUint32(8, true);
  if (version > VERSION) {
    const detail = `The roads were written by a newer version of the program (format ${version}).`;
    return err('newer-version', where, detail, 'Import the extract again with this one.');
  }
  if (version < VERSION) return refused(where, 'its version is none');
  const end = bytes.length - 4;
  if (crc32(bytes.subarray(0, end)) !== view.getUint32(end, true)) return refused(where, 'its check sum is wrong');
  const headBytes = view.getUint32(12, true);
  if (headBytes > MOST_HEAD || BEFORE_HEAD + headBytes > end) return refused(where, 'its head is too long');
  const head = readHead(bytes.subarray(BEFORE_HEAD, BEFORE_HEAD + headBytes));
  if (head === null) return refused(where, 'its head cannot be read');
  const rows = readRows(bytes.subarray(BEFORE_HEAD + padded(headBytes), end), head.sizes);
  if (rows === null) return refused(where, 'it is longer or shorter than it says');
  const fault = faultIn(rows);
  if (fault !== null) return refused(where, fault);
  if (fingerprintOf(rows) !== head.fingerprint) return refused(where, 'its fingerprint is wrong');
  return ok({ ...rows, about: head.about, fingerprint: head.fingerprint });
}

function refused(where: string, what: string): Result<never> {
  return err('format-invalid', where, `The stored roads are damaged: ${what}.`, 'Import the extract again.');
}

function readHead(bytes: Uint8Array): Head | null {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  try {
    const reading = v.safeParse(headSchema, JSON.parse(text));
    return reading.success ? reading.output : null;
  } catch {
    return null;
  }
}

function readRows(bytes: Uint8Array, sizes: Head['sizes']): MapRows | null {
  const rows: Record<string, Record<string, NumberRow>> = { junctions: {}, edges: {}, restrictions: {} };
  let at = 0;
  for (const spec of ROWS) {
    const length = lengthOf(spec.length, sizes) * WIDTHS[spec.kind];
    if (at + padded(length) > bytes.length) return null;
    const group = rows[spec.group];
    if (group !== undefined) group[spec.name] = rowFrom(bytes.slice(at, at + length), spec);
    at += padded(length);
  }
  return at === bytes.length ? (rows as unknown as MapRows) : null;
}

const WIDTHS = { i32: 4, u32: 4, u16: 2, u8: 1 } as const;

function lengthOf(length: RowLength, sizes: Head['sizes']): number {
  return length === 'edges + 1' ? sizes.edges + 1 : sizes[length];
}

/** @param bytes a copy of its own, so that the row begins at the start of its buffer */
function rowFrom(bytes: Uint8Array, { kind }: RowSpec): NumberRow {
  const buffer = bytes.buffer as ArrayBuffer;
  switch (kind) {
    case 'i32':
      return new Int32Array(buffer);
    case 'u32':
      return new Uint32Array(buffer);
    case 'u16':
      return new Uint16Array(buffer);
    case 'u8':
      return bytes;
  }
}
