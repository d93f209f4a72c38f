import path from 'node:path';
import { GeoTIFF, type GeoTIFFImage } from 'geotiff';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { TileAt } from '../../../core/imagery/index.ts';
import { describePlace, openBoundedSource } from '../files/index.ts';
import { type GroundFrame, groundFrame } from './geotiff-frame.ts';
import { drawTile, type Level } from './geotiff-tile.ts';
import { writePng } from './png.ts';
import { badFile, CLOSEST_ZOOM, soundBounds, type TileSource } from './tile-source.ts';

/** A block of a file that is unpacked at once may have this many samples: 96 MiB of bytes. */
const LARGEST_BLOCK = 96 * 1024 * 1024;
/** Zooms that a picture without smaller copies is shown at below its own: a tile then reads 1,024 x 1,024 pixels. */
const ZOOMS_BELOW = 2;

/**
 * Opens a GeoTIFF picture (OGC 19-008, 8 bits for each colour) whose system of map coordinates is known. Tiles are drawn from
 * it as they are asked for, from the smaller copies in the file where it has them. Fails with 'format-invalid'.
 */
export async function openGeotiff(file: string): Promise<Result<TileSource>> {
  const where = describePlace(file);
  let tiff: GeoTIFF;
  try {
    tiff = await openTiff(file);
  } catch {
    return badFile(where, 'The file is no TIFF file.');
  }
  const close = async (): Promise<void> => {
    await tiff.close();
  };
  try {
    const source = await describe(tiff, where, path.basename(file), close);
    if (!source.ok) await close();
    return source;
  } catch {
    await close();
    return badFile(where, 'The file is no TIFF file that can be read, or it is cut short.');
  }
}

/** A damaged file asks for gigabytes; the source makes no room for what lies outside the file. */
async function openTiff(file: string): Promise<GeoTIFF> {
  const source = await openBoundedSource(file);
  try {
    return await GeoTIFF.fromSource(source);
  } catch (error) {
    await source.close();
    throw error;
  }
}

async function describe(
  tiff: GeoTIFF,
  where: string,
  fileName: string,
  close: () => Promise<void>,
): Promise<Result<TileSource>> {
  const image = await tiff.getImage(0);
  const why = whyNoPicture(image);
  if (why !== null) return badFile(where, why);
  const ground = groundFrame(image);
  if ('why' in ground) return badFile(where, ground.why);
  const levels = await levelsOf(tiff, image);
  const most = Math.min(CLOSEST_ZOOM, Math.max(0, ground.zoom));
  const spare = Math.floor(Math.log2(Math.max(...levels.map(({ reduction }) => reduction))));
  return ok({
    name: fileName,
    credit: '',
    leastZoom: Math.max(0, most - spare - ZOOMS_BELOW),
    mostZoom: most,
    tilePx: 256,
    bounds: soundBounds(ground.bounds),
    read: (tile) => readTile(levels, ground, where, tile),
    close,
  });
}

function whyNoPicture(image: GeoTIFFImage): string | null {
  const samples = image.getSamplesPerPixel();
  const isBytes = Array.from({ length: samples }, (_, index) => image.getBitsPerSample(index)).every(
    (bits) => bits === 8,
  );
  if (!isBytes || image.getSampleFormat() !== 1)
    return 'It holds figures, for instance heights, and no picture of 8 bits.';
  const block = image.getBlockWidth() * image.getTileHeight() * samples;
  return block > LARGEST_BLOCK
    ? 'It is not cut into blocks, so that too much of it would have to be read at once.'
    : null;
}

/** The picture and its smaller copies, largest first. Masks and other pictures in the file are left out. */
async function levelsOf(tiff: GeoTIFF, first: GeoTIFFImage): Promise<readonly Level[]> {
  const levels: Level[] = [{ image: first, reduction: 1 }];
  const count = Math.min(await tiff.getImageCount(), 40);
  for (let index = 1; index < count; index += 1) {
    const image = await tiff.getImage(index);
    const reduction = first.getWidth() / image.getWidth();
    const kind = Number(image.fileDirectory.getValue('NewSubfileType') ?? 0);
    const isSame = image.getSamplesPerPixel() === first.getSamplesPerPixel() && image.getBitsPerSample() === 8;
    if (kind === 1 && isSame && reduction > (levels.at(-1)?.reduction ?? 1)) levels.push({ image, reduction });
  }
  return levels;
}

async function readTile(
  levels: readonly Level[],
  ground: GroundFrame,
  where: string,
  tile: TileAt,
): Promise<Result<Uint8Array | null>> {
  try {
    const pixels = await drawTile(levels, ground, tile);
    return ok(pixels === null ? null : await writePng(pixels, 256, 256));
  } catch {
    return err(
      'file-not-readable',
      where,
      'A part of the picture could not be read.',
      'Check the file; it may be cut short.',
    );
  }
}
