import { fingerprint } from '../../base/index.ts';
import { crc32 } from '../../formats/index.ts';
import { bytesOf, type MapRows, ROWS, rowOf } from './sections.ts';

/** Tells maps apart by their rows of numbers; 16 hexadecimal figures. */
export function fingerprintOf(map: MapRows): string {
  return fingerprint(ROWS.map((spec) => [rowOf(map, spec).length, crc32(bytesOf(rowOf(map, spec)))]));
}
