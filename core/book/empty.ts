import * as v from 'valibot';
import type { Book, Position, Property } from './model.ts';
import { BOOK_FORMAT, BOOK_VERSION, bookSchema } from './schema.ts';

/** A book with nothing in it and every setting at its default. */
export function emptyBook(id: string, name: string): Book {
  return v.parse(bookSchema, { format: BOOK_FORMAT, version: BOOK_VERSION, id, name });
}

/** A property with nothing on it, whose rig parks at a position in degrees. */
export function emptyProperty(id: string, name: string, parking: Position): Property {
  return {
    id,
    name,
    address: '',
    parking,
    noTrailer: false,
    gates: [],
    zones: [],
    exclusions: [],
    cautions: [],
    note: '',
  };
}
