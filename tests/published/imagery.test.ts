import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { degreesToShare, readImageHead } from '../../core/imagery/index.ts';
import { openTileFile } from '../../electron/services/imagery/file-list.ts';
import type { TileSource } from '../../electron/services/imagery/tile-source.ts';
import { pixelOf } from '../support/tiles.ts';

/** Files that lie beside the repository and are not part of it. Where they are missing these tests are skipped. */
const folder = fileURLToPath(new URL('../../../shared/geodata/raster/', import.meta.url));
let scratch = '';
beforeAll(() => {
  scratch = mkdtempSync(path.join(tmpdir(), 'swardway-raster-'));
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function withFile(name: string, check: (file: string) => Promise<void>): void {
  const isThere = existsSync(`${folder}${name}`);
  if (!isThere) console.log(`skipped: ../shared/geodata/raster/${name} is not there`);
  it.skipIf(!isThere)(`${name}${isThere ? '' : ' (skipped: the file is not beside the repository)'}`, async () => {
    const file = path.join(scratch, name);
    copyFileSync(`${folder}${name}`, file);
    await check(file);
  });
}

async function open(file: string): Promise<TileSource> {
  const source = await openTileFile(file);
  if (!source.ok) throw new Error(source.error.detail);
  return source.value;
}

/** Every tile between two corners at a zoom; how many are there, each a picture of the size that the file is said to have. */
async function countTiles(source: TileSource, z: number): Promise<number> {
  const [west = 0, south = 0, east = 0, north = 0] = source.bounds ?? [];
  const place = (longitude: number, latitude: number) =>
    degreesToShare(longitude, latitude).map((share) => Math.floor(share * 2 ** z)) as [number, number];
  const [from, to] = [place(west, north), place(east, south)];
  let count = 0;
  for (let x = from[0]; x <= to[0]; x += 1) {
    for (let y = from[1]; y <= to[1]; y += 1) {
      const read = await source.read({ z, x, y });
      if (!read.ok) throw new Error(read.error.detail);
      if (read.value === null) continue;
      expect(readImageHead(read.value)).toMatchObject({ widthPx: source.tilePx, heightPx: source.tilePx });
      count += 1;
    }
  }
  return count;
}

describe('files of tiles', () => {
  /** The file's own tables: 4, 6, 24, 80 and 320 tiles of the zooms 14 to 18. */
  withFile('synthetic.mbtiles', async (file) => {
    const source = await open(file);
    expect(source).toMatchObject({ leastZoom: 14, mostZoom: 18, tilePx: 256, bounds: [-75.31, 40.19, -75.29, 40.21] });
    expect(await Promise.all([14, 15, 16, 17].map((z) => countTiles(source, z)))).toEqual([4, 6, 24, 80]);
    await source.close();
  });

  /** Map of Mount Whitney by the USGS, public domain, as WebP tiles of 512 pixels; zooms 8 to 15 by its name. */
  withFile('usgs_topo_whitney.pmtiles', async (file) => {
    const source = await open(file);
    expect(source).toMatchObject({ leastZoom: 8, mostZoom: 15, tilePx: 512 });
    expect(await countTiles(source, 8)).toBeGreaterThan(0);
    expect(await countTiles(source, 13)).toBeGreaterThan(3);
    await source.close();
  });
});

describe('GeoTIFF', () => {
  /**
   * An aerial picture in EPSG:3857 with smaller copies (rasterio's test data, BSD-3). Its middle is drawn at the zoom of its own
   * pixels and three zooms farther off; the mean colour of the same ground is alike, which holds only where both lie alike.
   */
  withFile('cog_3857_aerial.tif', async (file) => {
    const source = await open(file);
    const [west = 0, south = 0, east = 0, north = 0] = source.bounds ?? [];
    const [x, y] = degreesToShare((west + east) / 2, (south + north) / 2);
    const near = await meanColour(source, source.mostZoom - 1, x, y);
    const far = await meanColour(source, source.mostZoom - 2, x, y, 2);
    for (const [index, value] of near.entries()) expect(Math.abs(value - (far[index] ?? 0))).toBeLessThan(12);
    await source.close();
  });

  /** Ten pixels in a system that the file does not name: refused with that reason, not shown in a wrong place. */
  withFile('rotated.tif', async (file) => {
    const source = await openTileFile(file);
    expect(source).toMatchObject({
      ok: false,
      error: { code: 'format-invalid', detail: expect.stringContaining('system') },
    });
  });
});

/** Mean of red, green and blue over one tile of zoom `z`, or over the quarter of a tile that shows the same ground. */
async function meanColour(
  source: TileSource,
  z: number,
  shareX: number,
  shareY: number,
  parts = 1,
): Promise<readonly number[]> {
  const fine = [shareX, shareY].map((share) => Math.floor(share * 2 ** z * parts)) as [number, number];
  const [x, y] = fine.map((each) => Math.floor(each / parts)) as [number, number];
  const read = await source.read({ z, x, y });
  if (!read.ok || read.value === null) throw new Error('there is no tile in the middle');
  const side = 256 / parts;
  const [left, top] = [(fine[0] - x * parts) * side, (fine[1] - y * parts) * side];
  const sum = [0, 0, 0];
  for (let step = 0; step < 400; step += 1) {
    const pixel = pixelOf(
      read.value,
      Math.floor(left + ((step % 20) * side) / 20),
      Math.floor(top + (Math.floor(step / 20) * side) / 20),
    );
    for (let band = 0; band < 3; band += 1) sum[band] = (sum[band] ?? 0) + (pixel[band] ?? 0) / 400;
  }
  return sum;
}
