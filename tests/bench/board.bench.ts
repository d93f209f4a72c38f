import { expect, test } from 'vitest';
import type { Book } from '../../core/book/index.ts';
import { measureBook } from '../../core/measure/index.ts';
import {
  applyChange,
  Board,
  rehearsalOf,
  type StopMove,
  type TaskName,
  whoCanGo,
} from '../../core/plan/board/index.ts';
import { buildProblem } from '../../core/plan/problem/index.ts';
import { explainPlan, type Plan } from '../../core/plan/result/index.ts';
import { solve } from '../../core/plan/search/index.ts';
import { inventRound, type RoundShape } from './rounds.ts';

const TARGET_MS = 100;
const MOVES = 20;
/** As long as the thread behind the window rehearses before the first move. */
const REHEARSAL_MS = 2000;

/** Processor time of a piece of work, ms: what else runs on the machine does not count. */
function spent(work: () => void): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

function taskOf(plan: Plan, day: number, stop: number): TaskName {
  const task = plan.days[day]?.stops[stop]?.tasks[0];
  if (task === undefined) throw new Error('no such stop');
  const { propertyId, zoneId, treatmentId, step } = task;
  return { propertyId, zoneId, treatmentId, step };
}

/** Lawns of a share of their area, so that one rig can do many of them in a day. */
function smaller(book: Book, share: number): Book {
  const properties = book.properties.map((property) => ({
    ...property,
    zones: property.zones.map((zone) =>
      zone.shape.kind === 'stated'
        ? { ...zone, shape: { ...zone.shape, areaSqFt: Math.round(share * zone.shape.areaSqFt) } }
        : zone,
    ),
  }));
  return { ...book, properties };
}

/** Long enough days that so many lawns find room in them. */
function planned(shape: RoundShape, iterations: number, { hours, share = 1 }: Size) {
  const invented = smaller(inventRound(shape, 1), share);
  const rigs = invented.rigs.map((rig) => ({ ...rig, shiftMin: hours * 60, overtimeMin: 120 }));
  const book = { ...invented, rigs };
  const measures = new Map(measureBook(book).map((each) => [each.propertyId, each]));
  const built = buildProblem(book, book.rounds[0]?.id ?? '', { measures });
  if (!built.ok) throw new Error(built.error.detail);
  const plan = explainPlan(book, built.value, solve(built.value, { seed: 1, iterations }));
  return { board: new Board(book, built.value), plan };
}

type Size = { readonly hours: number; readonly share?: number };

test.each([
  ['60 stops on one date, three rigs', { lawns: 60, rigs: 3, days: 1 }, 60, { hours: 9 }],
  ['60 small lawns, one rig, one long day', { lawns: 60, rigs: 1, days: 1 }, 60, { hours: 14, share: 0.25 }],
  ['640 lawns, two rigs, sixteen days', { lawns: 640, rigs: 2, days: 16 }, 200, { hours: 9 }],
] as const)('a move on %s', { timeout: 600_000 }, (name, shape, iterations, size) => {
  const { board, plan } = planned(shape, iterations, size);
  const moves = [...rehearsalOf(plan)];
  let cold = 0;
  for (let rehearsed = 0; rehearsed < REHEARSAL_MS; ) {
    const move = moves.shift();
    if (move === undefined) break;
    const ms = spent(() => board.move(plan, [move]));
    cold = Math.max(cold, ms);
    rehearsed += ms;
  }
  const times: number[] = [];
  let current = plan;
  for (let index = 0; index < MOVES; index += 1) {
    const from = index % current.days.length;
    const stops = current.days[from]?.stops.length ?? 0;
    if (stops === 0) continue;
    const task = taskOf(current, from, (7 * index) % stops);
    const goal = current.days[(from + (index % 2)) % current.days.length];
    if (goal === undefined) continue;
    const to = {
      kind: 'day',
      date: goal.date,
      rigId: goal.rigId,
      position: (5 * index) % (goal.stops.length + 1),
    } as const;
    const made: readonly StopMove[] = [{ task, to }];
    times.push(
      spent(() => {
        const answer = board.move(current, made);
        if (answer.kind === 'moved') current = applyChange(current, answer.change);
      }),
    );
  }
  const sorted = times.toSorted((left, right) => left - right);
  const [median = 0, tenth = 0, longest = 0] = [0.5, 0.9, 1].map(
    (share) => sorted[Math.ceil(share * sorted.length) - 1],
  );
  const figures = (ms: number): string => `${ms.toFixed(0)} ms, ratio ${(ms / TARGET_MS).toFixed(2)}`;
  const sizes = plan.days.map((day) => day.stops.length);
  console.log(
    `move, ${name} (${sizes.reduce((sum, each) => sum + each, 0)} stops, at most ${Math.max(...sizes)} in a day): ` +
      `median ${figures(median)}; nine in ten within ${figures(tenth)}; longest ${figures(longest)} of ${times.length}, ` +
      `longest of those rehearsed before ${figures(cold)}; target ${TARGET_MS} ms`,
  );
  expect(times.length).toBeGreaterThan(0);
});

test('who can go to 2,000 lawns', { timeout: 600_000 }, () => {
  const book = inventRound({ lawns: 2000, rigs: 2, days: 40 }, 1);
  const [round] = book.rounds;
  const ms = spent(() => {
    const table = whoCanGo(book, round?.id ?? '', round?.treatmentIds[0] ?? '');
    expect(table?.rows).toHaveLength(2000);
  });
  console.log(`who can go, 2,000 lawns of a stated area: ${ms.toFixed(0)} ms in a thread beside the screen`);
});
