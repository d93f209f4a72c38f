import { type FocusEvent, type KeyboardEvent, type RefObject, useLayoutEffect, useState } from 'react';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { moveAndFollow, moveStops, say, selectDay, selectStop, stepPlan } from '../../../stores/index.ts';
import { boardWords } from '../../../texts/day/index.ts';
import type { BoardRow, BoardStop } from './rows.ts';
import { positionOf, type Spot, sameTarget, spotAfter } from './spots.ts';
import { useTouch } from './use-touch.ts';

type Wish = {
  /** By which the plan is kept. */
  readonly name: string;
  readonly plan: Plan;
  readonly date: string;
  readonly dates: readonly string[];
  readonly rigName: (rigId: string) => string;
  readonly rows: readonly BoardRow[];
  readonly dateWords: (date: string) => string;
  readonly box: RefObject<HTMLElement | null>;
};

/** A stop that is carried, and how. */
export type Carried = { readonly row: BoardRow; readonly stop: BoardStop; readonly by: 'pointer' | 'keys' };

/** What hands can do with blocks, rows and dates. */
export type BoardHands = ReturnType<typeof useBoardHands>;

/**
 * Everything that hands do on the board. Mouse, pen, keyboard and screen readers carry by React Aria's drag and drop, fingers by
 * `useTouch`; the arrow keys between targets are added to React Aria's Tab key.
 */
export function useBoardHands(wish: Wish) {
  const { name, plan, date, dates, rows, box } = wish;
  const [carried, setCarried] = useState<Carried | null>(null);
  const [over, setOver] = useState<Spot | null>(null);
  const [focusKey, setFocusKey] = useState('');

  useLayoutEffect(() => {
    if (focusKey === '' || carried !== null) return;
    const blocks = box.current?.querySelectorAll<HTMLElement>('[data-stop]') ?? [];
    [...blocks].find((each) => each.dataset.stop === focusKey)?.focus({ preventScroll: false });
  });

  useLayoutEffect(() => {
    if (carried?.by !== 'keys') return;
    const { row, stop } = carried;
    const home = { kind: 'place', rigId: row.rigId, position: row.stops.indexOf(stop) } as const;
    const placesAt = (rigId: string): number =>
      (rows.find((each) => each.rigId === rigId)?.stops.filter((each) => each.key !== stop.key).length ?? 0) + 1;
    const rigIds = rows.map((each) => each.rigId);
    const onKeyDown = (event: globalThis.KeyboardEvent): void => {
      const next = spotAfter(event.key, over ?? home, home, { dates, date, rigIds, placesAt });
      if (next === null) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      targetAt(box.current, next)?.focus();
    };
    // On the window, so that it comes before React Aria's own on the document, which stops all keys.
    window.addEventListener('keydown', onKeyDown, true);
    return () => window.removeEventListener('keydown', onKeyDown, true);
  });

  const find = (key: string): Omit<Carried, 'by'> | null => {
    for (const row of rows) {
      const stop = row.stops.find((each) => each.key === key);
      if (stop !== undefined) return { row, stop };
    }
    return null;
  };
  const dropAt = (what: Omit<Carried, 'by'> | null, spot: Spot): void => {
    if (what === null) return;
    const { row, stop } = what;
    setFocusKey(stop.key);
    if (spot.kind === 'date') {
      if (spot.date === row.date) return;
      say(boardWords.hands.droppedOnDay(stop.name, wish.dateWords(spot.date)));
      const position = countAt(plan, spot.date, row.rigId);
      void moveAndFollow(
        name,
        [{ task: stop.task, to: { kind: 'day', date: spot.date, rigId: row.rigId, position } }],
        stop.key,
      );
      return;
    }
    const position = positionOf(spot, rows, stop.key);
    if (spot.rigId === row.rigId && position === row.stops.indexOf(stop)) return;
    say(boardWords.hands.droppedOnRig(stop.name, wish.rigName(spot.rigId), position + 1));
    void moveAndFollow(name, [{ task: stop.task, to: { kind: 'day', date, rigId: spot.rigId, position } }], stop.key);
  };
  const onCarry = (row: BoardRow, stop: BoardStop, by: Carried['by']): void => {
    setFocusKey('');
    setCarried({ row, stop, by });
  };
  const onCarryEnd = (): void => {
    setCarried(null);
    setOver(null);
  };
  const onPress = (row: BoardRow, stop: BoardStop): void => {
    if (carried !== null) return;
    setFocusKey(stop.key);
    selectDay(row.date, row.rigId);
    selectStop(stop.number, stop.propertyId);
  };
  const touch = useTouch({
    onPress: (key) => {
      const found = find(key);
      if (found !== null) onPress(found.row, found.stop);
    },
    onStart: (key) => {
      const found = find(key);
      if (found !== null) onCarry(found.row, found.stop, 'pointer');
    },
    onOver: setOver,
    onEnd: (key, spot) => {
      onCarryEnd();
      if (spot !== null) dropAt(find(key), spot);
    },
  });
  const onKey = (event: KeyboardEvent, row: BoardRow, stop: BoardStop): void => {
    if (carried !== null) return;
    const does = (): void => {
      event.preventDefault();
      event.stopPropagation();
    };
    const key = event.key.toLowerCase();
    const neighbour = neighbourOf(event.key, rows, row, stop);
    if ((event.ctrlKey || event.metaKey) && ['z', 'y'].includes(key)) {
      does();
      stepPlan(name, key === 'y' || event.shiftKey ? 'ahead' : 'back');
    } else if (neighbour !== null) {
      does();
      setFocusKey(neighbour.key);
    } else if (event.key === ' ') {
      does();
      onPress(row, stop);
    } else if (event.key === 'Delete' || event.key === 'Backspace') {
      does();
      void moveStops(name, [{ task: stop.task, to: { kind: 'out' } }]);
    } else if (event.key === 'Escape') touch.giveUp();
  };
  return {
    carried,
    over,
    touch,
    onCarry,
    onCarryEnd,
    onOver: setOver,
    onLeave: (spot: Spot) => setOver((now) => (now !== null && sameTarget(now, spot) ? null : now)),
    onDrop: (spot: Spot) => dropAt(carried, spot),
    onKey,
    onPress,
    unfocus: ({ relatedTarget }: FocusEvent) => {
      // Nothing takes the focus where the block that has it is drawn anew.
      if (relatedTarget !== null) setFocusKey('');
    },
  };
}

function targetAt(box: HTMLElement | null, spot: Spot): HTMLElement | undefined {
  const targets = [...(box?.querySelectorAll<HTMLElement>('[data-place], [data-date]') ?? [])];
  return targets.find(({ dataset }) => {
    if (spot.kind === 'date') return dataset.date === spot.date;
    return spot.kind === 'place' && dataset.place === placeName(spot.rigId, spot.position);
  });
}

export function placeName(rigId: string, position: number): string {
  return `${position} ${rigId}`;
}

function countAt(plan: Plan, date: string, rigId: string): number {
  return plan.days.find((each) => each.date === date && each.rigId === rigId)?.stops.length ?? 0;
}

/** Keys of a stop on the board: to others, selected and carried, out of the day. */
export const BOARD_KEYS = {
  go: ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End'],
  carry: ['Space', 'Enter'],
  out: ['Delete', 'Backspace'],
} as const;

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
