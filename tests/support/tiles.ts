import http from 'node:http';
import type { AddressInfo } from 'node:net';
import { inflateSync } from 'node:zlib';
import sqlite3 from 'sqlite3';
import { writePng } from '../../electron/services/imagery/png.ts';

export type Colour = readonly [red: number, green: number, blue: number];

/** A PNG of one colour. */
export function paintedPng([red, green, blue]: Colour, widthPx = 256, heightPx = widthPx): Promise<Uint8Array> {
  const pixels = new Uint8Array(widthPx * heightPx * 4);
  for (let at = 0; at < pixels.length; at += 4) pixels.set([red, green, blue, 255], at);
  return writePng(pixels, widthPx, heightPx);
}

/** The red, green, blue and opacity of a pixel of a PNG that `writePng` made: rows without a filter. */
export function pixelOf(png: Uint8Array, column: number, row: number): readonly number[] {
  const bytes = Buffer.from(png);
  const widthPx = bytes.readUInt32BE(16);
  const start = bytes.indexOf('IDAT');
  const rows = inflateSync(bytes.subarray(start + 4, start + 4 + bytes.readUInt32BE(start - 4)));
  const at = row * (widthPx * 4 + 1) + 1 + column * 4;
  return [...rows.subarray(at, at + 4)];
}

export type MadeTile = { readonly z: number; readonly x: number; readonly y: number; readonly bytes: Uint8Array };

/** Writes an MBTiles file; rows are counted from the north here and from the south in the file. */
export async function writeMbtiles(
  file: string,
  tiles: readonly MadeTile[],
  metadata: Readonly<Record<string, string>> = {},
): Promise<void> {
  const database = new sqlite3.Database(file);
  const run = (sql: string, values: readonly unknown[] = []) =>
    new Promise<void>((done, fail) => {
      database.run(sql, [...values], (error: Error | null) => (error ? fail(error) : done()));
    });
  await run('CREATE TABLE metadata (name TEXT, value TEXT)');
  await run('CREATE TABLE tiles (zoom_level INTEGER, tile_column INTEGER, tile_row INTEGER, tile_data BLOB)');
  for (const [name, value] of Object.entries(metadata)) await run('INSERT INTO metadata VALUES (?, ?)', [name, value]);
  for (const { z, x, y, bytes } of tiles) {
    await run('INSERT INTO tiles VALUES (?, ?, ?, ?)', [z, x, 2 ** z - 1 - y, Buffer.from(bytes)]);
  }
  await new Promise<void>((done) => database.close(() => done()));
}

export type TileServer = {
  readonly host: string;
  /** Every request so far: its path and headers. */
  readonly asked: readonly { readonly path: string; readonly headers: http.IncomingHttpHeaders }[];
  readonly close: () => Promise<void>;
};

/** A server on this machine that answers as the test says. */
export async function startTileServer(
  answer: (path: string, response: http.ServerResponse) => void,
): Promise<TileServer> {
  const asked: { path: string; headers: http.IncomingHttpHeaders }[] = [];
  const server = http.createServer((request, response) => {
    asked.push({ path: request.url ?? '', headers: request.headers });
    answer(request.url ?? '', response);
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    host: `127.0.0.1:${(server.address() as AddressInfo).port}`,
    asked,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}
