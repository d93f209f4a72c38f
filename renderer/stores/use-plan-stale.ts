import { useEffect, useState } from 'react';
import type { Book } from '../../core/book/index.ts';
import { buildProblem } from '../../core/plan/problem/index.ts';
import { useBook } from './book.ts';
import { useCurrentPlan, useCurrentRound } from './current.ts';
import type { KnownPlan } from './plans.ts';

const WAIT_MS = 400;
/** Building the problem of larger books takes too long to do after every edit; there the revision alone is compared. */
const MOST_PROPERTIES = 400;

const known = new WeakMap<Book, Map<string, boolean>>();

/** Whether the book has been changed since the plan was made in a way that matters to it: the problem is another one. */
export function isStale(book: Book, roundId: string, plan: KnownPlan['plan']): boolean {
  const key = `${roundId} ${plan.problemHash}`;
  const answers = known.get(book) ?? new Map<string, boolean>();
  known.set(book, answers);
  const before = answers.get(key);
  if (before !== undefined) return before;
  const dates = [...new Set(plan.days.map((day) => day.date))].sort();
  const asked = { evenUsdPerHour: plan.evenDays?.usdPerHour ?? 0 };
  const whole = buildProblem(book, roundId, asked);
  const same = whole.ok && whole.value.hash === plan.problemHash;
  const part = same || dates.length === 0 ? whole : buildProblem(book, roundId, { ...asked, dates });
  const answer = !(part.ok && part.value.hash === plan.problemHash);
  answers.set(key, answer);
  return answer;
}

/** True where the plan on screen was made for a book that was different. Found out a moment after each edit. */
export function usePlanStale(): boolean {
  const open = useBook((state) => state.open);
  const round = useCurrentRound();
  const plan = useCurrentPlan();
  const [stale, setStale] = useState(false);
  useEffect(() => {
    if (open === null || round === null || plan === null) {
      setStale(false);
      return;
    }
    const timer = setTimeout(() => {
      const { book, revision } = open;
      const small = book.properties.length <= MOST_PROPERTIES;
      setStale(small ? isStale(book, round.id, plan.plan) : (plan.madeOnRevision ?? revision) < revision);
    }, WAIT_MS);
    return () => clearTimeout(timer);
  }, [open, round, plan]);
  return stale;
}
