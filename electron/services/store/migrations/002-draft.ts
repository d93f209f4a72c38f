import type { Migration } from './migration.ts';

/** The outline that is being drawn, as the screen wrote it: one row at most, so that it outlives a crash of either side. */
export const draft: Migration = {
  name: '002-draft',
  statements: [
    `CREATE TABLE draft (
      slot INTEGER PRIMARY KEY CHECK (slot = 1),
      saved_at TEXT NOT NULL,
      json TEXT NOT NULL
    ) STRICT`,
  ],
};
