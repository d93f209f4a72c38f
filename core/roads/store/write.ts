import { crc32 } from '../../formats/index.ts';
import type { RoadMap } from '../types.ts';
import { bytesOf, ROWS, rowOf } from './sections.ts';

/** "Swardway roads", the first bytes of the file. */
export const MAGIC = 'SWRDROAD';
/** Raised when files of before can no longer be read. */
export const VERSION = 1;
/** Magic, version, bytes of the head. */
export const BEFORE_HEAD = 16;

/**
 * The map as the bytes of a file: magic, version and length of the head (two little-endian 32-bit numbers), the head as JSON in
 * ASCII, every row of numbers little-endian and padded to four bytes, and the CRC-32 of all of it.
 */
export function writeRoadMap(map: RoadMap): Uint8Array {
  const head = headOf(map);
  const rows = ROWS.map((spec) => bytesOf(rowOf(map, spec)));
  const size = rows.reduce((sum, row) => sum + padded(row.length), BEFORE_HEAD + padded(head.length));
  const bytes = new Uint8Array(size + 4);
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < MAGIC.length; at += 1) bytes[at] = MAGIC.charCodeAt(at);
  view.setUint32(8, VERSION, true);
  view.setUint32(12, head.length, true);
  for (let at = 0; at < head.length; at += 1) bytes[BEFORE_HEAD + at] = head.charCodeAt(at);
  let at = BEFORE_HEAD + padded(head.length);
  for (const row of rows) {
    bytes.set(row, at);
    at += padded(row.length);
  }
  view.setUint32(size, crc32(bytes.subarray(0, size)), true);
  return bytes;
}

function headOf({ about, junctions, edges, restrictions, fingerprint }: RoadMap): string {
  const sizes = {
    junctions: junctions.lon.length,
    edges: edges.from.length,
    shape: edges.shapeLon.length,
    restrictions: restrictions.from.length,
  };
  return JSON.stringify({ about, sizes, fingerprint }).replace(
    /[^\x20-\x7e]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

export function padded(length: number): number {
  return Math.ceil(length / 4) * 4;
}
