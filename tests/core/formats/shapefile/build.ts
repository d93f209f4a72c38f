import { zipSync } from 'fflate';

/**
 * Writes shapefiles for tests, byte for byte after Esri's "ESRI Shapefile Technical Description" (July 1998) and the dBASE III
 * table format; it shares no code with the reader.
 */
export type Corner = readonly [x: number, y: number];

const join = (...parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> => {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};
const int = (value: number, isLittle = true): Uint8Array => {
  const view = new DataView(new ArrayBuffer(4));
  view.setInt32(0, value, isLittle);
  return new Uint8Array(view.buffer);
};
const double = (value: number): Uint8Array => {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value, true);
  return new Uint8Array(view.buffer);
};
const ascii = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
const corner = ([x, y]: Corner): Uint8Array => join(double(x), double(y));
const NO_BOX = join(double(0), double(0), double(0), double(0));

export const nullShape = (): Uint8Array => int(0);
export const pointShape = (at: Corner, type = 1): Uint8Array => join(int(type), corner(at));
export const pointsShape = (corners: readonly Corner[]): Uint8Array =>
  join(int(8), NO_BOX, int(corners.length), ...corners.map(corner));

/** Lines (3), rings (5) and their kin with heights (13, 15) or measures (23, 25); `after` is what follows the plain part. */
export function partsShape(type: number, parts: readonly (readonly Corner[])[], after = new Uint8Array()): Uint8Array {
  let start = 0;
  const starts = parts.map((part) => {
    const at = start;
    start += part.length;
    return int(at);
  });
  return join(int(type), NO_BOX, int(parts.length), int(start), ...starts, ...parts.flat().map(corner), after);
}

/** A multipatch: each part with its kind. */
export function patchShape(parts: readonly { readonly kind: number; readonly ring: readonly Corner[] }[]): Uint8Array {
  const plain = partsShape(
    31,
    parts.map(({ ring }) => ring),
  );
  const cut = 44 + parts.length * 4;
  return join(plain.subarray(0, cut), ...parts.map(({ kind }) => int(kind)), plain.subarray(cut));
}

export function shpFile(shapes: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const records = shapes.map((shape, index) => join(int(index + 1, false), int(shape.length / 2, false), shape));
  const header = new Uint8Array(100);
  header.set(int(9994, false), 0);
  header.set(int((100 + records.reduce((sum, record) => sum + record.length, 0)) / 2, false), 24);
  header.set(int(1000), 28);
  // Files say here which shapes they hold; ours may hold several kinds.
  header.set(shapes.find((shape) => shape[0] !== 0)?.subarray(0, 4) ?? int(0), 32);
  return join(header, ...records);
}

export type DbfColumn = { readonly name: string; readonly type: string; readonly bytes: number };

/** Cells are bytes or text of one byte a letter; a row that begins with `*` is marked as deleted. */
export function dbfFile(
  columns: readonly DbfColumn[],
  rows: readonly (readonly (string | Uint8Array)[])[],
  options: { readonly driver?: number; readonly deleted?: readonly number[] } = {},
): Uint8Array<ArrayBuffer> {
  const header = new Uint8Array(32);
  const view = new DataView(header.buffer);
  header[0] = 3;
  view.setUint32(4, rows.length, true);
  view.setUint16(8, 33 + columns.length * 32, true);
  view.setUint16(10, 1 + columns.reduce((sum, column) => sum + column.bytes, 0), true);
  header[29] = options.driver ?? 0;
  const fields = columns.map(({ name, type, bytes }) => {
    const field = new Uint8Array(32);
    field.set(ascii(name), 0);
    field.set(ascii(type), 11);
    field[16] = bytes;
    return field;
  });
  const cells = rows.map((row, index) => {
    const mark = ascii(options.deleted?.includes(index) === true ? '*' : ' ');
    return join(mark, ...row.map((cell, at) => padded(cell, columns[at]?.bytes ?? 0)));
  });
  return join(header, ...fields, Uint8Array.of(13), ...cells, Uint8Array.of(26));
}

function padded(cell: string | Uint8Array, bytes: number): Uint8Array {
  const whole = new Uint8Array(bytes).fill(32);
  whole.set((typeof cell === 'string' ? ascii(cell) : cell).subarray(0, bytes));
  return whole;
}

/** A ZIP archive by fflate's writer. */
export function archive(files: Readonly<Record<string, Uint8Array | string>>): Uint8Array<ArrayBuffer> {
  const entries = Object.entries(files).map(
    ([name, content]) => [name, typeof content === 'string' ? new TextEncoder().encode(content) : content] as const,
  );
  return Uint8Array.from(zipSync(Object.fromEntries(entries)));
}

export const WGS84_PRJ =
  'GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]]';

/** A closed ring, clockwise, as shells run. */
export const square = (x: number, y: number, side: number): Corner[] => [
  [x, y],
  [x, y + side],
  [x + side, y + side],
  [x + side, y],
  [x, y],
];
