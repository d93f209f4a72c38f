import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { ok, type Result } from '../../../core/base/index.ts';
import { readJson } from '../../../core/book/index.ts';
import { GROUND_READ_OPTIONS, shapefileReader } from '../../../core/formats/index.ts';
import { decodeText, describePlace, fileFailure, isFileError, LARGEST_FILE, tooLarge } from '../files/index.ts';

/** A county has some 100,000 pieces of street; the tables beside them are wide. */
const LIMITS = {
  ...GROUND_READ_OPTIONS.limits,
  fileBytes: LARGEST_FILE,
  unpackedBytes: 512 * 1024 * 1024,
  features: 500_000,
  positions: 10_000_000,
};

/**
 * The features of a street file: GeoJSON, or a Shapefile in a ZIP archive turned into the same. Fails as the file system and the
 * readers do; what the features say is looked at by core/places.
 */
export async function readStreetFile(file: string): Promise<Result<unknown>> {
  const where = describePlace(file);
  try {
    const { size } = await stat(file);
    if (size > LARGEST_FILE) return tooLarge(where, size);
    const bytes = await readFile(file);
    if (shapefileReader.looksLike(bytes, path.basename(file))) return await readShapes(bytes, path.basename(file));
    const text = decodeText(bytes, where);
    return text.ok ? readJson(text.value, where) : text;
  } catch (error) {
    if (!isFileError(error)) throw error;
    return fileFailure(error, file);
  }
}

async function readShapes(bytes: Uint8Array, name: string): Promise<Result<unknown>> {
  const source = await shapefileReader.read(bytes, name, { ...GROUND_READ_OPTIONS, limits: LIMITS });
  if (!source.ok) return source;
  const features = source.value.layers
    .flatMap((layer) => layer.features)
    .map(({ geometry, attributes }) => ({ type: 'Feature', geometry, properties: attributes }));
  return ok({ type: 'FeatureCollection', features });
}
