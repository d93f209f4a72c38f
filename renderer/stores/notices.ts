import { create } from 'zustand';
import type { AppError } from '../../core/base/index.ts';

/** One notice at a time. Errors stay until they are closed; news goes by itself. */
export type Notice =
  | { readonly kind: 'error'; readonly error: AppError }
  | { readonly kind: 'news'; readonly text: string; readonly undoable: boolean };

type NoticeState = {
  readonly notice: Notice | null;
  /** Counts the notices, so that the same words shown twice are noticed twice. */
  readonly serial: number;
  /** What a screen reader is told, politely. */
  readonly spoken: string;
  /** Counts what was spoken, for the same reason. */
  readonly spokenSerial: number;
};

export const useNotices = create<NoticeState>(() => ({ notice: null, serial: 0, spoken: '', spokenSerial: 0 }));

export function showError(error: AppError): void {
  useNotices.setState(({ serial }) => ({ notice: { kind: 'error', error }, serial: serial + 1 }));
}

/** Tells what happened; `undoable` offers to take it back. */
export function showNews(text: string, undoable = false): void {
  useNotices.setState(({ serial }) => ({ notice: { kind: 'news', text, undoable }, serial: serial + 1 }));
  say(text);
}

export function closeNotice(): void {
  useNotices.setState({ notice: null });
}

/** Takes an offer to undo away: after another edit it would take back that one. */
export function withdrawUndo(): void {
  const { notice } = useNotices.getState();
  if (notice?.kind === 'news' && notice.undoable) closeNotice();
}

/** Says why something cannot be done, to be seen and heard. An error that stands there still is not taken away by it. */
export function refuse(text: string): void {
  if (useNotices.getState().notice?.kind === 'error') say(text);
  else showNews(text);
}

/** Says something to a screen reader without showing it. */
export function say(text: string): void {
  useNotices.setState(({ spokenSerial }) => ({ spoken: text, spokenSerial: spokenSerial + 1 }));
}
