import type { GeoTIFFImage } from 'geotiff';
import { type Projection, projectionFromEpsg } from '../../../core/geometry/index.ts';

/** Where the pixels of a GeoTIFF lie: columns and rows count from the outer corner of the first pixel. */
export type PixelFrame = {
  readonly toMap: (column: number, row: number) => readonly [x: number, y: number];
  readonly toPixel: (x: number, y: number) => readonly [column: number, row: number];
};

/** The coordinate system of a GeoTIFF, and where its pixels lie in it. */
export type RasterFrame = { readonly projection: Projection; readonly frame: PixelFrame };

/** 32767 stands for a system written out in the file, which is not read (OGC 19-008, clause 7.4). */
const USER_DEFINED = 32_767;

/** Reads from a GeoTIFF where it lies (OGC 19-008); the words say why that cannot be found out. */
export function rasterFrame(image: GeoTIFFImage): RasterFrame | { readonly why: string } {
  const code = systemCode(image);
  if (code === null) return { why: 'The file does not name the system of its map coordinates by an EPSG code.' };
  const reading = projectionFromEpsg(code);
  if (reading.kind === 'unknown') return { why: reading.why };
  const six = matrixOf(image);
  if (six === null) return { why: 'The file does not say where its pixels lie.' };
  const [a, b, x0, d, e, y0] = six;
  const determinant = a * e - b * d;
  if (!Number.isFinite(determinant + x0 + y0) || determinant === 0)
    return { why: 'The place of the pixels makes no sense.' };
  const frame: PixelFrame = {
    toMap: (column, row) => [x0 + a * column + b * row, y0 + d * column + e * row],
    toPixel: (x, y) => [(e * (x - x0) - b * (y - y0)) / determinant, (a * (y - y0) - d * (x - x0)) / determinant],
  };
  return { projection: reading.projection, frame };
}

function systemCode(image: GeoTIFFImage): number | null {
  const keys = image.getGeoKeys();
  const codes = [keys?.ProjectedCSTypeGeoKey, keys?.GeographicTypeGeoKey].map(Number);
  return codes.find((code) => Number.isInteger(code) && code > 0 && code !== USER_DEFINED) ?? null;
}

type Six = readonly [a: number, b: number, x0: number, d: number, e: number, y0: number];

/** The matrix of a turned picture, or one made of the tie point and the size of the pixels (OGC 19-008, annex B.6). */
function matrixOf(image: GeoTIFFImage): Six | null {
  const list = (name: 'ModelTransformation' | 'ModelPixelScale' | 'ModelTiepoint'): readonly number[] =>
    Array.from((image.fileDirectory.getValue(name) as ArrayLike<number> | undefined) ?? [], Number);
  // Where pixels stand for points, the matrix leads to their middle instead of their corner.
  const shift = image.pixelIsArea() ? 0 : -0.5;
  const [a, b, , x0, d, e, , y0] = list('ModelTransformation');
  if (
    a !== undefined &&
    b !== undefined &&
    x0 !== undefined &&
    d !== undefined &&
    e !== undefined &&
    y0 !== undefined
  ) {
    return [a, b, x0 + shift * (a + b), d, e, y0 + shift * (d + e)];
  }
  const [width, height] = list('ModelPixelScale');
  const [column, row, , x, y] = list('ModelTiepoint');
  if (width === undefined || height === undefined || column === undefined || row === undefined) return null;
  if (x === undefined || y === undefined) return null;
  return [width, 0, x + (shift - column) * width, 0, -height, y - (shift - row) * height];
}
