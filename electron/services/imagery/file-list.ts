import { createHash } from 'node:crypto';
import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import * as v from 'valibot';
import { err, type Result } from '../../../core/base/index.ts';
import { describePlace, fileFailure, isFileError } from '../files/index.ts';
import { jsonFile } from '../settings/index.ts';
import { openGeotiff } from './geotiff.ts';
import { openMbtiles } from './mbtiles.ts';
import { openPmtiles } from './pmtiles.ts';
import type { TileSource } from './tile-source.ts';

/** The files of tiles that the user chose, and those that lie in the program's own folder. */
export type FileList = {
  /** Files in it are listed without being chosen. */
  readonly folder: string;
  readonly list: () => Promise<readonly TileFile[]>;
  readonly add: (file: string) => Promise<void>;
  readonly remove: (id: string) => Promise<void>;
};
export type TileFile = { readonly id: string; readonly file: string };

const OPENERS: Readonly<Record<string, (file: string) => Promise<Result<TileSource>>>> = {
  '.mbtiles': openMbtiles,
  '.pmtiles': openPmtiles,
  '.tif': openGeotiff,
  '.tiff': openGeotiff,
};
const listSchema = v.array(v.string());

/** The same file has the same id on every run, so that a setting can name it. */
export function tileFileOf(file: string): TileFile {
  const id = `file-${createHash('sha256').update(file).digest('hex').slice(0, 16)}`;
  return { id, file };
}

export function createFileList(dataFolder: string): FileList {
  const kept = jsonFile(path.join(dataFolder, 'backgrounds.json'));
  const folder = path.join(dataFolder, 'backgrounds');
  const chosen = async (): Promise<readonly string[]> => {
    const parsed = v.safeParse(listSchema, await kept.read());
    return parsed.success ? parsed.output : [];
  };
  return {
    folder,
    list: async () => {
      const own = (await readdir(folder).catch(() => [])).filter(isTileFile).map((name) => path.join(folder, name));
      return [...new Set([...(await chosen()), ...own.sort()])].map(tileFileOf);
    },
    add: async (file) => {
      if (path.dirname(file) === folder) return;
      await kept.write([...new Set([...(await chosen()), file])]);
    },
    remove: async (id) => {
      await kept.write((await chosen()).filter((file) => tileFileOf(file).id !== id));
    },
  };
}

function isTileFile(name: string): boolean {
  return OPENERS[path.extname(name).toLowerCase()] !== undefined;
}

/** Opens a file by its ending. Fails as the file system does, or with 'format-unknown', 'format-invalid'. */
export async function openTileFile(file: string): Promise<Result<TileSource>> {
  const opener = OPENERS[path.extname(file).toLowerCase()];
  if (opener === undefined) {
    const detail = 'This is none of the files that can lie behind the map.';
    return err('format-unknown', describePlace(file), detail, 'Choose an MBTiles, PMTiles or GeoTIFF file.');
  }
  try {
    if (!(await stat(file)).isFile())
      return err('file-not-readable', describePlace(file), 'This is a folder.', 'Choose a file.');
    return await opener(file);
  } catch (error) {
    if (!isFileError(error)) throw error;
    return fileFailure(error, file);
  }
}
