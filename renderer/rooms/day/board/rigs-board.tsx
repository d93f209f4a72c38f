import { Redo2, Undo2 } from 'lucide-react';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { TaskName } from '../../../../core/plan/board/index.ts';
import type { Plan, PlanDay } from '../../../../core/plan/result/index.ts';
import { CommandButton } from '../../../commands/index.ts';
import {
  dayKeyOf,
  judgeShown,
  moveStops,
  pinDay,
  selectDay,
  useBoard,
  useBoardView,
  useBook,
  useFormat,
  useSelection,
  useShownPlan,
} from '../../../stores/index.ts';
import { boardWords } from '../../../texts/day/index.ts';
import { DateStrip, HourAxis } from './axis.tsx';
import { BreachList, LeftOutList, RestList } from './lists.tsx';
import { PlacesDialog } from './places-dialog.tsx';
import { RigRow } from './rig-row.tsx';
import { type BoardRig, type BoardRow, type BoardStop, boardRows, hoursOf } from './rows.ts';
import { useBoardHands } from './use-board-hands.ts';

/** The dispatcher's board: one date, rigs as rows, stops to be moved by mouse, finger or keyboard, and what that breaks. */
export function RigsBoard({ day }: { readonly day: PlanDay }) {
  const shown = useShownPlan();
  if (shown === null) return null;
  const { name, known, dates, rigIds } = shown;
  return <Board key={name} day={day} name={name} dates={dates} rigIds={rigIds} plan={known.plan} />;
}

type BoardProps = {
  readonly day: PlanDay;
  /** By which the plan is kept. */
  readonly name: string;
  readonly dates: readonly string[];
  readonly rigIds: readonly string[];
  readonly plan: Plan;
};

function useRigs(rigIds: readonly string[]): readonly BoardRig[] {
  const rigs = useBook((state) => state.open?.book.rigs);
  return useMemo(() => rigIds.flatMap((id) => rigs?.filter((rig) => rig.id === id) ?? []), [rigIds, rigs]);
}

function Board({ day, name, dates, rigIds, plan }: BoardProps) {
  const words = useFormat();
  const rigs = useRigs(rigIds);
  const { waiting, breaches, refused, pinnedLawns, pinnedDays } = useBoard();
  const date = useBoardView((state) => state.emptyDate) ?? day.date;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another day is looked at.
  useEffect(() => () => useBoardView.setState({ emptyDate: null }), [day.date]);
  useEffect(() => {
    judgeShown(plan).catch(() => undefined);
  }, [plan]);
  const box = useRef<HTMLDivElement>(null);
  const goToDate = (next: string): void => {
    const there =
      plan.days.find((each) => each.date === next && each.rigId === day.rigId) ??
      plan.days.find((each) => each.date === next);
    useBoardView.setState({ emptyDate: there === undefined ? next : null });
    if (there !== undefined) selectDay(there.date, there.rigId);
  };
  const rows = useMemo(() => boardRows(plan, date, rigs, waiting), [plan, date, rigs, waiting]);
  const rigName = (id: string): string => rigs.find((rig) => rig.id === id)?.name ?? id;
  const hands = useBoardHands({ name, plan, date, dates, rigName, rows, dateWords: words.date, box });
  const hours = hoursOf(rows);
  const selected = useSelectedStop(rows);
  const activeKey = selected?.stop.key ?? rows.find((row) => row.stops.length > 0)?.stops[0]?.key ?? '';
  const outWords = (row: BoardRow): string => {
    const here = (plan.outages ?? []).filter((each) => each.date === row.date && each.rigId === row.rigId);
    if (here.length === 0) return '';
    return here.some((each) => each.machineId === undefined)
      ? boardWords.board.outOfOrder
      : boardWords.board.machineOut;
  };
  return (
    <div className="board" ref={box}>
      <BoardTools selected={selected} />
      <DateStrip dates={dates} date={date} plan={plan} words={words} onDate={goToDate} hands={hands} />
      <div className="board-scroll">
        <HourAxis hours={hours} words={words} />
        <ul className="board-rows" aria-label={boardWords.board.label(words.date(date))} onBlur={hands.unfocus}>
          {rows.map((row) => (
            <RigRow
              key={row.rigId}
              row={row}
              hours={hours}
              words={words}
              hands={hands}
              activeKey={activeKey}
              selectedKey={selected?.stop.key ?? ''}
              rows={rows}
              pinnedLawns={pinnedLawns}
              pinned={pinnedDays.has(dayKeyOf(row.date, row.rigId))}
              out={outWords(row)}
              onPin={(pinned) => pinDay(row.date, row.rigId, pinned)}
            />
          ))}
        </ul>
      </div>
      <BoardLists name={name} plan={plan} date={date} breaches={breaches.get(plan) ?? null} refused={refused} />
    </div>
  );
}

type Selected = { readonly row: BoardRow; readonly stop: BoardStop };

function useSelectedStop(rows: readonly BoardRow[]): Selected | null {
  const propertyId = useSelection((state) => state.propertyId);
  for (const row of rows) {
    const stop = row.stops.find((each) => each.propertyId === propertyId);
    if (stop !== undefined) return { row, stop };
  }
  return null;
}

/** What can be done with the plan, and with the stop that is selected. */
function BoardTools({ selected }: { readonly selected: Selected | null }) {
  return (
    <div className="board-tools">
      <CommandButton id="day.back" look="quiet" bare>
        <Undo2 size={15} aria-hidden="true" />
      </CommandButton>
      <CommandButton id="day.ahead" look="quiet" bare>
        <Redo2 size={15} aria-hidden="true" />
      </CommandButton>
      <CommandButton id="day.move">{boardWords.board.move}</CommandButton>
      <CommandButton id="day.take-out">{boardWords.board.takeOut}</CommandButton>
      <CommandButton id="day.pin">{boardWords.board.pin}</CommandButton>
      <span className="board-chosen small quiet">
        {selected === null ? boardWords.board.keysAdvice : selected.stop.name}
      </span>
      <CommandButton id="day.out">{boardWords.board.markOutOfOrder}</CommandButton>
      <CommandButton id="day.improve" tip={boardWords.board.improveNote}>
        {boardWords.board.improve}
      </CommandButton>
    </div>
  );
}

type ListsProps = {
  /** By which the plan is kept. */
  readonly name: string;
  readonly plan: Plan;
  readonly date: string;
  readonly breaches: Parameters<typeof BreachList>[0]['breaches'];
  readonly refused: string;
};

function BoardLists({ name, plan, date, breaches, refused }: ListsProps) {
  const [wanted, setWanted] = useState<{ readonly task: TaskName; readonly name: string } | null>(null);
  const putIn = (
    task: TaskName,
    to: { readonly date: string; readonly rigId: string; readonly position: number },
  ): void => {
    setWanted(null);
    const { propertyId, zoneId, treatmentId, step } = task;
    const { date: on, rigId, position } = to;
    const named = { propertyId, zoneId, treatmentId, step };
    void moveStops(name, [{ task: named, to: { kind: 'day', date: on, rigId, position } }]);
  };
  return (
    <div className="board-lists">
      <BreachList breaches={breaches} refused={refused} />
      <LeftOutList
        plan={plan}
        onPutIn={({ propertyId, zoneId, treatmentId, step }, name) =>
          setWanted({ task: { propertyId, zoneId, treatmentId, step }, name })
        }
      />
      <RestList plan={plan} date={date} onUse={(use) => putIn(use.task, use)} />
      {wanted !== null && (
        <PlacesDialog
          plan={plan}
          task={wanted.task}
          name={wanted.name}
          onClose={() => setWanted(null)}
          onChoose={(place) => putIn(wanted.task, place)}
        />
      )}
    </div>
  );
}
