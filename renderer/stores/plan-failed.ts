import type { JobFailed } from '../../core/contract/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { currentRound } from './current.ts';
import { showError, showNews } from './notices.ts';
import { endJob, usePlans } from './plans.ts';
import { useView } from './view.ts';

/** Planning came to nothing: kept with its round, and told where the Round room does not show it anyway. */
export function planFailed({ jobId, session, roundId, error }: JobFailed): void {
  if (usePlans.getState().session !== session) return;
  endJob(jobId);
  if (error.code === 'cancelled') {
    showNews(storesWords.plans.stoppedBefore);
    return;
  }
  usePlans.setState(({ failures }) => ({ failures: { ...failures, [roundId]: error } }));
  if (!showsPlanOf(roundId)) showError(error);
}

/** Whether the view of the Round room is in sight that has this round's plan, or why there is none. */
function showsPlanOf(roundId: string): boolean {
  const { room, views } = useView.getState();
  return room === 'round' && (views.round ?? 'plan') === 'plan' && currentRound()?.id === roundId;
}
