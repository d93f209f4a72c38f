import type { GeoTIFFImage } from 'geotiff';
import { shareToDegrees, type TileAt } from '../../../core/imagery/index.ts';
import type { GroundFrame } from './geotiff-frame.ts';

/** The picture, or a smaller copy of it. */
export type Level = {
  readonly image: GeoTIFFImage;
  /** Pixels of the whole picture that one pixel stands for, along an edge. */
  readonly reduction: number;
};

const TILE_PX = 256;
/** The ground is looked up at every sixteenth pixel, and taken as even between: off by less than 0.01 pixel at street zooms. */
const STEP_PX = 16;
const KNOTS = TILE_PX / STEP_PX + 1;
/** No tile reads more of a picture than this along an edge. */
const LARGEST_WINDOW = 2048;

type Pixel = readonly [column: number, row: number];

/** Draws one tile: red, green, blue, opacity. Null where the picture has nothing there, or the tile would need too much of it. */
export async function drawTile(
  levels: readonly Level[],
  ground: GroundFrame,
  tile: TileAt,
): Promise<Uint8Array | null> {
  const knots = knotsOf(ground, tile);
  if (knots === null) return null;
  const level = levelFor(levels, knots);
  const scaled = knots.map(([column, row]): Pixel => [column / level.reduction, row / level.reduction]);
  const window = windowOf(level.image, scaled);
  if (window === null) return null;
  const colours = await level.image.readRGB({ window: [...window], interleave: true, enableAlpha: true });
  return fill(scaled, window, colours as unknown as Uint8Array, colours.width);
}

/** The pixels of the whole picture under a grid of points of the tile; null where the system cannot show one of them. */
function knotsOf({ frame, projection }: GroundFrame, { z, x, y }: TileAt): readonly Pixel[] | null {
  const across = 2 ** z;
  const knots: Pixel[] = [];
  for (let index = 0; index < KNOTS * KNOTS; index += 1) {
    const [right, down] = [(index % KNOTS) / (KNOTS - 1), Math.floor(index / KNOTS) / (KNOTS - 1)];
    const map = projection.fromDegrees(shareToDegrees((x + right) / across, (y + down) / across));
    if (map === null) return null;
    knots.push(frame.toPixel(...map));
  }
  return knots;
}

/** The smallest copy that has a pixel for each of the tile's, judged along the tile's upper edge and its left one. */
function levelFor(levels: readonly Level[], knots: readonly Pixel[]): Level {
  const [corner = [0, 0], right = [0, 0], down = [0, 0]] = [knots[0], knots[KNOTS - 1], knots[KNOTS * (KNOTS - 1)]];
  const lengths = [right, down].map((end) => Math.hypot(end[0] - corner[0], end[1] - corner[1]) / TILE_PX);
  const wanted = Math.min(...lengths) * 1.01;
  const [first = { image: undefined as never, reduction: 1 }] = levels;
  return [...levels].reverse().find(({ reduction }) => reduction <= wanted) ?? first;
}

type PixelWindow = readonly [left: number, top: number, right: number, bottom: number];

function windowOf(image: GeoTIFFImage, knots: readonly Pixel[]): PixelWindow | null {
  const columns = knots.map(([column]) => column);
  const rows = knots.map(([, row]) => row);
  const left = Math.max(0, Math.floor(Math.min(...columns)));
  const top = Math.max(0, Math.floor(Math.min(...rows)));
  const right = Math.min(image.getWidth(), Math.ceil(Math.max(...columns)) + 1);
  const bottom = Math.min(image.getHeight(), Math.ceil(Math.max(...rows)) + 1);
  if (!(left < right && top < bottom)) return null;
  return right - left > LARGEST_WINDOW || bottom - top > LARGEST_WINDOW ? null : [left, top, right, bottom];
}

/** Takes for each pixel of the tile the picture's pixel under its middle. */
function fill(knots: readonly Pixel[], window: PixelWindow, colours: Uint8Array, widthPx: number): Uint8Array | null {
  const [left, top, right, bottom] = window;
  const samples = colours.length / ((right - left) * (bottom - top));
  const tile = new Uint8Array(TILE_PX * TILE_PX * 4);
  let drawn = 0;
  for (let index = 0; index < TILE_PX * TILE_PX; index += 1) {
    const [column, row] = pixelAt(knots, (index % TILE_PX) + 0.5, Math.floor(index / TILE_PX) + 0.5);
    if (column < left || row < top || column >= right || row >= bottom) continue;
    const from = ((Math.floor(row) - top) * widthPx + (Math.floor(column) - left)) * samples;
    for (let sample = 0; sample < 3; sample += 1) tile[index * 4 + sample] = colours[from + sample] ?? 0;
    tile[index * 4 + 3] = samples >= 4 ? (colours[from + 3] ?? 255) : 255;
    drawn += 1;
  }
  return drawn === 0 ? null : tile;
}

/** Between four knots, evenly along both edges. */
function pixelAt(knots: readonly Pixel[], x: number, y: number): Pixel {
  const [column, row] = [Math.floor(x / STEP_PX), Math.floor(y / STEP_PX)];
  const [right, down] = [x / STEP_PX - column, y / STEP_PX - row];
  const at = (index: number): Pixel => knots[index] ?? [Number.NaN, Number.NaN];
  const [a, b] = [at(row * KNOTS + column), at(row * KNOTS + column + 1)];
  const [c, d] = [at((row + 1) * KNOTS + column), at((row + 1) * KNOTS + column + 1)];
  const mix = (k: 0 | 1): number =>
    (a[k] * (1 - right) + b[k] * right) * (1 - down) + (c[k] * (1 - right) + d[k] * right) * down;
  return [mix(0), mix(1)];
}
