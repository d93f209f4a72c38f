import type { Connection } from './connection.ts';
import type { Migration } from './migrations/index.ts';

/** Marks a file as a book of this program: the letters "SWRD". Kept by SQLite at byte 68 of the file. */
export const APPLICATION_ID = 0x53575244;

export async function userVersion(connection: Connection): Promise<number> {
  const rows = await connection.all('PRAGMA user_version');
  return Number(rows[0]?.user_version ?? 0);
}

/**
 * Brings the file to the newest version: each step in one transaction together with its version number, so that a crash leaves
 * the file at one version or the next. Afterwards the write-ahead log is emptied, so that the version can be read from the
 * file's first bytes. Returns the names of the steps done.
 */
export async function migrate(connection: Connection, migrations: readonly Migration[]): Promise<readonly string[]> {
  const from = await userVersion(connection);
  const pending = migrations.slice(from);
  for (const [index, migration] of pending.entries()) {
    await connection.transaction(async () => {
      for (const statement of migration.statements) await connection.exec(statement);
      await connection.exec(`PRAGMA application_id = ${APPLICATION_ID}`);
      await connection.exec(`PRAGMA user_version = ${from + index + 1}`);
    });
  }
  if (pending.length > 0) await connection.exec('PRAGMA wal_checkpoint(TRUNCATE)');
  return pending.map(({ name }) => name);
}
