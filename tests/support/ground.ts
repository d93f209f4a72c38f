import type { AppError } from '../../core/base/index.ts';
import {
  GROUND_READ_OPTIONS,
  type GroundReader,
  type GroundReadOptions,
  type GroundSource,
} from '../../core/formats/index.ts';

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
