import type { StopMove, TaskName } from '../../../../core/plan/board/index.ts';
import type { Plan, PlanDay, PlanStop } from '../../../../core/plan/result/index.ts';
import { taskKey, taskOfStop } from '../../../stores/index.ts';

/** A stop as a block of the board. */
export type BoardStop = {
  readonly key: string;
  readonly task: TaskName;
  readonly propertyId: string;
  readonly name: string;
  readonly number: number;
  readonly startSec: number;
  readonly endSec: number;
  readonly driveSec: number;
};

/** What lies between the stops. */
export type BoardSpan = { readonly kind: 'break' | 'fill'; readonly startSec: number; readonly endSec: number };

/** One rig on one date. */
export type BoardRow = {
  readonly date: string;
  readonly rigId: string;
  readonly rigName: string;
  readonly stops: readonly BoardStop[];
  readonly spans: readonly BoardSpan[];
  readonly startSec: number;
  readonly endSec: number;
  /** True where a move is shown whose figures are not there yet. */
  readonly rough: boolean;
};

export type BoardRig = { readonly id: string; readonly name: string; readonly shiftStartMin: number };

const SEC_PER_MIN = 60;
/** How long a block is drawn of a stop that no day has had yet, s. */
const UNKNOWN_SEC = 900;

/**
 * The rigs of a date with their stops, as the plan has them once some moves are made that are not reckoned yet. Rows that such a move
 * touches have rough times: every stop keeps its length and its way there.
 */
export function boardRows(
  plan: Plan,
  date: string,
  rigs: readonly BoardRig[],
  moves: readonly StopMove[],
): readonly BoardRow[] {
  const days = new Map(plan.days.map((day) => [dayKey(day.date, day.rigId), day.stops.map(boardStop)] as const));
  const touched = new Set<string>();
  for (const { task, to } of moves) {
    const key = taskKey(task);
    let moved: BoardStop | null = unknownStop(plan, task);
    for (const [name, stops] of days) {
      const found = stops.find((stop) => stop.key === key || sameStop(plan, stop, task));
      if (found === undefined) continue;
      moved = found;
      days.set(
        name,
        stops.filter((stop) => stop !== found),
      );
      touched.add(name);
    }
    if (to.kind === 'out' || moved === null) continue;
    const target = dayKey(to.date, to.rigId);
    days.set(target, (days.get(target) ?? []).toSpliced(to.position, 0, moved));
    touched.add(target);
  }
  return rigs.map((rig) => {
    const key = dayKey(date, rig.id);
    const planned = plan.days.find((day) => day.date === date && day.rigId === rig.id);
    const stops = days.get(key) ?? [];
    return touched.has(key) ? roughRow(date, rig, stops, planned) : plannedRow(date, rig, stops, planned);
  });
}

function dayKey(date: string, rigId: string): string {
  return JSON.stringify([date, rigId]);
}

function boardStop(stop: PlanStop): BoardStop {
  const task = taskOfStop(stop);
  const { propertyId, name, number, driveSec } = stop;
  return {
    key: taskKey(task),
    task,
    propertyId,
    name,
    number,
    startSec: stop.arriveSec,
    endSec: stop.leaveSec,
    driveSec,
  };
}

/** A stop may do several tasks; any of them stands for it. */
function sameStop(plan: Plan, { propertyId, number }: BoardStop, task: TaskName): boolean {
  if (propertyId !== task.propertyId) return false;
  return plan.days.some((day) =>
    day.stops.some(
      (stop) =>
        stop.propertyId === propertyId &&
        stop.number === number &&
        stop.tasks.some((each) => taskKey({ ...each, propertyId }) === taskKey(task)),
    ),
  );
}

function unknownStop(plan: Plan, task: TaskName): BoardStop | null {
  const listed = plan.unplaced.find((each) => taskKey(each) === taskKey(task));
  if (listed === undefined) return null;
  const { propertyId, propertyName } = listed;
  const stop = { key: taskKey(task), task, propertyId, name: propertyName, number: 0, driveSec: 0 };
  return { ...stop, startSec: 0, endSec: UNKNOWN_SEC };
}

function plannedRow(date: string, rig: BoardRig, stops: readonly BoardStop[], day: PlanDay | undefined): BoardRow {
  const startSec = day?.startSec ?? rig.shiftStartMin * SEC_PER_MIN;
  const spans = (day?.activities ?? []).flatMap((each): readonly BoardSpan[] => {
    const { startSec: from, endSec: to } = each;
    if (each.kind === 'break') return [{ kind: 'break', startSec: from, endSec: to }];
    return each.kind === 'refill' && each.fillPointId !== '' ? [{ kind: 'fill', startSec: from, endSec: to }] : [];
  });
  const endSec = day?.endSec ?? startSec;
  return { date, rigId: rig.id, rigName: rig.name, stops, spans, startSec, endSec, rough: false };
}

function roughRow(date: string, rig: BoardRig, stops: readonly BoardStop[], day: PlanDay | undefined): BoardRow {
  const startSec = day?.startSec ?? rig.shiftStartMin * SEC_PER_MIN;
  let now = startSec;
  const chained = stops.map((stop, index): BoardStop => {
    const from = now + stop.driveSec;
    now = from + stop.endSec - stop.startSec;
    return { ...stop, number: index + 1, startSec: from, endSec: now };
  });
  return { date, rigId: rig.id, rigName: rig.name, stops: chained, spans: [], startSec, endSec: now, rough: true };
}

/** Where a stop would go if it were dropped at a moment of a row: before the first stop whose middle is later. */
export function positionAt(row: BoardRow, sec: number, movedKey: string): number {
  const others = row.stops.filter((stop) => stop.key !== movedKey);
  const next = others.findIndex((stop) => (stop.startSec + stop.endSec) / 2 > sec);
  return next < 0 ? others.length : next;
}

/** Whole hours around everything that the rows hold. */
export function hoursOf(rows: readonly BoardRow[]): { readonly startSec: number; readonly endSec: number } {
  const hour = 3600;
  const first = Math.min(...rows.map((row) => row.startSec));
  const last = Math.max(...rows.map((row) => row.endSec));
  const startSec = Math.floor((Number.isFinite(first) ? first : 7 * hour) / hour) * hour;
  return { startSec, endSec: Math.max(startSec + 4 * hour, Math.ceil(last / hour) * hour) };
}
