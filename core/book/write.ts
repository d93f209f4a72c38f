import * as v from 'valibot';
import type { Book } from './model.ts';
import { bookSchema } from './schema.ts';
import { keepUnknownMembers } from './unknown-members.ts';

/** Lists and records that fit into so many characters stand on one line. */
const LINE_LENGTH = 110;

/**
 * The JSON form of a book, made to be read and compared: members in the order of the schema (unknown ones last), two spaces of
 * indent, one position or short record per line, a line break at the end. Reading the text gives an equal book.
 */
export function writeBook(book: Book): string {
  const parsed = v.safeParse(bookSchema, book);
  if (!parsed.success) return writeDiffableJson(book);
  keepUnknownMembers(book, parsed.output);
  return writeDiffableJson(parsed.output);
}

/** JSON text with short lists and records on one line; numbers of one list always on one line. */
export function writeDiffableJson(value: unknown): string {
  const pieces: string[] = [];
  writeValue(value, '', pieces);
  pieces.push('\n');
  return pieces.join('');
}

function writeValue(value: unknown, indent: string, pieces: string[]): void {
  if (typeof value !== 'object' || value === null) {
    pieces.push(scalar(value));
    return;
  }
  const line = onOneLine(value, LINE_LENGTH - indent.length);
  if (line !== null) pieces.push(line);
  else if (Array.isArray(value)) writeList(value, indent, pieces);
  else writeRecord(value, indent, pieces);
}

function writeList(list: readonly unknown[], indent: string, pieces: string[]): void {
  const inner = `${indent}  `;
  if (isPositions(list)) {
    pieces.push(
      '[\n',
      inner,
      list.map((position) => `[${position.join(', ')}]`).join(`,\n${inner}`),
      '\n',
      indent,
      ']',
    );
    return;
  }
  let opening = '[\n';
  for (const item of list) {
    pieces.push(opening, inner);
    writeValue(item, inner, pieces);
    opening = ',\n';
  }
  pieces.push('\n', indent, ']');
}

/** Rings are most of a book, so they are written in one go. */
function isPositions(list: readonly unknown[]): list is readonly (readonly number[])[] {
  return list.every(
    (item) => Array.isArray(item) && item.length > 0 && item.every((figure) => Number.isFinite(figure)),
  );
}

function writeRecord(record: object, indent: string, pieces: string[]): void {
  const inner = `${indent}  `;
  let opening = '{\n';
  for (const [key, member] of members(record)) {
    pieces.push(opening, inner, JSON.stringify(key), ': ');
    writeValue(member, inner, pieces);
    opening = ',\n';
  }
  pieces.push('\n', indent, '}');
}

function members(record: object): readonly [string, unknown][] {
  return Object.entries(record).filter(([, member]) => member !== undefined);
}

/** The value on one line, or null where it takes more room. Gives up as soon as the room is used, so nesting stays cheap. */
function onOneLine(value: unknown, room: number): string | null {
  if (typeof value !== 'object' || value === null) return scalar(value);
  if (Array.isArray(value)) {
    if (value.every((item) => typeof item === 'number' || item === null)) return `[${value.map(scalar).join(', ')}]`;
    return joined(
      value.map((item) => ['', item] as const),
      '[',
      ']',
      room,
    );
  }
  return joined(
    members(value).map(([key, member]) => [`${JSON.stringify(key)}: `, member] as const),
    '{ ',
    ' }',
    room,
  );
}

function joined(
  parts: readonly (readonly [string, unknown])[],
  open: string,
  close: string,
  room: number,
): string | null {
  if (parts.length === 0) return open.trim() + close.trim();
  let text = open;
  for (const [index, [name, value]] of parts.entries()) {
    const line = onOneLine(value, room - text.length - name.length);
    if (line === null) return null;
    text += `${index === 0 ? '' : ', '}${name}${line}`;
    if (text.length + close.length > room) return null;
  }
  return text + close;
}

function scalar(value: unknown): string {
  return JSON.stringify(value) ?? 'null';
}
