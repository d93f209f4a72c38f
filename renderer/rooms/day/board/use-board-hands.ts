import { type KeyboardEvent, type RefObject, useLayoutEffect, useState } from 'react';
import type { StopMove } from '../../../../core/plan/board/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { moveStops, say, selectDay, selectStop, stepPlan, usePlans } from '../../../stores/index.ts';
import { keyInMoveMode, type Picked } from './move-mode.ts';
import { type BoardRow, type BoardStop, hoursOf, positionAt, taskKey, taskOfStop } from './rows.ts';
import { type DropSpot, useDrag } from './use-drag.ts';

type Wish = {
  readonly roundId: string;
  readonly plan: Plan;
  readonly date: string;
  readonly dates: readonly string[];
  readonly rigIds: readonly string[];
  readonly rigName: (rigId: string) => string;
  /** The rows as they are shown, without what is picked up. */
  readonly rows: readonly BoardRow[];
  readonly onDate: (date: string) => void;
  readonly dateWords: (date: string) => string;
  readonly box: RefObject<HTMLElement | null>;
};

/** Everything that hands do on the board: pressing, dragging, and moving from the keyboard. */
export function useBoardHands(wish: Wish) {
  const { roundId, plan, date, dates, rigIds, rows, onDate, box } = wish;
  const [picked, setPicked] = useState<Picked | null>(null);
  const [focusKey, setFocusKey] = useState('');

  useLayoutEffect(() => {
    if (focusKey === '') return;
    const blocks = box.current?.querySelectorAll<HTMLElement>('[data-stop]') ?? [];
    [...blocks].find((each) => each.dataset.stop === focusKey)?.focus({ preventScroll: false });
  });

  const move = async (moves: readonly StopMove[], key: string): Promise<void> => {
    await moveStops(roundId, moves);
    selectMoved(roundId, key);
  };
  const onDrop = (key: string, spot: DropSpot): void => {
    const row = rows.find((each) => each.stops.some((stop) => stop.key === key));
    const stop = row?.stops.find((each) => each.key === key);
    if (row === undefined || stop === undefined) return;
    if (spot.kind === 'date') {
      if (spot.date === row.date) return;
      const to = {
        kind: 'day',
        date: spot.date,
        rigId: row.rigId,
        position: countAt(plan, spot.date, row.rigId),
      } as const;
      void move([{ task: stop.task, to }], key);
      return;
    }
    const target = rows.find((each) => each.rigId === spot.rigId);
    if (target === undefined) return;
    const hours = hoursOf(rows);
    const sec = hours.startSec + spot.share * (hours.endSec - hours.startSec);
    const position = positionAt(target, sec, key);
    if (target === row && position === row.stops.indexOf(stop)) return;
    void move([{ task: stop.task, to: { kind: 'day', date, rigId: spot.rigId, position } }], key);
  };
  const dragging = useDrag(onDrop);

  const drop = (held: Picked): void => {
    setPicked(null);
    setFocusKey(held.stop.key);
    const { stop, rigId, position } = held;
    say(`${stop.name} dropped on ${wish.rigName(rigId)}, place ${position + 1}. Being judged.`);
    void move([{ task: stop.task, to: { kind: 'day', date: held.date, rigId, position } }], stop.key);
  };
  const heldKeys = (event: KeyboardEvent, held: Picked): void => {
    const others = (on: string, rigId: string): number => countAt(plan, on, rigId, held.stop.key);
    const next = keyInMoveMode(event.key, held, { dates, rigIds, countAt: others });
    if (next === null) return;
    event.preventDefault();
    event.stopPropagation();
    if (next === 'drop') drop(held);
    else if (next === 'give-up') {
      setPicked(null);
      say(`${held.stop.name} stays where it was.`);
      onDate(date);
    } else {
      setPicked(next);
      if (next.date !== held.date) onDate(next.date);
      const place = `place ${next.position + 1} of ${others(next.date, next.rigId) + 1}`;
      say(`${wish.rigName(next.rigId)}, ${wish.dateWords(next.date)}, ${place}`);
    }
  };
  const onKey = (event: KeyboardEvent, row: BoardRow, stop: BoardStop): void => {
    if (picked !== null) {
      heldKeys(event, picked);
      return;
    }
    if ((event.ctrlKey || event.metaKey) && ['z', 'y'].includes(event.key.toLowerCase())) {
      event.preventDefault();
      event.stopPropagation();
      stepPlan(roundId, event.key.toLowerCase() === 'y' || event.shiftKey ? 'ahead' : 'back');
      return;
    }
    const neighbour = neighbourOf(event.key, rows, row, stop);
    if (neighbour !== null) {
      event.preventDefault();
      event.stopPropagation();
      setFocusKey(neighbour.key);
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      event.stopPropagation();
      const position = row.stops.indexOf(stop);
      setPicked({ stop, date: row.date, rigId: row.rigId, position });
      setFocusKey(stop.key);
      say(
        `${stop.name} picked up. Left and right change the place, up and down the rig, Page Up and Page Down the day; Enter drops it, Escape gives up.`,
      );
    } else if (event.key === 'Delete' || event.key === 'Backspace') {
      event.preventDefault();
      event.stopPropagation();
      void moveStops(roundId, [{ task: stop.task, to: { kind: 'out' } }]);
    } else if (event.key === 'Escape') dragging.giveUp();
  };
  const onPress = (row: BoardRow, stop: BoardStop): void => {
    if (dragging.wasDrag() || picked !== null) return;
    setFocusKey(stop.key);
    selectDay(row.date, row.rigId);
    selectStop(stop.number, stop.propertyId);
  };
  return {
    picked,
    drag: dragging.drag,
    handlers: dragging.handlers,
    onKey,
    onPress,
    move,
    unfocus: () => setFocusKey(''),
  };
}

function countAt(plan: Plan, date: string, rigId: string, without = ''): number {
  const day = plan.days.find((each) => each.date === date && each.rigId === rigId);
  return day?.stops.filter((stop) => taskKey(taskOfStop(stop)) !== without).length ?? 0;
}

/** Selects a stop where it now is. */
function selectMoved(roundId: string, key: string): void {
  for (const day of usePlans.getState().plans[roundId]?.plan.days ?? []) {
    const stop = day.stops.find((each) => taskKey(taskOfStop(each)) === key);
    if (stop === undefined) continue;
    selectDay(day.date, day.rigId);
    selectStop(stop.number, stop.propertyId);
  }
}

function neighbourOf(key: string, rows: readonly BoardRow[], row: BoardRow, stop: BoardStop): BoardStop | null {
  const at = row.stops.indexOf(stop);
  if (key === 'ArrowLeft') return row.stops[at - 1] ?? null;
  if (key === 'ArrowRight') return row.stops[at + 1] ?? null;
  if (key === 'Home') return row.stops[0] ?? null;
  if (key === 'End') return row.stops.at(-1) ?? null;
  if (key !== 'ArrowUp' && key !== 'ArrowDown') return null;
  const step = key === 'ArrowUp' ? -1 : 1;
  const beside = rows[rows.indexOf(row) + step];
  const middle = (stop.startSec + stop.endSec) / 2;
  return beside?.stops.find((each) => each.endSec > middle) ?? beside?.stops.at(-1) ?? null;
}
