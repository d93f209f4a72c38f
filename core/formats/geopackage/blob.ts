import { readSourceGeometry, type SourceGeometry } from '../geojson/index.ts';
import type { GeoPackageCell } from '../types.ts';
import { type PlainGeometry, readWkb } from './wkb.ts';

/** OGC 12-128r18, clause 2.1.3.1.1: "GP", version, flags, system, envelope, then well-known binary. */
const HEAD_BYTES = 8;
const ENVELOPE_BYTES = [0, 32, 48, 48, 64];
const IS_EMPTY = 0x10;
const IS_EXTENDED = 0x20;

/** The geometry in a cell of a GeoPackage. Never throws. */
export function readBlob(cell: GeoPackageCell): SourceGeometry {
  if (cell === null) return { kind: 'none' };
  if (!(cell instanceof Uint8Array)) return bad('text or a number instead of an outline');
  if (cell.length < HEAD_BYTES || cell[0] !== 0x47 || cell[1] !== 0x50) return bad('no GeoPackage geometry');
  const flags = cell[3] ?? 0;
  if ((flags & IS_EMPTY) !== 0) return { kind: 'none' };
  if ((flags & IS_EXTENDED) !== 0) return bad('a geometry of an extension, which is not read');
  const envelope = ENVELOPE_BYTES[(flags >> 1) & 7];
  if (envelope === undefined) return bad('no GeoPackage geometry');
  const reading = readWkb(cell.subarray(HEAD_BYTES + envelope));
  if (reading.kind === 'bad') return bad(reading.what);
  return isEmptyPoint(reading.value) ? { kind: 'none' } : readSourceGeometry(reading.value);
}

/** Well-known binary writes a point without a place as two numbers that are none. */
function isEmptyPoint(value: PlainGeometry): boolean {
  return value.type === 'Point' && 'coordinates' in value && value.coordinates.every((each) => Number.isNaN(each));
}

function bad(what: string): SourceGeometry {
  return { kind: 'bad', path: 'geometry', what };
}
