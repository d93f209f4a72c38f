import { mkdtemp, readFile, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ok, type Result } from '../../../core/base/index.ts';
import { emptyBook, writeBook } from '../../../core/book/index.ts';
import type { Done, RecentBook, Saved, WrittenFile } from '../../../core/contract/index.ts';
import { fileNameFrom, shortFolder } from '../files/index.ts';
import type { Client } from '../host-port.ts';
import { BOOK_ENDING, describeSession, type Session } from '../library/index.ts';
import { createStoreFile } from '../store/index.ts';
import type { Context, HandlersOf } from './context.ts';
import { deliver, handToPage } from './deliver.ts';
import { backUpNowAndThen } from './keep-backup.ts';
import { newBookFile, openAnyFile, openBookFile, openSample } from './open-book.ts';
import { unknownToken } from './unknown-token.ts';

const DONE: Result<Done> = ok({ done: true });

type BookChannels =
  | 'book.recent'
  | 'book.forget'
  | 'book.create'
  | 'book.openSample'
  | 'book.open'
  | 'book.read'
  | 'book.apply'
  | 'book.saveCopy'
  | 'book.close';

export function bookHandlers(context: Context): HandlersOf<BookChannels> {
  const { library, tokens, recent } = context;
  return {
    'book.recent': async () => ok(await listRecent(context)),
    'book.forget': async ({ token }) => {
      const file = tokens.fileOf(token);
      if (file === null) return unknownToken();
      await recent.forget(file);
      return DONE;
    },
    'book.create': ({ name }, client) => createBook(context, name, client),
    'book.openSample': ({ sampleId }, client) => openSample(context, sampleId, client),
    'book.open': async ({ token }, client) => {
      const file = tokens.fileOf(token);
      return file === null ? unknownToken() : openAnyFile(context, file, client);
    },
    'book.read': async ({ session }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? ok(describeSession(found.value, tokens)) : found;
    },
    'book.apply': async ({ session, action, baseRevision }, client) => {
      const found = library.find(session, client.id);
      if (!found.ok) return found;
      const saved = await found.value.entry.apply(action, baseRevision);
      if (saved.ok) {
        tellSaved(context, found.value, saved.value, client);
        backUpNowAndThen(context, found.value.entry);
      }
      return saved;
    },
    'book.saveCopy': async ({ session, as }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? saveCopy(context, found.value, as, client) : found;
    },
    'book.close': async ({ session }, client) => {
      const found = library.find(session, client.id);
      if (!found.ok) return found;
      await context.jobs.endSession(session);
      await library.close(found.value);
      context.roads.keepOnly(library.sessions().map((each) => each.entry.store.file));
      return DONE;
    },
  };
}

/** Tells the window that made the edit that it is stored, and every other window of the book that it has changed. */
function tellSaved(context: Context, session: Session, saved: Saved, client: Client): void {
  client.send('book.saved', { session: session.session, ...saved });
  for (const other of context.library.sharing(session)) {
    if (other.session === session.session) continue;
    context.clientOf(other.clientId)?.send('book.changed', { session: other.session, revision: saved.revision });
  }
}

async function listRecent({ recent, tokens }: Context): Promise<readonly RecentBook[]> {
  return Promise.all(
    (await recent.list()).map(async ({ file, name, openedAt }) => ({
      token: tokens.give(file),
      name,
      fileName: path.basename(file),
      place: shortFolder(path.dirname(file)),
      openedAt,
      missing: (await stat(file).catch(() => null)) === null,
    })),
  );
}

async function createBook(
  context: Context,
  name: string,
  client: Client,
): ReturnType<HandlersOf<'book.create'>['book.create']> {
  const { units } = await context.settings.read();
  const book = { ...emptyBook(fileNameFrom(name), name), units };
  const target = await context.port.chooseTarget(client, `${fileNameFrom(name)}${BOOK_ENDING}`);
  if (target.kind === 'cancelled') return ok(target);
  if (target.kind === 'path') {
    const made = await createStoreFile(target.file, book, true);
    return made.ok ? openBookFile(context, target.file, client) : made;
  }
  const file = await newBookFile(context, name, book);
  return file.ok ? openBookFile(context, file.value, client) : file;
}

async function saveCopy(
  context: Context,
  { entry }: Session,
  as: 'book' | 'json',
  client: Client,
): Promise<Result<WrittenFile>> {
  const name = fileNameFrom(entry.book().name);
  if (as === 'json') {
    return deliver(context, client, `${name}.json`, () => ok(Buffer.from(writeBook(entry.book()))));
  }
  const fileName = `${name}${BOOK_ENDING}`;
  const target = await context.port.chooseTarget(client, fileName);
  if (target.kind === 'cancelled') return ok(target);
  if (target.kind === 'path') {
    const copied = await entry.store.copyTo(target.file);
    return copied.ok ? ok({ kind: 'saved', name: path.basename(target.file) }) : copied;
  }
  return handToPage(fileName, async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'swardway-'));
    try {
      const file = path.join(folder, `copy${BOOK_ENDING}`);
      const copied = await entry.store.copyTo(file);
      return copied.ok ? ok(await readFile(file)) : copied;
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  });
}
