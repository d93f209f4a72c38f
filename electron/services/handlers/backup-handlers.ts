import { realpath } from 'node:fs/promises';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { OpenBook } from '../../../core/contract/index.ts';
import { describePlace } from '../files/index.ts';
import type { Client } from '../host-port.ts';
import type { Session } from '../library/index.ts';
import type { Context, HandlersOf } from './context.ts';
import { bookNow } from './keep-backup.ts';
import { openBookFile } from './open-book.ts';
import { unknownToken } from './unknown-token.ts';

export function backupHandlers(context: Context): HandlersOf<'backup.list' | 'backup.restore'> {
  const { backups, tokens } = context;
  /** Backups belong to the file itself, whatever link it was opened by. */
  const fileOf = async (token: string): Promise<string | null> => {
    const file = tokens.fileOf(token);
    return file === null ? null : realpath(file).catch(() => file);
  };
  return {
    'backup.list': async ({ token }) => {
      const file = await fileOf(token);
      return file === null ? unknownToken() : ok(await backups.list(file));
    },
    'backup.restore': async ({ token, backupId, session }, client) => {
      const file = await fileOf(token);
      if (file === null) return unknownToken();
      return context.makingTurn(() => restore(context, file, backupId, session, client));
    },
  };
}

async function restore(
  context: Context,
  file: string,
  backupId: string,
  sessionName: string | null,
  client: Client,
): Promise<Result<OpenBook>> {
  const { library } = context;
  if (sessionName !== null) {
    const found = library.find(sessionName, client.id);
    if (!found.ok) return found;
    const left = await leave(context, found.value);
    if (!left.ok) return left;
  }
  if (await library.isOpen(file)) return inUse(file);
  const restored = await context.backups.restore(file, backupId, sessionName === null);
  if (!restored.ok && sessionName === null) return restored;
  const opened = await openBookFile(context, file, client);
  return restored.ok ? opened : restored;
}

/** Closes the one session of a book, with a backup of it as it is now. */
async function leave(context: Context, session: Session): Promise<Result<true>> {
  if (context.library.sharing(session).length > 1) return inUse(session.entry.store.file);
  const kept = await context.backups.take(bookNow(session.entry));
  if (!kept.ok) return kept;
  await context.jobs.endSession(session.session);
  await context.library.close(session);
  return ok(true);
}

function inUse(file: string): Result<never> {
  const hint = 'Close the book there, then restore the backup.';
  return err('not-allowed', describePlace(file), 'Another window has this book open.', hint);
}
