import { useEffect, useState } from 'react';
import type { Book } from '../../core/book/index.ts';
import { askedOf } from '../../core/plan/result/index.ts';
import { useBook } from './book.ts';
import { useCurrentPlan, useCurrentRound } from './current.ts';
import { callHost } from './host.ts';
import { type KnownPlan, usePlans } from './plans.ts';

const WAIT_MS = 400;
/** Building the problem of larger books takes too long to do after every edit; there it counts which of plan and book is older. */
const MOST_PROPERTIES = 400;

const known = new WeakMap<Book, Map<string, Promise<boolean>>>();

/**
 * Whether the book has been changed since the plan was made in a way that matters to it: the problem is another one. The host finds
 * out beside the screen; while it cannot be asked, a plan counts as good.
 */
function isStale(session: string, book: Book, roundId: string, plan: KnownPlan['plan']): Promise<boolean> {
  const key = `${roundId} ${plan.problemHash}`;
  const answers = known.get(book) ?? new Map<string, Promise<boolean>>();
  known.set(book, answers);
  const before = answers.get(key);
  if (before !== undefined) return before;
  const dates = [...new Set(plan.days.map((day) => day.date))].sort();
  const { evenUsdPerHour, outages, done } = askedOf(plan);
  const asked = {
    session,
    roundId,
    problemHash: plan.problemHash,
    dates,
    evenUsdPerHour,
    outages: [...outages],
    done: [...done],
  };
  const answer = callHost('plan.fits', asked).then((found) =>
    found.ok ? !found.value.fits : found.error.code !== 'host-lost',
  );
  answers.set(key, answer);
  return answer;
}

/**
 * Whether the book was edited after the plan was made: by revisions where the plan was made since the book was opened, else by the times at
 * which they were stored. An edit that does not matter to the plan counts as well.
 */
export function isOlderThanBook(
  { madeOnRevision, savedAt }: Pick<KnownPlan, 'madeOnRevision' | 'savedAt'>,
  book: { readonly revision: number; readonly savedAt: string | null },
): boolean {
  if (madeOnRevision !== null) return madeOnRevision < book.revision;
  return book.savedAt !== null && Date.parse(savedAt) < Date.parse(book.savedAt);
}

/** True where the plan on screen was made for a book that was different. Found out a moment after each edit. */
export function usePlanStale(): boolean {
  const open = useBook((state) => state.open);
  const round = useCurrentRound();
  const plan = useCurrentPlan();
  const session = usePlans((state) => state.session);
  const [stale, setStale] = useState(false);
  useEffect(() => {
    if (open === null || round === null || plan === null || session === null) {
      setStale(false);
      return;
    }
    let isWanted = true;
    const timer = setTimeout(() => {
      const { book } = open;
      if (book.properties.length > MOST_PROPERTIES) setStale(isOlderThanBook(plan, open));
      else void isStale(session, book, round.id, plan.plan).then((answer) => isWanted && setStale(answer));
    }, WAIT_MS);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [open, round, plan, session]);
  return stale;
}
