import type { Connection } from './connection.ts';

/** The unfinished outline; null where there is none, also in a write-protected file from before there were any. */
export async function readDraft(connection: Connection): Promise<string | null> {
  const tables = await connection.all("SELECT name FROM sqlite_schema WHERE type = 'table' AND name = 'draft'");
  if (tables.length === 0) return null;
  const rows = await connection.all('SELECT json FROM draft');
  return rows[0] === undefined ? null : String(rows[0].json);
}

/** Call it inside a transaction. */
export function writeDraft(connection: Connection, draft: string | null, at: string): Promise<void> {
  if (draft === null) return connection.run('DELETE FROM draft');
  return connection.run('INSERT OR REPLACE INTO draft (slot, saved_at, json) VALUES (1, ?, ?)', [at, draft]);
}
