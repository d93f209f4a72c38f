/** A geometry out of well-known binary as plain lists, still to be looked over, or what is wrong with it. */
export type WkbReading =
  | { readonly kind: 'value'; readonly value: PlainGeometry }
  | { readonly kind: 'bad'; readonly what: string };

export type PlainGeometry =
  | { readonly type: string; readonly coordinates: Lists }
  | { readonly type: 'GeometryCollection'; readonly geometries: readonly PlainGeometry[] };
export type Lists = readonly number[] | readonly Lists[];

/** Simple features by their numbers (OGC 06-103r4, clause 8.2.3). What lies beyond them is curved or a body. */
const SIMPLE = [
  '',
  'Point',
  'LineString',
  'Polygon',
  'MultiPoint',
  'MultiLineString',
  'MultiPolygon',
  'GeometryCollection',
] as const;
const POINT = 1;
const LINE = 2;
const POLYGON = 3;
const COLLECTION = 7;

/** Marks of PostGIS's older variety in the upper bits of the type. */
const HAS_Z = 0x80000000;
const HAS_M = 0x40000000;
const HAS_SRID = 0x20000000;

/** Collections nested deeper than this are not read. */
const DEEPEST = 8;

/** Thrown and caught in this file: leads from the first fault straight out. */
class Fault extends Error {}

type Head = { readonly type: number; readonly numbers: number; readonly isLittle: boolean };

/** Reads well-known binary, ISO or PostGIS's; heights and measures are left out. Never throws. */
export function readWkb(bytes: Uint8Array): WkbReading {
  const reader = createReader(bytes);
  try {
    return { kind: 'value', value: reader.geometry(0) };
  } catch (fault) {
    if (fault instanceof Fault) return { kind: 'bad', what: fault.message };
    throw fault;
  }
}

function createReader(bytes: Uint8Array) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 0;
  const take = (count: number): number => {
    const from = at;
    at += count;
    if (at > bytes.length) throw new Fault('fewer bytes than its shape needs');
    return from;
  };
  const integer = (isLittle: boolean): number => view.getUint32(take(4), isLittle);
  /** A count whose members, of so many bytes each at least, still fit in. */
  const count = (isLittle: boolean, leastBytes: number): number => {
    const value = integer(isLittle);
    if (value * leastBytes > bytes.length - at) throw new Fault('fewer bytes than its shape needs');
    return value;
  };
  const head = (): Head => {
    const isLittle = bytes[take(1)] === 1;
    const code = integer(isLittle);
    if ((code & HAS_SRID) !== 0) take(4);
    const plain = code & 0x0fffffff;
    const iso = Math.floor(plain / 1000);
    if (iso > 3) throw new Fault(`a shape of type ${plain}, which is not read`);
    const hasZ = (code & HAS_Z) !== 0 || iso === 1 || iso === 3;
    const hasM = (code & HAS_M) !== 0 || iso === 2 || iso === 3;
    return { type: plain % 1000, numbers: 2 + Number(hasZ) + Number(hasM), isLittle };
  };
  const position = ({ numbers, isLittle }: Head): readonly number[] => {
    const from = take(numbers * 8);
    return [view.getFloat64(from, isLittle), view.getFloat64(from + 8, isLittle)];
  };
  const line = (of: Head): readonly Lists[] =>
    Array.from({ length: count(of.isLittle, of.numbers * 8) }, () => position(of));
  const polygon = (of: Head): readonly Lists[] => Array.from({ length: count(of.isLittle, 4) }, () => line(of));

  const geometry = (depth: number): PlainGeometry => {
    if (depth > DEEPEST) throw new Fault('collections nested too deep');
    const of = head();
    const type = SIMPLE[of.type];
    if (type === undefined || type === '') throw new Fault(`a curve or a body (type ${of.type}), which is not read`);
    if (of.type === POINT) return { type, coordinates: position(of) };
    if (of.type === LINE) return { type, coordinates: line(of) };
    if (of.type === POLYGON) return { type, coordinates: polygon(of) };
    const members = Array.from({ length: count(of.isLittle, 5) }, () => geometry(depth + 1));
    if (of.type === COLLECTION) return { type: 'GeometryCollection', geometries: members };
    return { type, coordinates: members.map((member) => partOf(member, of.type - 3)) };
  };
  return { geometry };
}

/** A member of a geometry of several parts, which has to be of its kind. */
function partOf(member: PlainGeometry, type: number): Lists {
  if ('coordinates' in member && member.type === SIMPLE[type]) return member.coordinates;
  throw new Fault(`a ${member.type} among parts that should be of type ${SIMPLE[type]}`);
}
