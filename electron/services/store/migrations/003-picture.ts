import type { Migration } from './migration.ts';

/** Pictures laid over the map. The name is made from the content, so that a picture that was added twice is kept once. */
export const picture: Migration = {
  name: '003-picture',
  statements: [
    `CREATE TABLE picture (
      name TEXT PRIMARY KEY,
      media_type TEXT NOT NULL,
      bytes BLOB NOT NULL
    ) STRICT`,
  ],
};
