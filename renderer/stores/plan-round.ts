import { doneWork } from '../../core/plan/live/index.ts';
import { commandsWords, commonWords } from '../texts/index.ts';
import { useBook } from './book.ts';
import { currentRound } from './current.ts';
import { useHost } from './host.ts';
import { type PlanWish, startPlanning, usePlans } from './plans.ts';

/** Why the round that is looked at cannot be planned now, or null. */
export function whyNotPlan(): string | null {
  if (useBook.getState().open === null) return commonWords.noBook;
  if (usePlans.getState().job !== null) return commandsWords.registry.planningAlready;
  return currentRound() === null ? commandsWords.registry.noRoundToPlan : null;
}

/** Plans a round as the settings say, less what was done of it; the wishes stand above the settings. */
export async function planRound(roundId: string, wishes: Partial<Omit<PlanWish, 'roundId'>> = {}): Promise<void> {
  const book = useBook.getState().open?.book;
  if (book === undefined) return;
  const { planSeconds: seconds, planSeed: seed, planEvenUsd: evenUsdPerHour } = useHost.getState().settings;
  await startPlanning({ roundId, seconds, seed, evenUsdPerHour, done: doneWork(book, roundId), ...wishes });
}
