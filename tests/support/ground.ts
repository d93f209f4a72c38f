import type { Geometry } from 'geojson';
import type { AppError } from '../../core/base/index.ts';
import type { AreaGeometry } from '../../core/book/index.ts';
import {
  GROUND_READ_OPTIONS,
  type GroundReader,
  type GroundReadOptions,
  type GroundSource,
} from '../../core/formats/index.ts';
import { outlineArea } from '../../core/geometry/index.ts';

/** Reads a file that must be readable. */
export async function readGround(
  reader: GroundReader,
  bytes: Uint8Array,
  fileName: string,
  options: Partial<GroundReadOptions> = {},
): Promise<GroundSource> {
  const source = await reader.read(bytes, fileName, { ...GROUND_READ_OPTIONS, ...options });
  if (!source.ok) throw new Error(`${source.error.where}: ${source.error.detail}`);
  return source.value;
}

/** Reads a file that must be refused. */
export async function refuseGround(
  reader: GroundReader,
  bytes: Uint8Array,
  fileName: string,
  options: Partial<GroundReadOptions> = {},
): Promise<AppError> {
  const source = await reader.read(bytes, fileName, { ...GROUND_READ_OPTIONS, ...options });
  if (source.ok) throw new Error('the file was read');
  return source.error;
}

/** Square metres of a polygon or multi-polygon in degrees; of anything else an error. */
export function areaSqMOf(geometry: Geometry | null): number {
  if (geometry?.type !== 'Polygon' && geometry?.type !== 'MultiPolygon')
    throw new Error(`${geometry?.type} has no area`);
  const { areaSqM } = outlineArea(geometry as unknown as AreaGeometry);
  if (areaSqM === null) throw new Error('the outline has no area');
  return areaSqM;
}
