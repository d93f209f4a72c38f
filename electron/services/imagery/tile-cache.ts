import { readdir, readFile, rm, stat, utimes } from 'node:fs/promises';
import path from 'node:path';
import type { TileAt } from '../../../core/imagery/index.ts';
import { writeOwn } from '../files/index.ts';

/** A tile that was fetched before. */
export type CachedTile = { readonly bytes: Uint8Array; readonly fetchedAt: Date };

/** Tiles that were fetched, in a folder of a limited size. Where the folder cannot be used, tiles are simply not kept. */
export type TileCache = {
  readonly read: (set: string, tile: TileAt) => Promise<CachedTile | null>;
  readonly keep: (set: string, tile: TileAt, bytes: Uint8Array, fetchedAt: Date) => Promise<void>;
};

/** When the folder is full, the oldest tiles go until this share of the limit is left. */
const KEPT_SHARE = 0.9;

type Kept = { readonly size: number; readonly fetchedMs: number };

export function createTileCache(folder: string, limitBytes: number): TileCache {
  let known: Promise<Map<string, Kept>> | null = null;
  let total = 0;
  const inventory = (): Promise<Map<string, Kept>> => {
    known ??= takeStock(folder).then((found) => {
      total = [...found.values()].reduce((sum, { size }) => sum + size, 0);
      return found;
    });
    return known;
  };
  const makeRoom = async (files: Map<string, Kept>): Promise<void> => {
    const byAge = [...files].sort(([, left], [, right]) => left.fetchedMs - right.fetchedMs);
    for (const [name, { size }] of byAge) {
      if (total <= limitBytes * KEPT_SHARE) return;
      files.delete(name);
      total -= size;
      await rm(path.join(folder, name), { force: true }).catch(() => undefined);
    }
  };
  return {
    read: async (set, tile) => {
      const file = path.join(folder, nameOf(set, tile));
      const [bytes, status] = await Promise.all([readFile(file), stat(file)]).catch(() => [null, null] as const);
      return bytes === null ? null : { bytes, fetchedAt: status.mtime };
    },
    keep: async (set, tile, bytes, fetchedAt) => {
      const name = nameOf(set, tile);
      const files = await inventory();
      if (!(await write(path.join(folder, name), bytes, fetchedAt))) return;
      total += bytes.byteLength - (files.get(name)?.size ?? 0);
      files.set(name, { size: bytes.byteLength, fetchedMs: fetchedAt.getTime() });
      if (total > limitBytes) await makeRoom(files);
    },
  };
}

function nameOf(set: string, { z, x, y }: TileAt): string {
  return path.join(set, `${z}-${x}-${y}`);
}

async function write(file: string, bytes: Uint8Array, fetchedAt: Date): Promise<boolean> {
  const written = await writeOwn(file, bytes);
  if (!written.ok) return false;
  // Where the time cannot be set the tile counts as fetched now, which it was.
  await utimes(file, fetchedAt, fetchedAt).catch(() => undefined);
  return true;
}

async function takeStock(folder: string): Promise<Map<string, Kept>> {
  const files = new Map<string, Kept>();
  for (const set of await readdir(folder).catch(() => [])) {
    for (const name of await readdir(path.join(folder, set)).catch(() => [])) {
      const status = await stat(path.join(folder, set, name)).catch(() => null);
      if (status?.isFile()) files.set(path.join(set, name), { size: status.size, fetchedMs: status.mtimeMs });
    }
  }
  return files;
}
