import path from 'node:path';
import type { Result } from '../../../core/base/index.ts';
import { type Position, readJson } from '../../../core/book/index.ts';
import type { GroundSource } from '../../../core/formats/index.ts';
import { findAddress, indexStreets, readStreets } from '../../../core/places/index.ts';
import { readText } from '../../services/files/index.ts';
import { readGroundFile } from '../../services/ground/index.ts';
import type { World } from '../command.ts';

const WORKER = 'ground-worker.cjs';

/** Everything that a file of ground holds, in any format. Control-C ends the reading. Errors: those of the readers. */
export async function readGround(file: string, world: World): Promise<Result<GroundSource>> {
  const controller = new AbortController();
  const forget = world.onInterrupt(() => controller.abort());
  try {
    return await readGroundFile(file, {
      workerFile: path.join(world.bundleFolder, WORKER),
      signal: controller.signal,
    });
  } finally {
    forget();
  }
}

/** A finder of places by the address ranges of a street file (GeoJSON). Errors: the file cannot be read, or has no ranges. */
export async function readStreetFile(file: string): Promise<Result<(address: string) => Position | null>> {
  const text = await readText(file);
  if (!text.ok) return text;
  const where = path.basename(file);
  const json = readJson(text.value, where);
  if (!json.ok) return json;
  const streets = readStreets(json.value, where);
  if (!streets.ok) return streets;
  const index = indexStreets(streets.value.pieces);
  const find = (address: string): Position | null => {
    const answer = findAddress(index, address);
    return answer.kind === 'placed' ? answer.at : null;
  };
  return { ok: true, value: find };
}
