import { createHash } from 'node:crypto';
import { err, ok, type Result } from '../../../core/base/index.ts';
import { readTileTemplate, type TileAt, type TileTemplate } from '../../../core/imagery/index.ts';
import { fetchTile } from './fetch-tile.ts';
import type { TileCache } from './tile-cache.ts';

/** A set of tiles on another machine. */
export type OnlineSet = {
  readonly id: string;
  readonly name: string;
  readonly credit: string;
  readonly template: string;
  readonly leastZoom: number;
  readonly mostZoom: number;
};

/**
 * Aerial pictures of the US Geological Survey's National Map: public domain, acknowledgement asked for, no key
 * (basemap.nationalmap.gov, USGSImageryOnly; columns come last in its addresses). Streets by OpenStreetMap's own server, under
 * its tile usage policy of 2025: attribution, a User-Agent of one's own, tiles kept for 7 days and more, none fetched ahead.
 */
export const ONLINE_SETS: readonly OnlineSet[] = [
  {
    id: 'aerial',
    name: 'Aerial pictures (United States)',
    credit: 'U.S. Geological Survey, The National Map',
    template: 'https://basemap.nationalmap.gov/arcgis/rest/services/USGSImageryOnly/MapServer/tile/{z}/{y}/{x}',
    leastZoom: 3,
    mostZoom: 20,
  },
  {
    id: 'streets',
    name: 'Streets (OpenStreetMap)',
    credit: '(c) OpenStreetMap contributors, openstreetmap.org/copyright',
    template: 'https://tile.openstreetmap.org/{z}/{x}/{y}.png',
    leastZoom: 3,
    mostZoom: 19,
  },
];
export const OWN_SET = 'own';

/** Tiles are fetched anew after 30 days; the policies ask for 7 at least. */
const FRESH_MS = 30 * 24 * 3600 * 1000;
const LIMIT_MS = 15_000;
/** Requests to one machine at the same time. */
const MOST_AT_ONCE = 4;

export type OnlineTiles = {
  /** A tile from the folder, or from the other machine where that is allowed. Never rejects. */
  readonly read: (set: OnlineSet, tile: TileAt, allowed: boolean) => Promise<Result<Uint8Array>>;
};

type Parts = { readonly cache: TileCache; readonly userAgent: string; readonly now: () => Date };

export function createOnlineTiles({ cache, userAgent, now }: Parts): OnlineTiles {
  const underWay = new Map<string, Promise<Result<Uint8Array | null>>>();
  const inTurn = createGate(MOST_AT_ONCE);
  const fetchAndKeep = async (name: string, template: TileTemplate, tile: TileAt) => {
    const { origin } = template;
    const address = template.addressOf(tile);
    const fetched = await inTurn(() => fetchTile({ address, origin, userAgent, limitMs: LIMIT_MS }));
    if (fetched.ok && fetched.value !== null) await cache.keep(name, tile, fetched.value, now());
    return fetched;
  };
  return {
    read: async (set, tile, allowed) => {
      const template = readTileTemplate(set.template);
      if (!template.ok) return template;
      const name = folderOf(set);
      const known = await cache.read(name, tile);
      if (known !== null && now().getTime() - known.fetchedAt.getTime() < FRESH_MS) return ok(known.bytes);
      if (!allowed) return known === null ? isOff(template.value.host) : ok(known.bytes);
      const key = `${name} ${tile.z} ${tile.x} ${tile.y}`;
      const running = underWay.get(key) ?? fetchAndKeep(name, template.value, tile).finally(() => underWay.delete(key));
      underWay.set(key, running);
      const fetched = await running;
      if (fetched.ok && fetched.value !== null) return ok(fetched.value);
      // An old tile is better than none.
      if (known !== null) return ok(known.bytes);
      return fetched.ok ? hasNone(template.value.host) : fetched;
    },
  };
}

/** Tiles of one address are kept together, apart from those of any other. */
function folderOf({ template }: OnlineSet): string {
  return createHash('sha256').update(template).digest('hex').slice(0, 16);
}

function isOff(host: string): Result<never> {
  const detail = `The network is off, and this part of the map was never fetched from ${host}.`;
  return err('not-available', host, detail, 'Allow the network for this background, or open a file of tiles.');
}

/** A blank square would look like a fault of the program, or like bare ground. */
function hasNone(host: string): Result<never> {
  const detail = 'It has no picture of this ground at this scale.';
  return err('not-available', host, detail, 'Go farther out, or choose another background.');
}

/** Runs at most so many pieces of work at once; the others wait in line. */
function createGate(most: number): <T>(work: () => Promise<T>) => Promise<T> {
  let running = 0;
  const waiting: (() => void)[] = [];
  return async (work) => {
    if (running >= most) await new Promise<void>((go) => waiting.push(go));
    else running += 1;
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      if (next === undefined) running -= 1;
      else next();
    }
  };
}
