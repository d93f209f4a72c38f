import type { Connection } from './connection.ts';

/** A picture as the book file keeps it. */
export type StoredPicture = { readonly name: string; readonly mediaType: string; readonly bytes: Uint8Array };

/** Null where there is none of that name, also in a write-protected file from before there were any. */
export async function readPicture(connection: Connection, name: string): Promise<StoredPicture | null> {
  const tables = await connection.all("SELECT name FROM sqlite_schema WHERE type = 'table' AND name = 'picture'");
  if (tables.length === 0) return null;
  const rows = await connection.all('SELECT media_type, bytes FROM picture WHERE name = ?', [name]);
  const bytes = rows[0]?.bytes;
  return bytes instanceof Uint8Array ? { name, mediaType: String(rows[0]?.media_type), bytes } : null;
}

/** Call it inside a transaction. The same name is the same content, so what is there stays. */
export function writePicture(connection: Connection, { name, mediaType, bytes }: StoredPicture): Promise<void> {
  return connection.run('INSERT OR IGNORE INTO picture (name, media_type, bytes) VALUES (?, ?, ?)', [
    name,
    mediaType,
    Buffer.from(bytes),
  ]);
}
