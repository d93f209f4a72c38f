import { create } from 'zustand';
import type { AppError } from '../../core/base/index.ts';
import type { Backup } from '../../core/contract/index.ts';
import { momentWords } from '../format/index.ts';
import { filesWords } from '../texts/stores/index.ts';
import { showBook, useBook } from './book.ts';
import { draftSettled } from './draft.ts';
import { askHost } from './host.ts';
import { showError, showNews } from './notices.ts';
import { currentReading } from './use-format.ts';
import { openOverlay } from './view.ts';

type BackupState = {
  /** Stands for the book file whose backups are shown. */
  readonly token: string | null;
  readonly backups: readonly Backup[];
  /** Why the book itself could not be opened; null where it is open. */
  readonly because: AppError | null;
};

export const useBackups = create<BackupState>(() => ({ token: null, backups: [], because: null }));

/** Shows the backups of the open book. */
export async function showBackups(): Promise<void> {
  const { open } = useBook.getState();
  if (open === null) return;
  const backups = await askHost('backup.list', { token: open.token });
  if (backups === null) return;
  useBackups.setState({ token: open.token, backups, because: null });
  openOverlay('backups');
}

/** Failures after which the book file itself is of no use. */
const LOST: readonly string[] = ['book-damaged', 'not-a-book'];

/** Tells why a book did not open, and offers its backups where it is the file that is at fault. */
export async function bookDidNotOpen(token: string, error: AppError): Promise<void> {
  showError(error);
  if (!LOST.includes(error.code)) return;
  const backups = await askHost('backup.list', { token });
  if (backups === null || backups.length === 0) return;
  useBackups.setState({ token, backups, because: error });
  openOverlay('backups');
}

/** Puts a backup in the place of the book and opens it. */
export async function restoreBackup({ backupId, takenAt }: Backup): Promise<void> {
  const { token } = useBackups.getState();
  if (token === null) return;
  const { open } = useBook.getState();
  const session = open?.token === token ? open.session : null;
  if (session !== null) await draftSettled();
  const restored = await askHost('backup.restore', { token, backupId, session });
  // The session is closed before the file is replaced: where that failed the book is opened as it was.
  const opened = restored ?? (session === null ? null : await askHost('book.open', { token }));
  if (opened !== null) showBook(opened);
  if (restored === null) return;
  openOverlay(null);
  showNews(filesWords.backups.restored(momentWords(takenAt, currentReading())));
}
