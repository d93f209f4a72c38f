import { create } from 'zustand';
import type { AppError, Issue, Result } from '../../core/base/index.ts';
import type { Book } from '../../core/book/index.ts';
import type { OpenBook } from '../../core/contract/index.ts';
import {
  type Action,
  applyAction,
  type History,
  NO_HISTORY,
  remember,
  stepBack,
  stepForward,
  takesNothingBack,
} from '../../core/edit/index.ts';
import { todayHere } from '../format/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { draftSettled, startDrafts } from './draft.ts';
import { askHost, callHost } from './host.ts';
import { keepTotals } from './keep-totals.ts';
import { say, showError, showNews, withdrawUndo } from './notices.ts';
import { startPlans } from './plans.ts';
import { rememberBook } from './remembered.ts';
import { clearSelection } from './selection.ts';

/** How the newest edit stands: on disk, on its way, or refused by the host and kept in memory. */
export type SaveState =
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  | { readonly kind: 'failed'; readonly error: AppError };

type OpenState = {
  readonly session: string;
  /** Opens the same book again. */
  readonly token: string;
  readonly fileName: string;
  readonly place: string;
  readonly book: Book;
  readonly revision: number;
  readonly savedAt: string | null;
  readonly readOnlyBecause: string | null;
  readonly issues: readonly Issue[];
};

type BookState = {
  readonly open: OpenState | null;
  readonly history: History;
  readonly save: SaveState;
};

export const useBook = create<BookState>(() => ({ open: null, history: NO_HISTORY, save: { kind: 'saved' } }));

/** Edits that the host has not confirmed, oldest first. */
let waiting: Action[] = [];
let sending = false;

/** Takes a freshly opened book in; whatever was open before is closed at the host. */
export function showBook(opened: OpenBook): void {
  const before = useBook.getState().open;
  if (before !== null && before.session !== opened.session) {
    callHost('book.close', { session: before.session }).catch(() => undefined);
  }
  waiting = [];
  clearSelection();
  rememberBook(opened.token);
  const { plans, draft, remark, ...open } = opened;
  useBook.setState({ open, history: NO_HISTORY, save: { kind: 'saved' } });
  startPlans(opened.session, plans);
  startDrafts(opened.session, draft);
  say(storesWords.book.isOpen(opened.book.name, opened.book.properties.length));
  if (remark !== null) showNews(remark);
  if (opened.readOnlyBecause !== null) showError(readOnly(opened.fileName, opened.readOnlyBecause));
}

export async function closeBook(): Promise<void> {
  const { open } = useBook.getState();
  if (open === null) return;
  await draftSettled();
  const answer = await askHost('book.close', { session: open.session });
  if (answer === null) return;
  clearSelection();
  rememberBook(null);
  startPlans(null, []);
  startDrafts(null, null);
  useBook.setState({ open: null, history: NO_HISTORY, save: { kind: 'saved' } });
}

/**
 * Makes an edit: shown at once, stored by the host, and one step in the history. Edits that follow each other with the same
 * merge key are one step: moving by arrow keys.
 */
export function edit(action: Action, mergeKey?: string): Result<{ readonly label: string }> {
  const { open } = useBook.getState();
  const done = change(open === null ? action : keepTotals(open.book, action, todayHere()));
  if (!done.ok) return done;
  withdrawUndo();
  const { label, inverse } = done.value;
  say(label);
  if (takesNothingBack(inverse)) return { ok: true, value: { label } };
  const step = { label, action: inverse, ...(mergeKey === undefined ? {} : { mergeKey }) };
  useBook.setState(({ history }) => ({ history: remember(history, step) }));
  return { ok: true, value: { label } };
}

export function undo(): void {
  const step = useBook.getState().history.undo.at(-1);
  if (step === undefined) return;
  const done = change(step.action);
  if (!done.ok) {
    showError(done.error);
    return;
  }
  const again = { label: step.label, action: done.value.inverse };
  useBook.setState(({ history }) => ({ history: stepBack(history, again) }));
  showNews(storesWords.book.undid(step.label));
}

export function redo(): void {
  const step = useBook.getState().history.redo.at(-1);
  if (step === undefined) return;
  const done = change(step.action);
  if (!done.ok) {
    showError(done.error);
    return;
  }
  const back = { label: step.label, action: done.value.inverse };
  useBook.setState(({ history }) => ({ history: stepForward(history, back) }));
  showNews(storesWords.book.didAgain(step.label));
}

function change(action: Action): ReturnType<typeof applyAction> {
  const { open } = useBook.getState();
  if (open === null) return noBook();
  if (open.readOnlyBecause !== null) {
    const error = readOnly(open.fileName, open.readOnlyBecause);
    showError(error);
    return { ok: false, error };
  }
  const done = applyAction(open.book, action);
  if (!done.ok) return done;
  useBook.setState({ open: { ...open, book: done.value.book }, save: { kind: 'saving' } });
  waiting.push(action);
  sendWaiting().catch(() => undefined);
  return done;
}

function readOnly(where: string, detail: string): AppError {
  const hint = storesWords.book.readOnlyAdvice;
  return { code: 'book-read-only', where, detail, hint };
}

function noBook(): Result<never> {
  return {
    ok: false,
    error: {
      code: 'nothing-to-do',
      where: storesWords.book.thePlace,
      detail: storesWords.book.noneOpen,
      hint: storesWords.book.noneOpenAdvice,
    },
  };
}

/** Sends the waiting edits one after the other; each one names the revision that the one before it made. */
async function sendWaiting(): Promise<void> {
  if (sending) return;
  sending = true;
  while (waiting.length > 0) {
    const { open } = useBook.getState();
    const [action] = waiting;
    if (open === null || action === undefined) break;
    const { session, revision } = open;
    const answer = await callHost('book.apply', { session, action, baseRevision: revision });
    if (useBook.getState().open?.session !== session) break;
    if (!answer.ok) {
      sending = false;
      return saveFailed(answer.error);
    }
    waiting.shift();
    noteSaved(session, answer.value.revision, answer.value.savedAt);
  }
  sending = false;
}

function noteSaved(session: string, revision: number, savedAt: string): void {
  useBook.setState(({ open, save }) =>
    open?.session === session
      ? { open: { ...open, revision, savedAt }, save: waiting.length === 0 ? { kind: 'saved' } : save }
      : {},
  );
}

/** A refused edit stays on screen and in the queue, unless the book was changed elsewhere: then the stored one counts. */
function saveFailed(error: AppError): void {
  useBook.setState({ save: { kind: 'failed', error } });
  showError(error);
  if (error.code === 'book-changed') readAgain().catch(() => undefined);
}

/** Tries once more to store what could not be stored. */
export function trySavingAgain(): void {
  if (useBook.getState().save.kind !== 'failed') return;
  useBook.setState({ save: { kind: 'saving' } });
  sendWaiting().catch(() => undefined);
}

/** Takes the stored book in place of the one on screen. */
export async function readAgain(): Promise<void> {
  const { open } = useBook.getState();
  if (open === null) return;
  const stored = await askHost('book.read', { session: open.session });
  if (stored === null) return;
  waiting = [];
  const { plans, draft: _, ...next } = stored;
  useBook.setState({ open: next, history: NO_HISTORY, save: { kind: 'saved' } });
  startPlans(stored.session, plans);
}

/** Follows what the host says of the open book. */
export function bookChangedElsewhere(session: string, revision: number): void {
  const { open } = useBook.getState();
  if (open === null || open.session !== session || revision <= open.revision || waiting.length > 0) return;
  readAgain().catch(() => undefined);
}
