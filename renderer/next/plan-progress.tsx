import { Square } from 'lucide-react';
import { ProgressBar } from 'react-aria-components';
import { cancelPlanning, usePlans } from '../stores/index.ts';
import { planWords } from '../texts/round/index.ts';
import { Button } from '../ui/index.ts';

/** How far the planning is that is under way, what it has found so far, and how to stop it. */
export function PlanProgress() {
  const job = usePlans((state) => state.job);
  if (job === null) return null;
  const percent = Math.min(100, Math.floor((100 * job.done) / Math.max(1, job.total)));
  return (
    <div className="job">
      <ProgressBar className="progress" aria-label={planWords.ledger.planning} value={percent}>
        <div className="progress-track">
          <div className="progress-fill" style={{ width: `${percent}%` }} />
        </div>
      </ProgressBar>
      <span className="job-step">
        {job.step} · {percent} %
      </span>
      <span className="job-best">
        {job.bestSoFar === '' ? planWords.ledger.noneYet : planWords.ledger.bestSoFar(job.bestSoFar)}
      </span>
      <Button
        whyNot={job.cancelling ? planWords.ledger.endingAlready : null}
        onPress={() => {
          cancelPlanning().catch(() => undefined);
        }}
      >
        <Square size={12} aria-hidden="true" />{' '}
        {job.cancelling ? planWords.ledger.ending : planWords.ledger.stopAndKeep}
      </Button>
    </div>
  );
}
