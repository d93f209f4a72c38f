import path from 'node:path';
import sqlite3 from 'sqlite3';
import { ok, type Result } from '../../../core/base/index.ts';
import { type DegreeBounds, readImageHead, shareToDegrees, type TileAt } from '../../../core/imagery/index.ts';
import { describePlace } from '../files/index.ts';
import {
  badFile,
  CLOSEST_ZOOM,
  LARGEST_TILE,
  plainWords,
  soundBounds,
  soundZoom,
  type TileSource,
} from './tile-source.ts';

type Row = Readonly<Record<string, unknown>>;
type Ask = (sql: string, values?: readonly unknown[]) => Promise<Row | undefined>;

/**
 * Opens an MBTiles file (specification 1.3: a SQLite file with the tables metadata and tiles, rows counted from the south) for
 * reading alone. Fails with 'format-invalid' where it is none, or holds no pictures.
 */
export async function openMbtiles(file: string): Promise<Result<TileSource>> {
  const where = describePlace(file);
  const database = await openDatabase(file);
  if (database === null) return badFile(where, 'The file is no MBTiles file.');
  const ask: Ask = (sql, values = []) =>
    new Promise((done, fail) => {
      database.get(sql, [...values], (error: Error | null, row: Row | undefined) => (error ? fail(error) : done(row)));
    });
  const close = () => new Promise<void>((done) => database.close(() => done()));
  try {
    // A file from elsewhere may hold views of its own: they may not call functions with effects.
    await ask('PRAGMA trusted_schema = OFF');
    const source = await describe(ask, where, path.basename(file), close);
    if (!source.ok) await close();
    return source;
  } catch {
    await close();
    return badFile(where, 'The file is no MBTiles file: it has no table of tiles.');
  }
}

function openDatabase(file: string): Promise<sqlite3.Database | null> {
  return new Promise((done) => {
    const database = new sqlite3.Database(file, sqlite3.OPEN_READONLY | sqlite3.OPEN_FULLMUTEX, (error) =>
      done(error ? null : database),
    );
  });
}

async function describe(
  ask: Ask,
  where: string,
  fileName: string,
  close: () => Promise<void>,
): Promise<Result<TileSource>> {
  const sample = await ask(
    'SELECT zoom_level AS zoom, tile_data AS data FROM tiles WHERE length(tile_data) <= ? LIMIT 1',
    [LARGEST_TILE],
  );
  const bytes = sample?.data;
  const head = bytes instanceof Uint8Array ? readImageHead(bytes) : null;
  if (head === null) return badFile(where, 'The tiles in the file are no PNG, JPEG or WebP pictures.');
  const meta = async (name: string): Promise<unknown> =>
    (await ask('SELECT value FROM metadata WHERE name = ?', [name]).catch(() => undefined))?.value;
  const least = soundZoom(await meta('minzoom'), -1);
  const most = soundZoom(await meta('maxzoom'), -1);
  const span = least < 0 || most < least ? await zoomSpan(ask) : { least, most };
  const stated = String((await meta('bounds')) ?? '');
  return ok({
    name: plainWords(await meta('name'), 80) || fileName,
    credit: plainWords(await meta('attribution')),
    leastZoom: span.least,
    mostZoom: span.most,
    tilePx: head.widthPx === 512 ? 512 : 256,
    bounds: soundBounds(stated.split(',').map(Number)) ?? (await tileBounds(ask, span.least)),
    read: (tile) => readTile(ask, where, tile),
    close,
  });
}

async function zoomSpan(ask: Ask): Promise<{ readonly least: number; readonly most: number }> {
  const row = await ask('SELECT min(zoom_level) AS least, max(zoom_level) AS most FROM tiles');
  return { least: soundZoom(row?.least, 0), most: soundZoom(row?.most, CLOSEST_ZOOM) };
}

/** Where the file does not say: the ground of its tiles at the farthest zoom, which are few. */
async function tileBounds(ask: Ask, z: number): Promise<DegreeBounds | null> {
  const row = await ask(
    `SELECT min(tile_column) AS left, max(tile_column) AS right, min(tile_row) AS bottom, max(tile_row) AS top
     FROM tiles WHERE zoom_level = ?`,
    [z],
  );
  const share = (value: unknown, more: number) => (Number(value ?? Number.NaN) + more) / 2 ** z;
  const [west, north] = shareToDegrees(share(row?.left, 0), 1 - share(row?.top, 1));
  const [east, south] = shareToDegrees(share(row?.right, 1), 1 - share(row?.bottom, 0));
  return soundBounds([west, south, east, north]);
}

async function readTile(ask: Ask, where: string, { z, x, y }: TileAt): Promise<Result<Uint8Array | null>> {
  const sql =
    'SELECT tile_data AS data FROM tiles WHERE zoom_level = ? AND tile_column = ? AND tile_row = ? AND length(tile_data) <= ?';
  try {
    const row = await ask(sql, [z, x, 2 ** z - 1 - y, LARGEST_TILE]);
    return ok(row?.data instanceof Uint8Array ? row.data : null);
  } catch {
    return badFile(where, 'The file of tiles can no longer be read.');
  }
}
