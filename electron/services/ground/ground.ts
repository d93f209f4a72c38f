import { readdir, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Result } from '../../../core/base/index.ts';
import type { Position } from '../../../core/book/index.ts';
import type { Elevation } from '../../../core/contract/index.ts';
import type { GroundSource } from '../../../core/formats/index.ts';
import type { Client } from '../host-port.ts';
import { readElevationFile, readGroundFile } from './read-ground.ts';

/** Reads files of ground for the screens. */
export type Ground = {
  /** Progress goes to the client as 'ground.progress' events. A file that the page sent is removed when it has been read. */
  readonly read: (file: string, token: string, client: Client) => Promise<Result<GroundSource>>;
  /** Ends a reading of the client soon; it then fails with 'cancelled'. */
  readonly cancel: (token: string, client: Client) => void;
  /** Heights out of a GeoTIFF. A file that the page sent stays until the client goes: it is asked again for every lawn. */
  readonly elevation: (file: string, positions: readonly Position[], client: Client) => Promise<Result<Elevation>>;
  /** Ends the client's readings and removes what it sent. */
  readonly endClient: (clientId: string) => Promise<void>;
  readonly endAll: () => Promise<void>;
};

type Tools = {
  /** The bundled ground-worker. */
  readonly workerFile: string;
  /** Where files that pages sent lie until they have been read. */
  readonly passingFolder: string;
};

/** Folder of files that are only passing through, below the program's own folder. */
export function passingFolder(dataFolder: string): string {
  return path.join(dataFolder, 'received', 'passing');
}

/** The reader of files of ground. What pages sent long ago, in an earlier run, is removed. */
export function createGround({ workerFile, passingFolder: passing }: Tools): Ground {
  void removeOld(passing);
  const readings = new Map<string, AbortController>();
  const lent = new Map<string, Set<string>>();
  const keyOf = (token: string, client: Client): string => `${client.id} ${token}`;
  const isPassing = (file: string): boolean => path.dirname(path.dirname(file)) === passing;
  const drop = async (file: string): Promise<void> => {
    if (isPassing(file)) await rm(path.dirname(file), { recursive: true, force: true }).catch(() => undefined);
  };

  const read: Ground['read'] = async (file, token, client) => {
    const key = keyOf(token, client);
    const controller = new AbortController();
    readings.get(key)?.abort();
    readings.set(key, controller);
    try {
      return await readGroundFile(file, {
        workerFile,
        signal: controller.signal,
        onProgress: ({ step, done, total }) => client.send('ground.progress', { token, step, done, total }),
      });
    } finally {
      if (readings.get(key) === controller) readings.delete(key);
      await drop(file);
    }
  };
  return {
    read,
    cancel: (token, client) => readings.get(keyOf(token, client))?.abort(),
    elevation: (file, positions, client) => {
      if (isPassing(file)) lent.set(client.id, (lent.get(client.id) ?? new Set()).add(file));
      return readElevationFile(file, positions, { workerFile });
    },
    endClient: async (clientId) => {
      for (const [key, controller] of readings) if (key.startsWith(`${clientId} `)) controller.abort();
      const files = [...(lent.get(clientId) ?? [])];
      lent.delete(clientId);
      await Promise.all(files.map(drop));
    },
    endAll: async () => {
      for (const controller of readings.values()) controller.abort();
      await Promise.all([...lent.values()].flatMap((files) => [...files].map(drop)));
    },
  };
}

/** What a program that was ended by force left behind. Younger files may be another program's. */
const OLD_MS = 24 * 60 * 60 * 1000;

async function removeOld(folder: string): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  for (const name of names) {
    const status = await stat(path.join(folder, name)).catch(() => null);
    const isOld = status !== null && Date.now() - status.mtimeMs > OLD_MS;
    if (isOld) await rm(path.join(folder, name), { recursive: true, force: true }).catch(() => undefined);
  }
}
