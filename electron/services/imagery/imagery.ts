import { randomBytes } from 'node:crypto';
import path from 'node:path';
import { type AppError, err, ok, type Result } from '../../../core/base/index.ts';
import type { Background, BackgroundList, Settings } from '../../../core/contract/index.ts';
import { isTile, readTileTemplate, type TileAt } from '../../../core/imagery/index.ts';
import { shortFolder } from '../files/index.ts';
import { describeFault, describeFile, describeOnline } from './describe.ts';
import { createFileList, openTileFile, type TileFile, tileFileOf } from './file-list.ts';
import { createOnlineTiles, ONLINE_SETS, type OnlineSet, OWN_SET } from './online.ts';
import { createTileCache } from './tile-cache.ts';
import { CLOSEST_ZOOM, type TileSource } from './tile-source.ts';

/** What backgrounds need of their host. */
export type ImageryOptions = {
  readonly dataFolder: string;
  readonly version: string;
  readonly settings: () => Promise<Settings>;
  readonly now: () => Date;
};

/** What lies behind the lawns on the map: what there is, and its tiles. */
export type Imagery = {
  readonly list: () => Promise<BackgroundList>;
  readonly open: (file: string) => Promise<Result<Background>>;
  readonly forget: (backgroundId: string) => Promise<void>;
  readonly trouble: (backgroundId: string) => AppError | null;
  /** A tile's bytes, null where there is nothing; fails for a background that is not there. */
  readonly tile: (backgroundId: string, tile: TileAt) => Promise<Result<Uint8Array | null>>;
  /** Part of every address of a tile, so that no page but the program's own can ask for one. */
  readonly key: string;
  readonly close: () => Promise<void>;
};

/** Fetched tiles take at most 200 MB of the disk. */
const CACHE_BYTES = 200_000_000;

/**
 * Backgrounds of the map: files that the user added, kept by their paths, and tiles of the network where that is
 * allowed.
 */
export function createImagery({ dataFolder, version, settings, now }: ImageryOptions): Imagery {
  const key = randomBytes(24).toString('base64url');
  const files = createFileList(dataFolder);
  const online = createOnlineTiles({
    cache: createTileCache(path.join(dataFolder, 'tiles'), CACHE_BYTES),
    userAgent: `Swardway/${version} (offline planner for lawn crews)`,
    now,
  });
  const troubles = new Map<string, AppError>();
  const sources = createSources();

  const readAny = async (id: string, tile: TileAt): Promise<Result<Uint8Array | null>> => {
    if (!isTile(tile, CLOSEST_ZOOM)) return unknown();
    const wishes = await settings();
    const set = onlineSets(wishes).find((each) => each.id === id);
    if (set !== undefined) return online.read(set, tile, isAllowed(set, wishes));
    const file = (await files.list()).find((each) => each.id === id);
    const source = file === undefined ? unknown() : await sources.open(file);
    return source.ok ? source.value.read(tile) : source;
  };
  return {
    key,
    list: async () => {
      const wishes = await settings();
      const sets = onlineSets(wishes).map((set) => describeOnline(set, isAllowed(set, wishes), key));
      const opened = (await files.list()).map(async (file) => {
        const source = await sources.open(file);
        return source.ok ? describeFile(file, source.value, key) : describeFault(file, source.error, key);
      });
      return { backgrounds: [...sets, ...(await Promise.all(opened))], folder: shortFolder(files.folder) };
    },
    open: async (file) => {
      const named = tileFileOf(file);
      await sources.forget(named.id);
      const source = await sources.open(named);
      if (!source.ok) return source;
      await files.add(file);
      return ok(describeFile(named, source.value, key));
    },
    forget: async (id) => {
      await files.remove(id);
      await sources.forget(id);
    },
    trouble: (id) => troubles.get(id) ?? null,
    tile: async (id, tile) => {
      const read = await readAny(id, tile);
      if (read.ok) troubles.delete(id);
      else troubles.set(id, read.error);
      return read;
    },
    close: sources.closeAll,
  };
}

function unknown(): Result<never> {
  return err('not-allowed', 'background', 'There is no such background.', 'Choose another one.');
}

function onlineSets({ ownTiles }: Settings): readonly OnlineSet[] {
  if (!readTileTemplate(ownTiles.address).ok) return ONLINE_SETS;
  const { address, credit } = ownTiles;
  return [...ONLINE_SETS, { id: OWN_SET, name: 'My own tiles', credit, template: address, leastZoom: 0, mostZoom: 20 }];
}

/** The network is on, and the user has said yes to this very machine. */
function isAllowed({ template }: OnlineSet, { network, networkHosts }: Settings): boolean {
  const read = readTileTemplate(template);
  return network === 'allowed' && read.ok && networkHosts.includes(read.value.host);
}

/** Files of tiles, each opened once when it is first looked at. A failed opening is tried again the next time. */
function createSources() {
  const open = new Map<string, Promise<Result<TileSource>>>();
  const forget = async (id: string): Promise<void> => {
    const source = await open.get(id);
    open.delete(id);
    if (source?.ok) await source.value.close();
  };
  return {
    open: async ({ id, file }: TileFile): Promise<Result<TileSource>> => {
      const opening = open.get(id) ?? openTileFile(file);
      open.set(id, opening);
      const source = await opening;
      if (!source.ok) open.delete(id);
      return source;
    },
    forget,
    closeAll: async (): Promise<void> => {
      await Promise.all([...open.keys()].map(forget));
    },
  };
}
