import { create } from 'zustand';
import type { Issue } from '../../core/base/index.ts';
import type { Book } from '../../core/book/index.ts';
import { type Finding, pastDueDates, RULES } from '../../core/checks/index.ts';
import { todayHere } from '../format/index.ts';

/** What the checks find in the open book, kept up with every edit. */
export const useChecks = create<{ readonly issues: readonly Finding[] }>(() => ({ issues: [] }));

const WAIT_MS = 300;
let run = 0;

/** Checks a book a moment after it changed, one rule after the other, so that the window stays quick. */
export function checkInBackground(book: Book | null): void {
  run += 1;
  const mine = run;
  if (book === null) {
    useChecks.setState({ issues: [] });
    return;
  }
  const found: Finding[] = [];
  let index = 0;
  const next = () => {
    const rule = RULES[index];
    index += 1;
    if (mine !== run) return;
    if (rule === undefined) {
      useChecks.setState({ issues: [...found, ...pastDueDates(book, todayHere())] });
      return;
    }
    found.push(...rule.find(book));
    setTimeout(next, 0);
  };
  setTimeout(next, WAIT_MS);
}

/** The room in which an issue of the checks can be put right. */
export function roomOfIssue({ where }: Issue): 'ground' | 'shed' | 'round' {
  if (/^(property|properties|lawn)\b/.test(where)) return 'ground';
  return /^(rounds?|timing|temperatures|calendar|programme|fleet)\b/.test(where) ? 'round' : 'shed';
}
