import { create } from 'zustand';
import type { Issue } from '../../core/base/index.ts';
import type { Book } from '../../core/book/index.ts';
import { checkInSteps, type Finding, pastDueDates } from '../../core/checks/index.ts';
import { todayHere } from '../format/index.ts';
import { inSlices } from './slices.ts';

/** What the checks find in the open book, kept up with every edit. */
export const useChecks = create<{ readonly issues: readonly Finding[] }>(() => ({ issues: [] }));

const WAIT_MS = 300;
let stop: () => void = () => undefined;

/** Checks a book a moment after it changed, in parts between which the window can draw. */
export function checkInBackground(book: Book | null): void {
  stop();
  if (book === null) {
    useChecks.setState({ issues: [] });
    return;
  }
  const timer = setTimeout(() => {
    stop = inSlices(
      checkInSteps(book),
      () => undefined,
      (found) => useChecks.setState({ issues: [...found, ...pastDueDates(book, todayHere())] }),
    );
  }, WAIT_MS);
  stop = () => clearTimeout(timer);
}

/** The room in which an issue of the checks can be put right. */
export function roomOfIssue({ where }: Issue): 'ground' | 'shed' | 'round' {
  if (/^(property|properties|lawn)\b/.test(where)) return 'ground';
  return /^(rounds?|timing|temperatures|calendar|programme|fleet)\b/.test(where) ? 'round' : 'shed';
}
