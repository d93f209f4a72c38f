import { rm } from 'node:fs/promises';
import path from 'node:path';
import { ok, type Result } from '../../../core/base/index.ts';
import type { Done, StreetsLoaded } from '../../../core/contract/index.ts';
import { readStreetFile } from '../streets/index.ts';
import type { Context, HandlersOf } from './context.ts';
import { addPicture, picturesAddress } from './picture.ts';
import { unknownToken } from './unknown-token.ts';

const DONE: Result<Done> = ok({ done: true });

type GroundChannels =
  | 'background.list'
  | 'background.open'
  | 'background.forget'
  | 'background.trouble'
  | 'picture.add'
  | 'picture.address'
  | 'places.load'
  | 'places.list'
  | 'places.forget'
  | 'places.find';

export function groundHandlers(context: Context): HandlersOf<GroundChannels> {
  const { imagery, streets, tokens, library } = context;
  return {
    'background.list': async () => ok(await imagery.list()),
    'background.open': async ({ token }) => {
      const file = tokens.fileOf(token);
      return file === null ? unknownToken() : imagery.open(file);
    },
    'background.forget': async ({ backgroundId }) => {
      await imagery.forget(backgroundId);
      return DONE;
    },
    'background.trouble': async ({ backgroundId }) => ok({ trouble: imagery.trouble(backgroundId) }),
    'picture.add': async ({ session, token }, client) => {
      const found = library.find(session, client.id);
      const file = tokens.fileOf(token);
      if (!found.ok) return found;
      if (file === null) return unknownToken();
      const added = await addPicture(found.value, file);
      if (added.ok) await dropReceived(context, file);
      return added;
    },
    'picture.address': async ({ session }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? ok({ address: picturesAddress(found.value) }) : found;
    },
    'places.load': ({ token }) => loadStreets(context, token),
    'places.list': async () => ok(await streets.list()),
    'places.forget': async ({ streetsId }) => {
      await streets.forget(streetsId);
      return DONE;
    },
    'places.find': async ({ addresses }) => ok(await streets.find(addresses)),
  };
}

async function loadStreets(context: Context, token: string): Promise<Result<StreetsLoaded>> {
  const { tokens, streets } = context;
  const file = tokens.fileOf(token);
  if (file === null) return unknownToken();
  const read = await readStreetFile(file);
  if (!read.ok) return read;
  const loaded = await streets.load(path.basename(file), read.value);
  if (loaded.ok) await dropReceived(context, file);
  return loaded;
}

/** A file that the page sent is not needed any more once its content is kept elsewhere. */
async function dropReceived({ dataFolder }: Context, file: string): Promise<void> {
  const inside = path.relative(path.join(dataFolder, 'received'), file);
  if (!inside.startsWith('..') && !path.isAbsolute(inside)) await rm(file, { force: true }).catch(() => undefined);
}
