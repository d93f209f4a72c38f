import { beforeEach, describe, expect, test } from 'vitest';
import { ok, type Result } from '../../../core/base/index.ts';
import type { BoardReply } from '../../../core/contract/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { moveStops, planDone, startPlans, useBoard, useNotices, usePlans } from '../../../renderer/stores/index.ts';
import { type FakeHost, installFakeHost } from '../fake-host.ts';

const planOf = (roundName: string): Plan =>
  ({ roundId: 'r1', roundName, days: [], unplaced: [], totals: {} }) as unknown as Plan;
const OLD = planOf('the old one');
const NEW = planOf('the new one');
const MOVES = [{ task: 't1', to: { kind: 'out' } }] as unknown as Parameters<typeof moveStops>[1];
const MOVED = {
  kind: 'moved',
  change: { days: [], order: [], unplaced: [{ name: 'moved' }], totals: {} },
  breaches: [],
} as unknown as BoardReply;

let host: FakeHost;
/** Answers the move that was asked for. */
let answer: (reply: Result<BoardReply>) => void;
beforeEach(() => {
  host = installFakeHost();
  host.answer('board.ask', () => new Promise<Result<unknown>>((settle) => (answer = settle)));
  host.answer('board.keep', () => ok({ known: false }));
  host.answer('plan.store', () => ok({ done: true }));
  startPlans('s1', [{ roundId: 'r1', savedAt: '2027-03-16T10:00:00Z', plan: OLD }]);
  useNotices.setState(useNotices.getInitialState(), true);
});

const shown = () => usePlans.getState().plans.r1?.plan;
const newPlanArrives = () =>
  planDone({
    jobId: 'j1',
    session: 's1',
    roundId: 'r1',
    plan: NEW,
    cancelled: false,
    elapsedMs: 5,
    revision: 7,
    savedAt: '2027-03-16T10:42:00Z',
  });

describe('the answer to a move', () => {
  test('changes the plan that it is about', async () => {
    const moved = moveStops('r1', MOVES);
    await Promise.resolve();
    answer(ok(MOVED));
    await moved;
    expect(shown()).toMatchObject({ roundName: 'the old one', unplaced: [{ name: 'moved' }] });
    expect(useBoard.getState().past.r1?.map((each) => each.plan)).toEqual([OLD]);
    expect(host.asked.map(({ name }) => name)).toEqual(['board.ask']);
  });

  test('is dropped where a newer plan has come meanwhile, which is stored once more', async () => {
    const moved = moveStops('r1', MOVES);
    await Promise.resolve();
    newPlanArrives();
    answer(ok(MOVED));
    await moved;
    expect(shown()).toBe(NEW);
    expect(useNotices.getState().spoken).toMatch(/newer plan/);
    expect(useBoard.getState().waiting).toEqual([]);
    expect(host.asked.at(-1)).toMatchObject({ name: 'plan.store', request: { roundId: 'r1', plan: NEW } });
  });

  test('is dropped where another book is open by then', async () => {
    const moved = moveStops('r1', MOVES);
    await Promise.resolve();
    startPlans('s2', []);
    answer(ok(MOVED));
    await moved;
    expect(shown()).toBeUndefined();
    expect(host.asked.map(({ name }) => name)).toEqual(['board.ask']);
  });
});
