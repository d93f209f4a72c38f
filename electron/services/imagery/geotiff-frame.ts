import type { GeoTIFFImage } from 'geotiff';
import { type Projection, projectionFromEpsg } from '../../../core/geometry/index.ts';
import { type DegreeBounds, zoomForPixel } from '../../../core/imagery/index.ts';

/** Where the pixels of a GeoTIFF lie: map = origin + column x (a, d) + row x (b, e). */
export type PixelFrame = {
  readonly toMap: (column: number, row: number) => readonly [x: number, y: number];
  readonly toPixel: (x: number, y: number) => readonly [column: number, row: number];
};

export type GroundFrame = {
  readonly frame: PixelFrame;
  readonly projection: Projection;
  readonly bounds: DegreeBounds;
  /** The zoom at which a tile's pixel is about one of the picture's. */
  readonly zoom: number;
};

/** Reads where a GeoTIFF lies on the earth; the words say why it cannot be found. */
export function groundFrame(image: GeoTIFFImage): GroundFrame | { readonly why: string } {
  const code = epsgCode(image);
  if (code === null) return { why: 'The picture does not name the system of its map coordinates.' };
  const reading = projectionFromEpsg(code);
  if (reading.kind === 'unknown') return { why: reading.why };
  const frame = pixelFrame(image);
  if (frame === null) return { why: 'The picture does not say where it lies.' };
  const ground = measureGround(image, frame, reading.projection);
  return ground ?? { why: 'The picture lies outside what its system of map coordinates can show.' };
}

/** 32767 stands for a system written out in the file, which is not read. */
const USER_DEFINED = 32_767;

function epsgCode(image: GeoTIFFImage): number | null {
  const keys = image.getGeoKeys();
  const codes = [keys?.ProjectedCSTypeGeoKey, keys?.GeographicTypeGeoKey].map(Number);
  return codes.find((code) => Number.isInteger(code) && code > 0 && code !== USER_DEFINED) ?? null;
}

function pixelFrame(image: GeoTIFFImage): PixelFrame | null {
  const six = transformOf(image);
  if (six === null) return null;
  const [a, b, x0, d, e, y0] = six;
  const determinant = a * e - b * d;
  if (!Number.isFinite(determinant + x0 + y0) || determinant === 0) return null;
  return {
    toMap: (column, row) => [x0 + a * column + b * row, y0 + d * column + e * row],
    toPixel: (x, y) => [(e * (x - x0) - b * (y - y0)) / determinant, (a * (y - y0) - d * (x - x0)) / determinant],
  };
}

type Six = readonly [number, number, number, number, number, number];

/** From the matrix of the file, or from its tie point and pixel size. A picture whose pixels are points lies half a pixel off. */
function transformOf(image: GeoTIFFImage): Six | null {
  const directory = image.fileDirectory;
  const matrix = directory.getValue('ModelTransformation') as ArrayLike<number> | undefined;
  const scale = directory.getValue('ModelPixelScale') as ArrayLike<number> | undefined;
  const tie = directory.getValue('ModelTiepoint') as ArrayLike<number> | undefined;
  const at = (list: ArrayLike<number>, index: number): number => list[index] ?? Number.NaN;
  const half = image.pixelIsArea() ? 0 : -0.5;
  if (matrix !== undefined && matrix.length >= 8) {
    const [a, b, d, e] = [at(matrix, 0), at(matrix, 1), at(matrix, 4), at(matrix, 5)];
    return [a, b, at(matrix, 3) + half * (a + b), d, e, at(matrix, 7) + half * (d + e)];
  }
  if (scale === undefined || tie === undefined) return null;
  const [a, e] = [at(scale, 0), -at(scale, 1)];
  return [a, 0, at(tie, 3) + (half - at(tie, 0)) * a, 0, e, at(tie, 4) + (half - at(tie, 1)) * e];
}

const EDGE_STEPS = 8;
const METRES_PER_DEGREE = 111_320;

function measureGround(image: GeoTIFFImage, frame: PixelFrame, projection: Projection): GroundFrame | null {
  const [width, height] = [image.getWidth(), image.getHeight()];
  const edge: (readonly [number, number])[] = [];
  for (let step = 0; step <= EDGE_STEPS; step += 1) {
    const [column, row] = [(width * step) / EDGE_STEPS, (height * step) / EDGE_STEPS];
    for (const corner of [
      frame.toMap(column, 0),
      frame.toMap(column, height),
      frame.toMap(0, row),
      frame.toMap(width, row),
    ]) {
      const at = projection.toDegrees(...corner);
      if (at === null) return null;
      edge.push([at[0], at[1]]);
    }
  }
  const [longitudes, latitudes] = [edge.map(([longitude]) => longitude), edge.map(([, latitude]) => latitude)];
  const bounds: DegreeBounds = [
    Math.min(...longitudes),
    Math.min(...latitudes),
    Math.max(...longitudes),
    Math.max(...latitudes),
  ];
  const middle = projection.toDegrees(...frame.toMap(width / 2, height / 2));
  const beside = projection.toDegrees(...frame.toMap(width / 2 + 1, height / 2));
  if (middle === null || beside === null) return null;
  const shrink = Math.cos((middle[1] * Math.PI) / 180);
  const pixelM = Math.hypot((beside[0] - middle[0]) * shrink, beside[1] - middle[1]) * METRES_PER_DEGREE;
  return { frame, projection, bounds, zoom: zoomForPixel(pixelM, middle[1]) };
}
