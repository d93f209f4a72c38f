import { type FileHandle, open } from 'node:fs/promises';
import path from 'node:path';
import { PMTiles, type Source, TileType } from 'pmtiles';
import { ok, type Result } from '../../../core/base/index.ts';
import { degreesToShare, readImageHead, type TileAt } from '../../../core/imagery/index.ts';
import { describePlace } from '../files/index.ts';
import { badFile, LARGEST_TILE, plainWords, soundBounds, soundZoom, type TileSource } from './tile-source.ts';

const PICTURES = [TileType.Png, TileType.Jpeg, TileType.Webp];
/** No directory or description of a file that covers a county comes near this. */
const LARGEST_PART = 16 * 1024 * 1024;

/** Opens a PMTiles file (version 3) of pictures. Fails with 'format-invalid' where it is none. */
export async function openPmtiles(file: string): Promise<Result<TileSource>> {
  const where = describePlace(file);
  const handle = await open(file, 'r');
  try {
    const source = await describe(new PMTiles(sourceOf(handle, file)), where, path.basename(file), () =>
      handle.close(),
    );
    if (!source.ok) await handle.close();
    return source;
  } catch {
    await handle.close();
    return badFile(where, 'The file is no PMTiles file of version 3, or it is cut short.');
  }
}

function sourceOf(handle: FileHandle, file: string): Source {
  return {
    getKey: () => file,
    getBytes: async (offset, length) => {
      if (!(length >= 0 && length <= LARGEST_PART)) throw new RangeError('a part of the file is too large');
      const bytes = new Uint8Array(length);
      const { bytesRead } = await handle.read(bytes, 0, length, offset);
      return { data: bytes.buffer.slice(0, bytesRead) };
    },
  };
}

async function describe(
  tiles: PMTiles,
  where: string,
  fileName: string,
  close: () => Promise<void>,
): Promise<Result<TileSource>> {
  const header = await tiles.getHeader();
  if (!PICTURES.includes(header.tileType))
    return badFile(where, 'The tiles in the file are no PNG, JPEG or WebP pictures.');
  const metadata: unknown = await tiles.getMetadata().catch(() => null);
  const meta = typeof metadata === 'object' && metadata !== null ? (metadata as Readonly<Record<string, unknown>>) : {};
  const leastZoom = soundZoom(header.minZoom, 0);
  return ok({
    name: plainWords(meta.name, 80) || fileName,
    credit: plainWords(meta.attribution),
    leastZoom,
    mostZoom: Math.max(leastZoom, soundZoom(header.maxZoom, leastZoom)),
    tilePx: await tileEdge(tiles, header),
    bounds: soundBounds([header.minLon, header.minLat, header.maxLon, header.maxLat]),
    read: (tile) => readTile(tiles, where, tile),
    close,
  });
}

/** Edge of the tile in the middle of the file, 256 where there is none. */
async function tileEdge(
  tiles: PMTiles,
  { minZoom, minLon, maxLon, minLat, maxLat }: Awaited<ReturnType<PMTiles['getHeader']>>,
): Promise<256 | 512> {
  const [x, y] = degreesToShare((minLon + maxLon) / 2, (minLat + maxLat) / 2);
  const across = 2 ** minZoom;
  const found = await tiles.getZxy(minZoom, Math.floor(x * across), Math.floor(y * across)).catch(() => undefined);
  return found !== undefined && readImageHead(new Uint8Array(found.data))?.widthPx === 512 ? 512 : 256;
}

async function readTile(tiles: PMTiles, where: string, { z, x, y }: TileAt): Promise<Result<Uint8Array | null>> {
  try {
    const found = await tiles.getZxy(z, x, y);
    return ok(found === undefined || found.data.byteLength > LARGEST_TILE ? null : new Uint8Array(found.data));
  } catch {
    return badFile(where, 'The file of tiles can no longer be read.');
  }
}
