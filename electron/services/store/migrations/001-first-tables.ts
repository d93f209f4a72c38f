import type { Migration } from './migration.ts';

/**
 * The first tables. A book is kept record by record, each as JSON text under its kind and slot, so that an edit writes only
 * what it changed. `listing` holds the order of each kind. `edit` is the log of every stored action with its inverse.
 */
export const firstTables: Migration = {
  name: '001-first-tables',
  statements: [
    'CREATE TABLE member (name TEXT PRIMARY KEY, json TEXT NOT NULL) STRICT, WITHOUT ROWID',
    'CREATE TABLE listing (kind TEXT PRIMARY KEY, slots TEXT NOT NULL) STRICT, WITHOUT ROWID',
    `CREATE TABLE record (
      kind TEXT NOT NULL REFERENCES listing (kind),
      slot TEXT NOT NULL,
      json TEXT NOT NULL,
      PRIMARY KEY (kind, slot)
    ) STRICT`,
    `CREATE TABLE edit (
      revision INTEGER PRIMARY KEY,
      at TEXT NOT NULL,
      label TEXT NOT NULL,
      action TEXT NOT NULL,
      inverse TEXT NOT NULL
    ) STRICT`,
    `CREATE TABLE plan (
      round_id TEXT PRIMARY KEY,
      saved_at TEXT NOT NULL,
      problem_hash TEXT NOT NULL,
      json TEXT NOT NULL
    ) STRICT, WITHOUT ROWID`,
  ],
};
