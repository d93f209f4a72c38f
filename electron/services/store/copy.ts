import { rm } from 'node:fs/promises';
import { ok, type Result } from '../../../core/base/index.ts';
import { flushFile, freshBeside, takePlace } from '../files/index.ts';
import { clearTheWay, logsOf } from './clear-the-way.ts';
import type { Connection } from './connection.ts';
import { guardStore, notCopied } from './failures.ts';

/**
 * Copies a book into a new file by VACUUM INTO (a plain copy of a live file misses its log), counts the rows of each table in the copy, flushes
 * it and renames it into place: a file that stood there is the old one or the whole copy. Edits wait meanwhile. A book that somebody has open
 * is not overwritten ('book-locked').
 */
export function copyWhole(connection: Connection, target: string): Promise<Result<true>> {
  const fresh = freshBeside(target);
  return guardStore<true>(target, async () => {
    const isClear = await clearTheWay(target);
    if (!isClear.ok) return isClear;
    try {
      const missing = await connection.alone(async () => {
        await connection.run('VACUUM INTO ?', [fresh]);
        return countDifference(connection, fresh);
      });
      if (missing !== null) return notCopied(target, missing);
      await flushFile(fresh);
      await takePlace(fresh, target);
      return ok(true);
    } finally {
      await removeFile(fresh);
    }
  });
}

/** Removes a database file and whatever SQLite keeps beside it. */
export async function removeFile(file: string): Promise<void> {
  for (const name of [file, ...logsOf(file)]) await rm(name, { force: true }).catch(() => undefined);
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
