import { err, ok, type Result } from '../../base/index.ts';
import { decodeLatin } from '../text/index.ts';
import type { AttributeValue } from '../types.ts';

type DbfField = { readonly name: string; readonly type: string; readonly from: number; readonly bytes: number };

export type DbfRow = { readonly attributes: Readonly<Record<string, AttributeValue>>; readonly isDeleted: boolean };

export type DbfTable = {
  readonly fields: readonly string[];
  /** As many as the table really holds, whatever its header says. */
  readonly rowCount: number;
  readonly row: (index: number) => DbfRow;
};

/** dBASE III and later: header of 32 bytes, then 32 bytes for each field until 0x0D; each row begins with its deletion mark. */
const HEADER_BYTES = 32;
const FIELD_BYTES = 32;
const END_OF_FIELDS = 0x0d;
const DELETED = 0x2a;
const NAME_BYTES = 11;

/** The language driver id of a table, byte 29 of its header. */
export function languageDriver(bytes: Uint8Array): number {
  return bytes[29] ?? 0;
}

/** Opens a .dbf table; rows are read one by one. Error `format-invalid` where it is none. */
export function readDbf(bytes: Uint8Array, where: string, decode: (bytes: Uint8Array) => string): Result<DbfTable> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < HEADER_BYTES + 1) return broken(where);
  const headBytes = view.getUint16(8, true);
  const rowBytes = view.getUint16(10, true);
  const fields = readFields(bytes, headBytes, decode);
  const width = fields.reduce((most, field) => Math.max(most, field.from + field.bytes), 0);
  if (headBytes < HEADER_BYTES || headBytes > bytes.length || rowBytes < 1 || width > rowBytes) return broken(where);
  const rowCount = Math.min(view.getUint32(4, true), Math.floor((bytes.length - headBytes) / rowBytes));
  const row = (index: number): DbfRow => {
    const from = headBytes + index * rowBytes;
    const values = fields.map((field) => {
      const start = from + field.from;
      return [field.name, readValue(bytes.subarray(start, start + field.bytes), field.type, decode)] as const;
    });
    return { attributes: Object.fromEntries(values), isDeleted: bytes[from] === DELETED };
  };
  return ok({ fields: fields.map((field) => field.name), rowCount, row });
}

function readFields(bytes: Uint8Array, headBytes: number, decode: (bytes: Uint8Array) => string): readonly DbfField[] {
  const fields: DbfField[] = [];
  const taken = new Set<string>();
  let from = 1;
  for (let at = HEADER_BYTES; at + FIELD_BYTES <= Math.min(headBytes, bytes.length); at += FIELD_BYTES) {
    if (bytes[at] === END_OF_FIELDS) break;
    const length = bytes[at + 16] ?? 0;
    const name = freeName(decode(upToZero(bytes.subarray(at, at + NAME_BYTES))).trim(), taken, fields.length);
    fields.push({ name, type: String.fromCharCode(bytes[at + 11] ?? 0), from, bytes: length });
    from += length;
  }
  return fields;
}

/** Two fields may not share a name, and each needs one. */
function freeName(wanted: string, taken: Set<string>, index: number): string {
  let name = wanted === '' ? `field ${index + 1}` : wanted;
  for (let number = 2; taken.has(name); number += 1) name = `${wanted} ${number}`;
  taken.add(name);
  return name;
}

function upToZero(bytes: Uint8Array): Uint8Array {
  const end = bytes.indexOf(0);
  return end < 0 ? bytes : bytes.subarray(0, end);
}

/** Null where the cell is empty or holds no value of its type. */
function readValue(bytes: Uint8Array, type: string, decode: (bytes: Uint8Array) => string): AttributeValue {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  switch (type) {
    case 'N':
    case 'F':
      return readNumber(decodeLatin(upToZero(bytes)).trim());
    case 'L':
      return readLogical(String.fromCharCode(bytes[0] ?? 0));
    case 'D':
      return readDate(decodeLatin(bytes));
    case 'I':
    case '+':
      return bytes.length === 4 ? view.getInt32(0, true) : null;
    case 'O':
    case 'B':
      return bytes.length === 8 && Number.isFinite(view.getFloat64(0, true)) ? view.getFloat64(0, true) : null;
    default: {
      const text = decode(upToZero(bytes)).trim();
      return text === '' ? null : text;
    }
  }
}

/** Stars fill a cell whose number was too long for it. */
function readNumber(text: string): number | null {
  const value = text === '' ? Number.NaN : Number(text);
  return Number.isFinite(value) ? value : null;
}

function readLogical(letter: string): boolean | null {
  if ('TtYy1'.includes(letter)) return true;
  return 'FfNn0'.includes(letter) ? false : null;
}

function readDate(text: string): string | null {
  const found = /^(\d{4})(\d{2})(\d{2})$/.exec(text.trim());
  return found === null || found[1] === '0000' ? null : `${found[1]}-${found[2]}-${found[3]}`;
}

function broken(where: string): Result<never> {
  const hint = 'Export or download the shapefile again.';
  return err('format-invalid', where, 'The .dbf table of the shapefile is damaged.', hint);
}
