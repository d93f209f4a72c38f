export { emptyBook } from './empty.ts';
export { CAUTIONS, EXCLUSION_KINDS } from './ground-schema.ts';
export { readJson } from './json.ts';
export type * from './model.ts';
export { type BookRead, readBook, readBookValue } from './read.ts';
export { BOOK_FORMAT, BOOK_VERSION, bookSchema } from './schema.ts';
export { HAND_METHOD_KINDS, HEAD_PURPOSES, MACHINE_KINDS, RIDES } from './shed-schema.ts';
export { PRODUCT_UNITS } from './work-schema.ts';
export { writeBook, writeDiffableJson } from './write.ts';
