import * as v from 'valibot';
import type { Book } from './model.ts';
import { BOOK_FORMAT, BOOK_VERSION, bookSchema } from './schema.ts';

/** A book with nothing in it and every setting at its default. */
export function emptyBook(id: string, name: string): Book {
  return v.parse(bookSchema, { format: BOOK_FORMAT, version: BOOK_VERSION, id, name });
}
