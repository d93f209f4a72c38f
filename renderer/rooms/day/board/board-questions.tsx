import { useMemo } from 'react';
import type { Plan, PlanDay } from '../../../../core/plan/result/index.ts';
import {
  askOnBoard,
  type DayStop,
  improveShownPlan,
  moveAndFollow,
  selectedStop,
  taskKey,
  taskOfStop,
  useBoardView,
  useShownPlan,
} from '../../../stores/index.ts';
import { OutOfOrder } from './out-of-order.tsx';
import { PlacesDialog } from './places-dialog.tsx';

const close = () => askOnBoard(null);

/** The questions that commands open about the plan of a day, whatever view of it is shown. */
export function BoardQuestions({ day }: { readonly day: PlanDay }) {
  const { question, emptyDate } = useBoardView();
  const shown = useShownPlan();
  if (shown === null || question === null) return null;
  const { plan } = shown.known;
  if (question === 'out')
    return (
      <OutOfOrder
        plan={plan}
        date={emptyDate ?? day.date}
        onPlanAgain={(outages) => void improveShownPlan(outages)}
        onClose={close}
      />
    );
  const found = selectedStop();
  if (found === null) return null;
  return <Places name={shown.name} plan={plan} found={found} />;
}

type PlacesProps = {
  readonly name: string;
  readonly plan: Plan;
  readonly found: DayStop;
};

function Places({ name, plan, found }: PlacesProps) {
  const key = taskKey(taskOfStop(found.stop));
  const { name: lawn } = found.stop;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the dialog asks anew for every task that it is given.
  const task = useMemo(() => taskOfStop(found.stop), [key]);
  return (
    <PlacesDialog
      plan={plan}
      task={task}
      name={lawn}
      onClose={close}
      onChoose={({ date, rigId, position }) => {
        close();
        void moveAndFollow(name, [{ task, to: { kind: 'day', date, rigId, position } }], key);
      }}
    />
  );
}
