import type { ReactNode } from 'react';
import { useBook, useCurrentPlan, useCurrentRound, usePlans } from '../stores/index.ts';
import { nextWords } from '../texts/index.ts';
import { Button, Empty } from '../ui/index.ts';
import { firstMissing, type Need } from './missing.ts';
import { PlanProgress } from './plan-progress.tsx';
import { lookAtFirstSample, takeNextStep } from './take-next-step.ts';

type NotYetProps = {
  readonly title: string;
  /** What belongs here. */
  readonly children: ReactNode;
  /** What has to be there before this place has something to show. */
  readonly needs: Need;
  /** A button of the place itself, which stands before the way there. */
  readonly action?: ReactNode;
};

/**
 * What a place says while there is nothing in it: what belongs there, what is missing first, and one button that leads to it. A book
 * without lawns offers the sample as well. While a round is being planned the place waits for it.
 */
export function NotYet({ title, children, needs, action }: NotYetProps) {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  const plan = useCurrentPlan()?.plan ?? null;
  const isPlanning = usePlans((state) => state.job !== null);
  const missing = book === null ? null : firstMissing(needs, { book, round, plan });
  if (missing === 'plan' && isPlanning)
    return (
      <div className="empty empty-planning">
        <h2>{nextWords.beingPlanned}</h2>
        <PlanProgress />
      </div>
    );
  const next = missing === null ? null : nextWords.steps[missing];
  const offersSample = missing === 'lawns' || missing === 'machines';
  return (
    <Empty
      title={title}
      actions={
        <>
          {action}
          {missing !== null && next !== null && (
            <Button look={action === undefined ? 'main' : 'plain'} onPress={() => takeNextStep(missing)}>
              {next.button}
            </Button>
          )}
          {offersSample && <Button onPress={lookAtFirstSample}>{nextWords.lookAtSample}</Button>}
        </>
      }
    >
      {children} {next?.says}
    </Empty>
  );
}
