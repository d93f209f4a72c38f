import { createHash } from 'node:crypto';
import { readdir, rm } from 'node:fs/promises';
import path from 'node:path';
import { setImmediate as breathe } from 'node:timers/promises';
import { ok, type Result } from '../../../core/base/index.ts';
import type { StreetsInfo, StreetsLoaded } from '../../../core/contract/index.ts';
import {
  type AddressAnswer,
  findAddress,
  indexStreets,
  readKeptStreets,
  readStreets,
  type StreetIndex,
  writeStreets,
} from '../../../core/places/index.ts';
import { writeOwn } from '../files/index.ts';
import { jsonFile } from '../settings/index.ts';

/** Street files that addresses are looked up in, kept in their small form in the program's own folder. */
export type Streets = {
  /** Takes in a file's features, as GeoJSON. A file of the same name takes the place of the older one. */
  readonly load: (name: string, collection: unknown) => Promise<Result<StreetsLoaded>>;
  readonly list: () => Promise<readonly StreetsInfo[]>;
  readonly forget: (streetsId: string) => Promise<void>;
  readonly find: (addresses: readonly string[]) => Promise<readonly AddressAnswer[]>;
};

type Loaded = { readonly info: StreetsInfo; readonly index: StreetIndex };

/** Addresses looked up before others get their turn. */
const SLICE = 400;
const NO_STREETS: AddressAnswer = {
  kind: 'not-placed',
  code: 'no-street',
  reason: 'There is no street file yet to look the address up in.',
};

/** Street files below the program's own folder; each is opened when it is first needed. */
export function createStreets(dataFolder: string): Streets {
  const folder = path.join(dataFolder, 'streets');
  const known = new Map<string, Promise<Loaded | null>>();
  const fileOf = (id: string) => path.join(folder, `${id}.json`);
  const open = (id: string): Promise<Loaded | null> => {
    const opening = known.get(id) ?? openKept(id, fileOf(id));
    known.set(id, opening);
    return opening;
  };
  const openAll = async (): Promise<readonly Loaded[]> => {
    const names = (await readdir(folder).catch(() => [])).filter((name) => /^[a-f0-9]{16}\.json$/.test(name)).sort();
    const opened = await Promise.all(names.map((name) => open(path.basename(name, '.json'))));
    return opened.filter((each) => each !== null);
  };
  return {
    load: async (name, collection) => {
      const read = readStreets(collection, name);
      if (!read.ok) return read;
      const { pieces, found, unused } = read.value;
      const id = createHash('sha256').update(name).digest('hex').slice(0, 16);
      const written = await writeOwn(fileOf(id), writeStreets(name, pieces));
      if (!written.ok) return written;
      const index = indexStreets(pieces);
      const info = infoOf(id, name, index);
      known.set(id, Promise.resolve({ info, index }));
      return ok({ ...info, found, unused });
    },
    list: async () => (await openAll()).map(({ info }) => info),
    forget: async (id) => {
      known.delete(id);
      if (/^[a-f0-9]{16}$/.test(id)) await rm(fileOf(id), { force: true }).catch(() => undefined);
    },
    find: async (addresses) => findAll(await openAll(), addresses),
  };
}

/** A kept file that cannot be read is as good as none: the street file can be loaded again. */
async function openKept(id: string, file: string): Promise<Loaded | null> {
  const kept = readKeptStreets(await jsonFile(file).read(), id);
  if (!kept.ok) return null;
  const index = indexStreets(kept.value.pieces);
  return { info: infoOf(id, kept.value.name, index), index };
}

function infoOf(id: string, name: string, index: StreetIndex): StreetsInfo {
  const streets = new Set(index.pieces.map(({ street }) => street)).size;
  return { id, name, streets, pieces: index.pieces.length };
}

async function findAll(files: readonly Loaded[], addresses: readonly string[]): Promise<readonly AddressAnswer[]> {
  const answers: AddressAnswer[] = [];
  for (const address of addresses) {
    answers.push(best(files.map(({ index }) => findAddress(index, address))));
    if (answers.length % SLICE === 0) await breathe();
  }
  return answers;
}

const RANK = { good: 0, fair: 1, poor: 2 } as const;

/** The surest place; where no file has one, the reason of the file that came nearest. */
function best(answers: readonly AddressAnswer[]): AddressAnswer {
  const rank = (answer: AddressAnswer) =>
    answer.kind === 'placed' ? RANK[answer.confidence] : answer.code === 'no-street' ? 4 : 3;
  return [...answers].sort((left, right) => rank(left) - rank(right))[0] ?? NO_STREETS;
}
