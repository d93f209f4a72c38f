import { expect, test } from 'vitest';
import { measureBook } from '../../../../core/measure/index.ts';
import { buildProblem } from '../../../../core/plan/problem/index.ts';
import { Choices } from '../../../../core/plan/search/choices.ts';
import { insertLeftOut } from '../../../../core/plan/search/last-insertions.ts';
import { layOutSlots } from '../../../../core/plan/search/slots.ts';
import { layOutStart } from '../../../../core/plan/search/start.ts';
import { reckonState } from '../../../../core/plan/search/state.ts';
import { layOutJobs } from '../../../../core/plan/search/tables.ts';
import { RouteValues } from '../../../../core/plan/search/values.ts';
import { inventRound } from '../../../bench/rounds.ts';

const HELD = 8;

test('a job whose cheapest places are all on a full day goes to an empty one', () => {
  const round = inventRound({ lawns: HELD + 1, rigs: 1, days: 2 }, 1);
  const book = {
    ...round,
    rigs: round.rigs.map((rig) => ({ ...rig, shiftMin: 900 })),
    properties: round.properties.map(({ hours: _, ...property }) => property),
  };
  const measures = new Map(measureBook(book).map((each) => [each.propertyId, each]));
  const problem = buildProblem(book, book.rounds[0]?.id ?? '', { measures });
  if (!problem.ok) throw new Error(problem.error.detail);
  const table = layOutJobs(problem.value);
  const start = layOutStart(problem.value, undefined);
  const slots = layOutSlots(table, start.pinned);
  const choices = new Choices(table, slots, start.kept);

  // The first day has time for one more but holds none when its refills are placed; that is made so here.
  const values = new RouteValues(table);
  const prove = values.prove.bind(values);
  let refused = 0;
  values.prove = (slot, codes) => {
    if (slot !== 0) return prove(slot, codes);
    if (codes.length <= HELD) return 1;
    refused += 1;
    return Number.POSITIVE_INFINITY;
  };
  const routes = [Array.from({ length: HELD }, (_, job) => job * table.width), []];
  const before = reckonState({ routes, absent: [HELD] }, values, (slot, codes) => values.prove(slot, codes));
  const after = insertLeftOut(before, values, choices, { stopped: () => false });
  expect(refused).toBeGreaterThan(0);
  expect(after.absent).toEqual([]);
  expect(after.routes.map((codes) => codes.length)).toEqual([HELD, 1]);
  expect(after.cost).toBeGreaterThan(before.cost);
  // Told to stop, nothing is tried.
  expect(insertLeftOut(before, values, choices, { stopped: () => true })).toBe(before);
});
