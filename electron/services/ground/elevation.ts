import { GeoTIFF, type GeoTIFFImage } from 'geotiff';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Position } from '../../../core/book/index.ts';
import type { Elevation } from '../../../core/contract/index.ts';
import { METRES_PER_FOOT } from '../../../core/units/index.ts';
import { openBoundedSource } from '../files/index.ts';
import { rasterFrame } from '../geotiff/index.ts';
import { type HeightGrid, readGrid } from './height-grid.ts';

/** 1200/3937 m (NIST, U.S. Survey Foot: Revised Unit Conversion Factors, 2023): retired, but older heights are in it. */
const METRES_PER_US_SURVEY_FOOT = 1200 / 3937;

/** EPSG codes of lengths that heights are given in. */
const UNITS: Readonly<Record<number, { readonly metres: number; readonly name: string }>> = {
  9001: { metres: 1, name: 'metres' },
  9002: { metres: METRES_PER_FOOT, name: 'international feet' },
  9003: { metres: METRES_PER_US_SURVEY_FOOT, name: 'US survey feet' },
};
const METRES = { metres: 1, name: 'metres' };

/**
 * Heights at positions out of a GeoTIFF of one band: between the middles of the four pixels around each position, weighed by
 * nearness (bilinear). Null outside the picture and where it has no data. Error `format-invalid`.
 */
export async function readElevation(
  file: string,
  where: string,
  positions: readonly Position[],
): Promise<Result<Elevation>> {
  try {
    const source = await openBoundedSource(file);
    try {
      const tiff = await GeoTIFF.fromSource(source);
      return await sample(await tiff.getImage(0), where, positions);
    } finally {
      await source.close();
    }
  } catch {
    // The package throws errors of many kinds on files that are no TIFF or are cut short.
    return refuse(where, 'The file is no TIFF file that can be read, or it is cut short.');
  }
}

async function sample(image: GeoTIFFImage, where: string, positions: readonly Position[]): Promise<Result<Elevation>> {
  if (image.getSamplesPerPixel() !== 1)
    return refuse(where, 'The file is a picture of several colours and holds no heights.');
  const placed = rasterFrame(image);
  if ('why' in placed) return refuse(where, placed.why);
  const { projection, frame } = placed;
  const spots = positions.map((position) => {
    const map = projection.fromDegrees(position);
    return map === null ? null : frame.toPixel(map[0], map[1]);
  });
  const grid = await readGrid(image, spots);
  if ('why' in grid) return refuse(where, grid.why);
  const unit = unitOf(image);
  const heightsM = spots.map((spot) => {
    const height = spot === null ? null : heightAt(grid, spot[0], spot[1]);
    return height === null ? null : height * unit.metres;
  });
  return ok({ heightsM, unit: unit.name, isUnitStated: unit.isStated, system: projection.name });
}

function unitOf(image: GeoTIFFImage): { readonly metres: number; readonly name: string; readonly isStated: boolean } {
  const stated = UNITS[Number(image.getGeoKeys()?.VerticalUnitsGeoKey)];
  return { ...(stated ?? METRES), isStated: stated !== undefined };
}

/** Near the edge and beside pixels without data, the height of the pixel itself. */
function heightAt(grid: HeightGrid, column: number, row: number): number | null {
  const own = grid.at(Math.floor(column), Math.floor(row));
  if (own === null) return null;
  const [left, top] = [Math.floor(column - 0.5), Math.floor(row - 0.5)];
  const corners = [grid.at(left, top), grid.at(left + 1, top), grid.at(left, top + 1), grid.at(left + 1, top + 1)];
  const [a, b, c, d] = corners;
  if (a == null || b == null || c == null || d == null) return own;
  const [right, down] = [column - 0.5 - left, row - 0.5 - top];
  return (a * (1 - right) + b * right) * (1 - down) + (c * (1 - right) + d * right) * down;
}

function refuse(where: string, detail: string): Result<never> {
  const hint = 'Choose a GeoTIFF of heights of one band, in State Plane, UTM or longitude and latitude.';
  return err('format-invalid', where, detail, hint);
}
