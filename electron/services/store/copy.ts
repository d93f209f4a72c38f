import { randomBytes } from 'node:crypto';
import { open, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { ok, type Result } from '../../../core/base/index.ts';
import { flushFolder } from '../files/index.ts';
import type { Connection } from './connection.ts';
import { damaged, guardStore } from './failures.ts';

/**
 * Copies a book into a new file by VACUUM INTO (a plain copy of a live file misses its log), counts the rows of each table in the copy, flushes
 * it and renames it into place: a file that stood there is the old one or the whole copy. Edits wait meanwhile.
 */
export function copyWhole(connection: Connection, target: string): Promise<Result<true>> {
  const fresh = path.join(path.dirname(target), `.${path.basename(target)}.${randomBytes(6).toString('hex')}.new`);
  return guardStore<true>(target, async () => {
    try {
      const missing = await connection.alone(async () => {
        await connection.run('VACUUM INTO ?', [fresh]);
        return countDifference(connection, fresh);
      });
      if (missing !== null) return damaged(target, missing);
      await flushFile(fresh);
      await rename(fresh, target);
      await flushFolder(path.dirname(target));
      return ok(true);
    } finally {
      await removeFile(fresh);
    }
  });
}

/** Removes a database file and whatever SQLite keeps beside it. */
export async function removeFile(file: string): Promise<void> {
  for (const name of [file, `${file}-wal`, `${file}-journal`, `${file}-shm`]) {
    await rm(name, { force: true }).catch(() => undefined);
  }
}

/** Waits until a file is on the disk. */
export async function flushFile(file: string): Promise<void> {
  const handle = await open(file, 'r+');
  await handle.sync();
  await handle.close();
}

/** Null where the copy has as many rows in each table as the book. */
async function countDifference(connection: Connection, copy: string): Promise<string | null> {
  await connection.run('ATTACH DATABASE ? AS copy', [copy]);
  try {
    const tables = await connection.all(
      "SELECT name FROM main.sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'",
    );
    for (const { name: table } of tables) {
      const rows = await connection.all(
        `SELECT (SELECT count(*) FROM main.${table}) AS here, (SELECT count(*) FROM copy.${table}) AS there`,
      );
      if (rows[0]?.here !== rows[0]?.there)
        return `the copy has ${rows[0]?.there} of ${rows[0]?.here} rows in ${table}`;
    }
    return null;
  } finally {
    await connection.exec('DETACH DATABASE copy');
  }
}
