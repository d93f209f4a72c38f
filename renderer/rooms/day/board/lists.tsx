import { useEffect, useState } from 'react';
import type { Breach, TaskName, UseOfRest } from '../../../../core/plan/board/index.ts';
import type { Plan, UnplacedTask } from '../../../../core/plan/result/index.ts';
import { askBoard, useBook, useFormat } from '../../../stores/index.ts';
import { boardWords } from '../../../texts/day/index.ts';
import { Button, Section } from '../../../ui/index.ts';

/** What the plan breaks, in the judge's figures. */
export function BreachList({
  breaches,
  refused,
}: {
  readonly breaches: readonly Breach[] | null;
  readonly refused: string;
}) {
  return (
    <Section title={boardWords.lists.whatPlanBreaks}>
      {refused !== '' && <p className="stop">{boardWords.lists.notMoved(refused)}</p>}
      {breaches === null && <p className="quiet">{boardWords.lists.beingJudged}</p>}
      {breaches?.length === 0 && <p className="quiet">{boardWords.lists.nothingBroken}</p>}
      {breaches !== null && breaches.length > 0 && (
        <ul className="board-words">
          {breaches.map((each) => (
            <li key={`${each.code} ${each.words}`}>{each.words}.</li>
          ))}
        </ul>
      )}
    </Section>
  );
}

type LeftOutProps = { readonly plan: Plan; readonly onPutIn: (task: TaskName, name: string) => void };

/** Lawns that are in no day, with their reasons. */
export function LeftOutList({ plan, onPutIn }: LeftOutProps) {
  const rigs = useBook((state) => state.open?.book.rigs);
  const rigName = (id: string): string => rigs?.find((rig) => rig.id === id)?.name ?? id;
  const lawns = new Map<string, readonly UnplacedTask[]>();
  for (const each of plan.unplaced) lawns.set(each.propertyId, [...(lawns.get(each.propertyId) ?? []), each]);
  return (
    <Section title={boardWords.lists.leftOut}>
      {lawns.size === 0 && <p className="quiet">{boardWords.lists.noneLeftOut}</p>}
      <ul className="board-words">
        {[...lawns].map(([propertyId, tasks]) => {
          const [first] = tasks;
          if (first === undefined) return null;
          return (
            <li key={propertyId}>
              <b>{first.propertyName}</b>: {reasonWords(tasks, rigName)}.{' '}
              <Button
                label={boardWords.lists.putInOf(first.propertyName)}
                onPress={() => onPutIn(first, first.propertyName)}
              >
                {boardWords.lists.choosePlace}
              </Button>
            </li>
          );
        })}
      </ul>
    </Section>
  );
}

/** The words of each rig, with its name where rigs have different ones. */
function reasonWords(tasks: readonly UnplacedTask[], rigName: (rigId: string) => string): string {
  const reasons = tasks.flatMap((task) => task.reasons);
  const words = new Set(reasons.map((reason) => reason.words));
  if (words.size <= 1) return [...words].join('');
  return [...new Set(reasons.map((reason) => `${rigName(reason.rigId)} ${reason.words}`))].join('. ');
}

type RestsProps = {
  readonly plan: Plan;
  readonly date: string;
  readonly onUse: (use: UseOfRest) => void;
};

/** Lawns that would use up what tanks still hold at the end of the day; nothing where every tank is empty. */
export function RestList({ plan, date, onUse }: RestsProps) {
  const words = useFormat();
  const [uses, setUses] = useState<readonly UseOfRest[]>([]);
  const hasRest = plan.days.some((day) => day.date === date && day.leftOver.length > 0);
  useEffect(() => {
    let isWanted = true;
    setUses([]);
    if (!hasRest) return;
    void askBoard(plan, { kind: 'rests', date }).then((reply) => {
      if (isWanted && reply?.kind === 'rests') setUses(reply.uses);
    });
    return () => {
      isWanted = false;
    };
  }, [plan, date, hasRest]);
  if (!hasRest) return null;
  return (
    <Section title={boardWords.lists.usesLeftover}>
      {uses.length === 0 && <p className="quiet">{boardWords.lists.noneUsesLeftover}</p>}
      <ul className="board-words">
        {uses.map((use) => (
          <li key={use.words}>
            {words.said(use.words)} (
            {use.plannedOn === ''
              ? boardWords.lists.leftOutSoFar
              : boardWords.lists.plannedOn(words.date(use.plannedOn))}
            ).{' '}
            <Button label={boardWords.lists.change(words.said(use.words))} onPress={() => onUse(use)}>
              {boardWords.lists.putIn}
            </Button>
          </li>
        ))}
      </ul>
    </Section>
  );
}
