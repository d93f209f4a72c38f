import path from 'node:path';
import type { AppError } from '../../../core/base/index.ts';
import type { Background } from '../../../core/contract/index.ts';
import { readTileTemplate } from '../../../core/imagery/index.ts';
import type { TileFile } from './file-list.ts';
import type { OnlineSet } from './online.ts';
import type { TileSource } from './tile-source.ts';

/** Path of the tiles on the host's own origin; the key makes it known to the program's own page alone. */
export const TILES_PATH = '/tiles/';

function addressOf(id: string, key: string): string {
  return `${TILES_PATH}${key}/${id}/{z}/{x}/{y}`;
}

export function describeOnline(set: OnlineSet, allowed: boolean, key: string): Background {
  const { id, name, credit, template, leastZoom, mostZoom } = set;
  const read = readTileTemplate(template);
  return {
    id,
    kind: 'online',
    name,
    credit,
    asks: read.ok ? read.value.host : null,
    allowed,
    address: addressOf(id, key),
    leastZoom,
    mostZoom,
    tilePx: 256,
    bounds: null,
    fault: null,
  };
}

export function describeFile({ id }: TileFile, source: TileSource, key: string): Background {
  const { name, credit, leastZoom, mostZoom, tilePx, bounds } = source;
  const address = addressOf(id, key);
  return {
    id,
    kind: 'file',
    name,
    credit,
    asks: null,
    allowed: true,
    address,
    leastZoom,
    mostZoom,
    tilePx,
    bounds,
    fault: null,
  };
}

/** A file that cannot be shown now, with the reason. */
export function describeFault({ id, file }: TileFile, fault: AppError, key: string): Background {
  return {
    id,
    kind: 'file',
    name: path.basename(file),
    credit: '',
    asks: null,
    allowed: true,
    address: addressOf(id, key),
    leastZoom: 0,
    mostZoom: 0,
    tilePx: 256,
    bounds: null,
    fault,
  };
}
