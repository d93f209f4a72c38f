import type { Backups, BookNow } from '../backups/index.ts';
import type { OpenEntry } from '../library/index.ts';
import { faultDetail, type Log } from '../log/index.ts';
import type { Context } from './context.ts';

/** A book as the backups look at it. */
export function bookNow(entry: OpenEntry): BookNow {
  return { store: entry.store, revision: entry.revision(), properties: entry.book().properties.length };
}

/** Takes a backup where the book was edited since the last one. A failure is logged: it is no reason to keep a book from closing. */
export async function keepBackup(backups: Backups, entry: OpenEntry, log: Log): Promise<void> {
  const taken = await backups.take(bookNow(entry));
  if (!taken.ok) log('warn', 'backup', 'not taken', { code: taken.error.code });
  else if (taken.value !== null) log('info', 'backup', 'taken', { revision: taken.value.revision });
}

/** After an edit: a backup every quarter of an hour, beside the work. */
export function backUpNowAndThen({ backups, log }: Context, entry: OpenEntry): void {
  if (!backups.isDue(bookNow(entry))) return;
  keepBackup(backups, entry, log).catch((error: unknown) => log('error', 'backup', 'fault', faultDetail(error)));
}
