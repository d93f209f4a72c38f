import { err, ok, type Result } from '../base/index.ts';
import { findJsonFault } from './json-fault.ts';

/**
 * Parses JSON text. A byte order mark at the beginning is passed over.
 * Error 'not-json' names the line and the column (both counted from 1) of the first fault.
 *
 * @param where the file or the source of the text, for the error
 */
export function readJson(text: string, where: string): Result<unknown> {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  try {
    return ok(JSON.parse(body) as unknown);
  } catch {
    return notJson(body, where);
  }
}

function notJson(body: string, where: string): Result<never> {
  if (body.trim() === '') {
    return err('not-json', where, 'The file is empty.', 'Choose another file, or take one from a backup.');
  }
  const fault = findJsonFault(body);
  const before = body.slice(0, fault.position);
  const line = before.split('\n').length;
  const column = fault.position - before.lastIndexOf('\n');
  const detail = `This is not JSON: line ${line}, column ${column}: ${fault.expected} expected, ${found(body, fault.position)} found.`;
  return err('not-json', `${where}, line ${line}, column ${column}`, detail, hint(body));
}

function found(body: string, position: number): string {
  const character = body.codePointAt(position);
  if (character === undefined) return 'the end of the file';
  if (character < 0x20) return 'a line break or control character';
  return `"${String.fromCodePoint(character)}"`;
}

function hint(body: string): string {
  if (body.startsWith('SQLite format 3')) return 'This is a book file, not its JSON form: open it as a book.';
  if (/^\s*</.test(body)) return 'This looks like XML or a web page; choose a JSON file.';
  return 'Correct the text at this place, or take the file from a backup.';
}
