import { useEffect, useState } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import type { Orphan } from '../../../../core/plan/board/index.ts';
import type { Outage } from '../../../../core/plan/problem/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { askBoard, useBook, useFormat } from '../../../stores/index.ts';
import { boardWords } from '../../../texts/day/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { Button, Choice, Field } from '../../../ui/index.ts';

type OutOfOrderProps = {
  readonly plan: Plan;
  readonly date: string;
  readonly onPlanAgain: (outages: readonly Outage[]) => void;
  readonly onClose: () => void;
};

/** A rig or a machine that cannot go on a date: who can take over its lawns, and planning again without it. */
export function OutOfOrder({ plan, date, onPlanAgain, onClose }: OutOfOrderProps) {
  const book = useBook((state) => state.open?.book ?? null);
  const words = useFormat();
  const outages = plan.outages ?? [];
  const days = plan.days.filter((day) => day.date === date);
  const options = days.flatMap((day) => {
    const machines = book?.rigs.find((rig) => rig.id === day.rigId)?.machines ?? [];
    const named = machines.flatMap(({ machineId }) => {
      const machine = book?.machines.find((each) => each.id === machineId);
      return machine === undefined
        ? []
        : [{ value: `${day.rigId} ${machineId}`, words: boardWords.outOfOrder.machineOf(machine.name, day.rigName) }];
    });
    return [...named, { value: `${day.rigId} `, words: boardWords.outOfOrder.wholeRig(day.rigName) }];
  });
  const outRigs = outages.filter((each) => each.date === date && !days.some((day) => day.rigId === each.rigId));
  const back = outRigs.map(({ rigId, machineId = '' }) => {
    const name = book?.rigs.find((rig) => rig.id === rigId)?.name ?? rigId;
    return { value: `${rigId} ${machineId}`, words: boardWords.outOfOrder.outOf(name) };
  });
  const [chosen, setChosen] = useState(options[0]?.value ?? back[0]?.value ?? '');
  const outage = outageOf(chosen, date);
  const isOut = outages.some((each) => sameOutage(each, outage));
  const others = outages.filter((each) => !sameOutage(each, outage));
  return (
    <ModalOverlay className="scrim" isOpen isDismissable onOpenChange={(isOpen) => !isOpen && onClose()}>
      <Modal className="modal">
        <Dialog className="dialog">
          <div className="dialog-head">
            <Heading slot="title">{boardWords.outOfOrder.title(words.date(date))}</Heading>
            <Button look="quiet" onPress={onClose}>
              {commonWords.close}
            </Button>
          </div>
          <Field label={boardWords.outOfOrder.what}>
            <Choice
              label={boardWords.outOfOrder.what}
              value={chosen}
              options={[...options, ...back]}
              onChoose={setChosen}
            />
          </Field>
          <Orphans key={chosen} plan={plan} outage={outage} />
          <div className="dialog-foot">
            <Button
              look="main"
              onPress={() => {
                onPlanAgain(isOut ? others : [...outages, outage]);
                onClose();
              }}
            >
              {isOut ? boardWords.outOfOrder.planWith : boardWords.outOfOrder.planWithout}
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function outageOf(chosen: string, date: string): Outage {
  const at = chosen.indexOf(' ');
  const [rigId, machineId] = [chosen.slice(0, at), chosen.slice(at + 1)];
  return machineId === '' ? { date, rigId } : { date, rigId, machineId };
}

function sameOutage(one: Outage, other: Outage): boolean {
  return one.date === other.date && one.rigId === other.rigId && one.machineId === other.machineId;
}

type OrphansProps = { readonly plan: Plan; readonly outage: Outage };

function Orphans({ plan, outage }: OrphansProps) {
  const [orphans, setOrphans] = useState<readonly Orphan[] | null>(null);
  const rigs = useBook((state) => state.open?.book.rigs);
  const { date, rigId, machineId } = outage;
  useEffect(() => {
    let isWanted = true;
    const asked = machineId === undefined ? { date, rigId } : { date, rigId, machineId };
    void askBoard(plan, { kind: 'takers', outage: asked }).then((reply) => {
      if (isWanted) setOrphans(reply?.kind === 'takers' ? reply.orphans : []);
    });
    return () => {
      isWanted = false;
    };
  }, [plan, date, rigId, machineId]);
  if (orphans === null) return <p className="quiet">{boardWords.outOfOrder.looking}</p>;
  const [first] = orphans;
  if (first === undefined) return <p>{boardWords.outOfOrder.nothingNeeded}</p>;
  const columns = first.takers.map((taker) => taker.rigId);
  const nameOf = (id: string): string => rigs?.find((rig) => rig.id === id)?.name ?? id;
  return (
    <section
      className="board-orphans"
      aria-label={boardWords.outOfOrder.tableLabel}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls can be reached and scrolled from the keyboard.
      tabIndex={0}
    >
      <table className="table">
        <caption className="only-spoken">{boardWords.outOfOrder.tableTitle}</caption>
        <thead>
          <tr>
            <th scope="col">{boardWords.outOfOrder.lawnHead}</th>
            {columns.map((id) => (
              <th key={id} scope="col">
                {nameOf(id)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {orphans.map((orphan) => (
            <tr key={orphan.number}>
              <th scope="row">{commonWords.stop(orphan.number, orphan.name)}</th>
              {orphan.takers.map((taker) => (
                <td key={taker.rigId}>
                  {taker.visitSec === null ? boardWords.outOfOrder.no(taker.words) : taker.words}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
