import { describe, expect, test } from 'vitest';
import { issue } from '../../../core/base/index.ts';
import { readingOf } from '../../../core/book/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { formatterFor } from '../../../renderer/format/index.ts';
import { type KnownPlan, roomOfIssue, roomSummaries } from '../../../renderer/stores/index.ts';
import { smallBook } from '../fake-host.ts';
import { SMALL_DAY } from '../small-day.ts';

const round = {
  id: 'r1',
  name: 'Spring',
  treatmentIds: ['t'],
  propertyIds: 'all' as const,
  skipped: [],
  dates: ['2027-03-16'],
  rigIds: ['r'],
  wetGround: false,
};
const known: KnownPlan = {
  plan: { days: [SMALL_DAY, { ...SMALL_DAY, rigId: 'other' }], unplaced: [{}] } as unknown as Plan,
  savedAt: '',
  madeOnRevision: 1,
};
const INPUT = {
  book: smallBook(),
  issues: [],
  measured: { done: 1, total: 1, treatableSqFt: 43_560, attention: 0 },
  round: null,
  known: null,
  stale: false,
  job: null,
  day: null,
  sheets: 0,
  words: formatterFor(readingOf({ units: 'us' })),
};
const results = (change: object) => roomSummaries({ ...INPUT, ...change }).map((each) => each.result);

describe('the pipeline', () => {
  test('says what each room has come to', () => {
    // 43,560 ft2 are one acre.
    expect(results({ round, known, day: SMALL_DAY, sheets: 4 })).toEqual([
      '1 lawn · 1.00 ac turf',
      'no machines yet',
      '1 day · Spring',
      'Tue Mar 16 · 4 h 45 min',
      '4 sheets ready',
    ]);
  });

  test('says what is missing', () => {
    expect(results({ book: { ...INPUT.book, properties: [] } })).toEqual([
      'no lawns yet',
      'no machines yet',
      'no round yet',
      'no day planned',
      'nothing to print',
    ]);
    expect(results({ round })[2]).toBe('not planned · Spring');
  });

  test('says how far measuring and planning are', () => {
    expect(results({ measured: { done: 43, total: 100, treatableSqFt: 0, attention: 0 } })[0]).toBe(
      '1 lawn · measuring 43 %',
    );
    const job = { jobId: 'j', roundId: 'r1', step: '', done: 3, total: 8, bestSoFar: '', cancelling: false };
    expect(results({ round, job })[2]).toBe('planning 37 %');
  });

  test('counts what needs attention where it can be put right', () => {
    const issues = [
      issue('error', 'a', 'machine Stand-on', 'broken'),
      issue('warning', 'b', 'property p1, zone z', 'odd'),
      issue('warning', 'c', 'round Spring', 'odd'),
      issue('note', 'd', 'rig One', 'by the way'),
    ];
    const rooms = roomSummaries({ ...INPUT, issues, round, known, stale: true });
    expect(rooms.map((each) => each.attention.count)).toEqual([1, 0, 3, 0, 0]);
    const withMachine = { ...INPUT.book, machines: [{}] } as unknown as typeof INPUT.book;
    const shed = roomSummaries({ ...INPUT, book: withMachine, issues })[1]!;
    expect(shed.attention).toEqual({ count: 1, stops: true });
    // A zone without a place keeps work out of the plan.
    expect(rooms[2]!.attention.stops).toBe(true);
  });
});

test('an issue belongs to the room of its record', () => {
  expect(roomOfIssue(issue('note', 'x', 'property p1, zone z', ''))).toBe('ground');
  expect(roomOfIssue(issue('note', 'x', 'round Spring', ''))).toBe('round');
  expect(roomOfIssue(issue('note', 'x', 'rounding machine', ''))).toBe('shed');
});
