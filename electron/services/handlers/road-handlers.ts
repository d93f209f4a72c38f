import { rm } from 'node:fs/promises';
import path from 'node:path';
import { ok, type Result } from '../../../core/base/index.ts';
import type { Done, RequestOf, RoadsFile } from '../../../core/contract/index.ts';
import { passingFolder } from '../ground/index.ts';
import type { Client } from '../host-port.ts';
import type { Session } from '../library/index.ts';
import type { BookAt } from '../roads/index.ts';
import type { Context, HandlersOf } from './context.ts';
import { unknownToken } from './unknown-token.ts';

const DONE: Result<Done> = ok({ done: true });

type RoadChannels = 'roads.status' | 'roads.import' | 'roads.cancel' | 'roads.forget' | 'roads.ways' | 'roads.learn';

export function roadHandlers(context: Context): HandlersOf<RoadChannels> {
  const { library, roads } = context;
  return {
    'roads.status': async ({ session }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? ok(await roads.status(bookAt(found.value))) : found;
    },
    'roads.import': (request, client) => importExtract(context, request, client),
    'roads.cancel': async ({ session }, client) => {
      const found = library.find(session, client.id);
      if (!found.ok) return found;
      roads.cancel(found.value.entry.store.file);
      return DONE;
    },
    'roads.forget': async ({ session }, client) => {
      const found = library.find(session, client.id);
      if (!found.ok) return found;
      await roads.forget(found.value.entry.store.file);
      return DONE;
    },
    'roads.ways': async ({ session, stops }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? ok(await roads.ways(bookAt(found.value), stops)) : found;
    },
    'roads.learn': async ({ session }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? roads.learn(bookAt(found.value)) : found;
    },
  };
}

function bookAt({ entry }: Session): BookAt {
  return { file: entry.store.file, book: entry.book() };
}

async function importExtract(
  { library, roads, tokens, dataFolder }: Context,
  { session, token }: RequestOf<'roads.import'>,
  client: Client,
): Promise<Result<RoadsFile>> {
  const found = library.find(session, client.id);
  if (!found.ok) return found;
  const extract = tokens.fileOf(token);
  if (extract === null) return unknownToken();
  const made = await roads.importFrom(found.value.entry.store.file, extract, ({ step, done, total }) =>
    client.send('roads.progress', { session, step, done, total }),
  );
  const isPassing = path.dirname(path.dirname(extract)) === passingFolder(dataFolder);
  if (isPassing) await rm(path.dirname(extract), { recursive: true, force: true }).catch(() => undefined);
  return made;
}
