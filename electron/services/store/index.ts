export { openConnection } from './connection.ts';
export { readHeader } from './header.ts';
export { MIGRATIONS } from './migrations/index.ts';
export { COLLECTIONS } from './records.ts';
export { replaceBook } from './replace.ts';
export { type BookStore, createStoreFile, openStore, type StoredBook, type StoredEdit } from './store.ts';
export { sqliteVersion } from './version.ts';
