import type { BoardStop } from './rows.ts';

/** A stop that is picked up from the keyboard, and where it would go. */
export type Picked = {
  readonly stop: BoardStop;
  readonly date: string;
  readonly rigId: string;
  readonly position: number;
};

export type BoardSpace = {
  readonly dates: readonly string[];
  readonly rigIds: readonly string[];
  /** How many stops a rig has on a date, the picked one not counted. */
  readonly countAt: (date: string, rigId: string) => number;
};

/** What a key does to a picked stop: another place, 'drop', 'give-up', or null where it means nothing here. */
export function keyInMoveMode(key: string, picked: Picked, space: BoardSpace): Picked | 'drop' | 'give-up' | null {
  switch (key) {
    case 'ArrowLeft':
      return placed(picked, space, { position: picked.position - 1 });
    case 'ArrowRight':
      return placed(picked, space, { position: picked.position + 1 });
    case 'Home':
      return placed(picked, space, { position: 0 });
    case 'End':
      return placed(picked, space, { position: Number.MAX_SAFE_INTEGER });
    case 'ArrowUp':
      return placed(picked, space, { rigId: neighbour(space.rigIds, picked.rigId, -1) });
    case 'ArrowDown':
      return placed(picked, space, { rigId: neighbour(space.rigIds, picked.rigId, 1) });
    case 'PageUp':
      return placed(picked, space, { date: neighbour(space.dates, picked.date, -1) });
    case 'PageDown':
      return placed(picked, space, { date: neighbour(space.dates, picked.date, 1) });
    case 'Enter':
    case ' ':
      return 'drop';
    case 'Escape':
      return 'give-up';
    default:
      return null;
  }
}

function placed(picked: Picked, { countAt }: BoardSpace, change: Partial<Picked>): Picked {
  const next = { ...picked, ...change };
  const position = Math.max(0, Math.min(next.position, countAt(next.date, next.rigId)));
  return { ...next, position };
}

function neighbour(list: readonly string[], current: string, step: number): string {
  const at = list.indexOf(current) + step;
  return list[Math.max(0, Math.min(list.length - 1, at))] ?? current;
}
