import * as v from 'valibot';
import { err, type Issue, issue, ok, type Result } from '../base/index.ts';
import { readJson } from './json.ts';
import type { Book } from './model.ts';
import { BOOK_FORMAT, BOOK_VERSION, bookSchema } from './schema.ts';
import { schemaError } from './schema-fault.ts';
import { keepUnknownMembers, type UnknownMember } from './unknown-members.ts';

/** A book as read, and notes on what was odd about its text. Invariants are the business of core/checks. */
export type BookRead = { readonly book: Book; readonly issues: readonly Issue[] };

/** So many unknown members are named one by one. */
const NAMED_UNKNOWNS = 20;

/**
 * Reads the JSON form of a book. Absent members get their defaults, unknown ones are kept and noted ('unknown-member').
 *
 * Errors: 'not-json' (line and column), 'not-a-book' (another format), 'newer-version' (nothing is read, so that the file can be
 * left untouched), 'wrong-schema' (path of the field, what was expected and found).
 *
 * @param where the file name, for errors and notes
 */
export function readBook(text: string, where: string): Result<BookRead> {
  const json = readJson(text, where);
  return json.ok ? readBookValue(json.value, where) : json;
}

/**
 * As `readBook`, for a value that is already parsed; errors as there, without 'not-json'. The value itself is left as
 * it is.
 */
export function readBookValue(raw: unknown, where: string): Result<BookRead> {
  const refused = refuseByHeader(raw, where);
  if (refused !== null) return refused;
  const parsed = v.safeParse(bookSchema, raw);
  if (!parsed.success) return { ok: false, error: schemaError(parsed.issues, where) };
  const unknown = keepUnknownMembers(raw, parsed.output);
  const known = unknown.concat(topLevelUnknowns(parsed.output));
  return ok({ book: parsed.output, issues: noteUnknowns(known, where) });
}

function refuseByHeader(raw: unknown, where: string): Result<never> | null {
  const header = typeof raw === 'object' && raw !== null ? (raw as { format?: unknown; version?: unknown }) : {};
  if (header.format !== BOOK_FORMAT) {
    const found = typeof header.format === 'string' ? `its format is "${header.format}"` : 'it names no format';
    const hint = `A book has "format": "${BOOK_FORMAT}". Outlines and lists of lawns are imported instead of opened.`;
    return err('not-a-book', where, `This file is not a book: ${found}.`, hint);
  }
  if (typeof header.version === 'number' && header.version > BOOK_VERSION) {
    const detail = `The book has version ${header.version}; this program reads up to version ${BOOK_VERSION}.`;
    return err('newer-version', where, detail, 'Open it with a newer release of the program.');
  }
  return null;
}

const TOP_LEVEL = new Set(Object.keys(bookSchema.entries));

/** The top of a book is a loose record, so the schema itself has kept these. */
function topLevelUnknowns(book: Book): readonly UnknownMember[] {
  return Object.keys(book)
    .filter((key) => !TOP_LEVEL.has(key))
    .map((path) => ({ path }));
}

function noteUnknowns(unknown: readonly UnknownMember[], where: string): readonly Issue[] {
  const named = unknown.slice(0, NAMED_UNKNOWNS).map(({ path }) => {
    const text = 'This member is not known and is kept as it is. Check its spelling if it was meant to count.';
    return issue('note', 'unknown-member', `${where}, ${path}`, text);
  });
  const rest = unknown.length - named.length;
  if (rest <= 0) return named;
  return [
    ...named,
    issue('note', 'unknown-member', where, `${rest} more members are not known and are kept as they are.`),
  ];
}
