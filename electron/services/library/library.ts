import { randomBytes } from 'node:crypto';
import { realpath } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import type { OpenBook } from '../../../core/contract/index.ts';
import { type FileTokens, fileNameFrom, shortFolder } from '../files/index.ts';
import { createStoreFile, openStore } from '../store/index.ts';
import { createEntry, type OpenEntry } from './open-entry.ts';

/** What the names of book files end with. */
export const BOOK_ENDING = '.swardway';

/** A session and the book behind it. */
export type Session = { readonly session: string; readonly clientId: string; readonly entry: OpenEntry };

/** The books that are open, and who uses them. One file is opened once, whatever the number of windows. */
export type Library = {
  readonly open: (file: string, clientId: string) => Promise<Result<Session>>;
  /** Fails with 'not-allowed' for a session that this client did not open. */
  readonly find: (session: string, clientId: string) => Result<Session>;
  /** Every session of the same book, this one included. */
  readonly sharing: (session: Session) => readonly Session[];
  readonly sessions: () => readonly Session[];
  readonly close: (session: Session) => Promise<void>;
  readonly closeClient: (clientId: string) => Promise<void>;
  readonly closeAll: () => Promise<void>;
  /** Whether a file is open here, or still being closed. */
  readonly isOpen: (file: string) => Promise<boolean>;
};

/** @param beforeClosing what is done with a book when the last window leaves it, before its file is closed */
export function createLibrary(now: () => Date, beforeClosing: (entry: OpenEntry) => Promise<void>): Library {
  const entries = new Map<string, Promise<Result<OpenEntry>>>();
  const sessions = new Map<string, Session>();
  const closing = new Map<string, Promise<void>>();

  const entryOf = (file: string): Promise<Result<OpenEntry>> => {
    const known = entries.get(file);
    if (known !== undefined) return known;
    const opening = open(file);
    entries.set(file, opening);
    return opening;
  };
  const open = async (file: string): Promise<Result<OpenEntry>> => {
    await closing.get(file);
    const store = await openStore(file);
    if (store.ok) return ok(createEntry(store.value, now));
    entries.delete(file);
    return store;
  };
  /** Closing is asked for from several sides at the end (a window goes, the program ends): each waits for the one that does it. */
  const close = async (session: Session): Promise<void> => {
    const { file } = session.entry.store;
    const wasOpen = sessions.delete(session.session);
    if (wasOpen && ![...sessions.values()].some(({ entry }) => entry === session.entry)) {
      entries.delete(file);
      const ending = beforeClosing(session.entry)
        .then(() => session.entry.close())
        .finally(() => closing.delete(file));
      closing.set(file, ending);
    }
    await closing.get(file);
  };
  const closeThose = async (which: (session: Session) => boolean): Promise<void> => {
    await Promise.all([...sessions.values()].filter(which).map(close));
  };

  return {
    open: async (file, clientId) => {
      const entry = await entryOf(await realName(file));
      if (!entry.ok) return entry;
      const session: Session = { session: randomBytes(12).toString('base64url'), clientId, entry: entry.value };
      sessions.set(session.session, session);
      return ok(session);
    },
    find: (name, clientId) => {
      const session = sessions.get(name);
      return session?.clientId === clientId ? ok(session) : notOpen();
    },
    sharing: ({ entry }) => [...sessions.values()].filter((other) => other.entry === entry),
    sessions: () => [...sessions.values()],
    close,
    closeClient: (clientId) => closeThose((session) => session.clientId === clientId),
    closeAll: async () => {
      await closeThose(() => true);
      await Promise.all(closing.values());
    },
    isOpen: async (file) => {
      const real = await realName(file);
      await closing.get(real);
      return entries.has(real);
    },
  };
}

const realName = (file: string): Promise<string> => realpath(file).catch(() => path.resolve(file));

function notOpen(): Result<never> {
  return err('not-allowed', 'session', 'This book is not open in this window.', 'Open the book again.');
}

/** What a screen gets to know of a session. */
export function describeSession({ session, entry }: Session, tokens: FileTokens): OpenBook {
  const { file, readOnlyBecause, remark } = entry.store;
  return {
    session,
    token: tokens.give(file),
    revision: entry.revision(),
    book: entry.book(),
    issues: entry.issues,
    plans: entry.plans(),
    draft: entry.draft(),
    fileName: path.basename(file),
    place: shortFolder(path.dirname(file)),
    savedAt: entry.savedAt(),
    readOnlyBecause,
    remark,
  };
}

/** Writes a book into a new file of the folder, named after its title; a number is added where the name is taken. */
export async function storeNewBook(folder: string, title: string, book: Book): Promise<Result<string>> {
  const base = fileNameFrom(title);
  for (let number = 1; number < 1000; number += 1) {
    const file = path.join(folder, `${number === 1 ? base : `${base}-${number}`}${BOOK_ENDING}`);
    const made = await createStoreFile(file, book);
    if (made.ok) return ok(file);
    if (made.error.code !== 'not-allowed') return made;
  }
  return err('not-allowed', shortFolder(folder), 'A thousand books have this name.', 'Give the book another name.');
}
