import type { GeoTIFFImage } from 'geotiff';

/** The part of a picture of heights that is needed. */
export type HeightGrid = {
  /** In the file's unit; null outside, and where there is no data. */
  readonly at: (column: number, row: number) => number | null;
};

type Spot = readonly [column: number, row: number] | null;

/** As much is unpacked at once: a square of 4,000 pixels. */
const MOST_PIXELS = 16_000_000;
/** A block of a file that is unpacked at once may have this many bytes. */
const LARGEST_BLOCK = 96 * 1024 * 1024;

/** Reads the pixels around the spots, all at once; the words say why that is not done. */
export async function readGrid(
  image: GeoTIFFImage,
  spots: readonly Spot[],
): Promise<HeightGrid | { readonly why: string }> {
  const block = image.getTileWidth() * image.getTileHeight() * image.getBytesPerPixel();
  if (!(block <= LARGEST_BLOCK))
    return { why: 'The file is not cut into blocks, so that too much would have to be read.' };
  const window = windowAround(image, spots);
  if (window === null) return { at: () => null };
  const [left, top, right, bottom] = window;
  const width = right - left;
  if (width * (bottom - top) > MOST_PIXELS) {
    return { why: 'The positions lie so far apart that too many pixels would have to be read. Ask lawn by lawn.' };
  }
  const [values] = await image.readRasters({ window: [left, top, right, bottom], samples: [0] });
  if (values === undefined || typeof values === 'number') return { why: 'The file holds no heights.' };
  const noData = image.getGDALNoData();
  return {
    at: (column, row) => {
      if (column < left || column >= right || row < top || row >= bottom) return null;
      const value = Number(values[(row - top) * width + column - left]);
      return Number.isFinite(value) && !isNoData(value, noData) ? value : null;
    },
  };
}

/** The mark may have been written with fewer digits than a number of 32 bits has. */
function isNoData(value: number, noData: number | null): boolean {
  return noData !== null && (value === noData || Math.fround(value) === Math.fround(noData));
}

/** Left, top, right, bottom in pixels, the last two excluded; null where no spot lies on the picture. */
function windowAround(image: GeoTIFFImage, spots: readonly Spot[]): readonly [number, number, number, number] | null {
  const [width, height] = [image.getWidth(), image.getHeight()];
  let [left, top, right, bottom] = [width, height, 0, 0];
  for (const spot of spots) {
    if (spot === null) continue;
    const [column, row] = spot.map(Math.floor) as [number, number];
    if (!(column >= 0 && column < width && row >= 0 && row < height)) continue;
    left = Math.min(left, Math.max(0, column - 1));
    right = Math.max(right, Math.min(width, column + 2));
    top = Math.min(top, Math.max(0, row - 1));
    bottom = Math.max(bottom, Math.min(height, row + 2));
  }
  return right > left && bottom > top ? [left, top, right, bottom] : null;
}
