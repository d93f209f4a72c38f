import { describe, expect, test } from 'vitest';
import type { Book, Calendar, Property, Round } from '../../../../core/book/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { buildProblem, type Problem, type ProblemOptions } from '../../../../core/plan/problem/index.ts';
import { explainPlan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { calendarOf } from '../../../../core/round/calendar/index.ts';
import { sampleBook } from '../../../support/samples.ts';

const sample = sampleBook('residential-day');
const [spring] = sample.rounds as readonly [Round];
const [first] = sample.properties as readonly [Property];
// Monday to Thursday.
const DATES = ['2027-03-15', '2027-03-16', '2027-03-17', '2027-03-18'];
type Changes = {
  readonly calendar?: Partial<Calendar>;
  readonly round?: Partial<Round>;
  readonly lawn?: Partial<Property>;
  readonly book?: Partial<Book>;
};

function bookWith({ calendar, round, lawn, book }: Changes): Book {
  return {
    ...sample,
    ...(calendar === undefined ? {} : { calendar: { ...calendarOf(sample), ...calendar } }),
    properties: sample.properties.map((each) => (each === first ? { ...each, ...lawn } : each)),
    rounds: [{ ...spring, dates: DATES, ...round }],
    ...book,
  };
}

function built(changes: Changes, options: ProblemOptions = {}): Problem {
  const problem = buildProblem(bookWith(changes), spring.id, options);
  if (!problem.ok) throw new Error(problem.error.detail);
  return problem.value;
}

/** What closes each day to the first lawn, '' where it is open. */
function closedTo(problem: Problem, propertyId: string = first.id): string[] {
  const job = problem.jobs.find((each) => each.propertyId === propertyId);
  if (job === undefined) throw new Error('no job');
  return problem.dates.map((_, day) => {
    const closed = job.closed?.[day] ?? null;
    expect(job.dayAllowed[day]).toBe(closed === null ? 1 : 0);
    return closed?.code ?? '';
  });
}

describe('days that are open to a lawn', () => {
  test('are all of them where nothing is said', () => {
    expect(closedTo(built({}))).toEqual(['', '', '', '']);
    expect(built({}).jobs.every((each) => each.closed === undefined)).toBe(true);
  });

  test('are neither holidays nor held back', () => {
    const calendar = { holidays: [{ on: '2027-03-16', name: 'Town day' }], rainShare: 0.25 };
    const problem = built({ calendar });
    // Three working days, a quarter of which is 0.75, rounded up 1.
    expect(closedTo(problem)).toEqual(['', 'holiday', '', 'held-back']);
    expect(problem.issues.find((each) => each.code === 'days-held-back')?.message).toMatch(
      /3 working days, .*2027-03-18/,
    );
    expect(closedTo(built({ calendar, round: { heldBack: 0 } }))).toEqual(['', 'holiday', '', '']);
    // The last days of the round stay held back where only some of its days are asked for.
    expect(closedTo(built({ calendar }, { dates: DATES.slice(2) }))).toEqual(['', 'held-back']);
  });

  test('are not those that the customer closes', () => {
    const lawn: Partial<Property> = {
      hold: { why: 'new', until: '2027-03-15' },
      closed: [{ kind: 'weekday', weekday: 'wednesday', why: 'mowing' }],
      weekdays: ['monday', 'tuesday', 'wednesday'],
    };
    const problem = built({ lawn });
    expect(closedTo(problem)).toEqual(['customer', '', 'customer', 'customer']);
    const words = problem.jobs.find((each) => each.propertyId === first.id)?.closed?.map((each) => each?.words);
    expect(words?.[2]).toBe('closed: mowing');
  });

  test('of a promised lawn are the promised one, held back or at short notice too, but no holiday', () => {
    const promised = [{ propertyId: first.id, on: '2027-03-18' }];
    const calendar = { rainShare: 0.25, noticeDays: 7 };
    const problem = built({ calendar, round: { promised } }, { today: '2027-03-15' });
    expect(closedTo(problem)).toEqual(['promised', 'promised', 'promised', '']);
    const other = sample.properties[1]?.id ?? '';
    expect(closedTo(problem, other)).toEqual(['notice', 'notice', 'notice', 'held-back']);
    const holiday = built({ calendar: { holidays: [{ on: '2027-03-18', name: '' }] }, round: { promised } });
    expect(closedTo(holiday)).toEqual(['promised', 'promised', 'promised', 'holiday']);
    expect(holiday.issues.find((each) => each.code === 'promise-broken')?.message).toBe(
      'It is promised for 2027-03-18, but: holiday.',
    );
    const never = built({ round: { promised: [{ propertyId: first.id, on: '2027-04-01' }] } });
    expect(closedTo(never)).toEqual(['promised', 'promised', 'promised', 'promised']);
    expect(never.issues.some((each) => each.code === 'promise-broken')).toBe(true);
  });

  test('leave time for notice, which does not make a plan out of date', () => {
    const changes = { lawn: { noticeDays: 2 } };
    const asked = built(changes, { today: '2027-03-14' });
    expect(closedTo(asked)).toEqual(['notice', '', '', '']);
    expect(closedTo(built(changes))).toEqual(['', '', '', '']);
    expect(asked.hash).toBe(built(changes).hash);
    expect(asked.hash).not.toBe(built({ lawn: { weekdays: ['tuesday'] } }).hash);
  });

  test('lie so long after the step before of a split application', () => {
    const step = { name: 'Split', treatmentIds: spring.treatmentIds, from: '03-01', to: '04-30' };
    const programme = {
      id: 'p',
      name: 'Programme',
      steps: [
        { ...step, id: 's1' },
        { ...step, id: 's2', after: { stepId: 's1', leastDays: 15 } },
      ],
      note: '',
    };
    const season = (stepId: string) => ({ programmeId: 'p', stepId, year: 2027 });
    const early = { ...spring, id: 'early', name: 'Early', dates: ['2027-03-01', '2027-03-02'], season: season('s1') };
    const book = {
      programmes: [programme],
      rounds: [early, { ...spring, dates: DATES, season: season('s2') }],
    };
    expect(closedTo(built({ book }))).toEqual(['', '', '', '']);
    // 2 March and 15 days is the 17th; planned for the 1st it is the 16th.
    expect(closedTo(built({ book }, { plannedDays: {} }))).toEqual(['interval', 'interval', '', '']);
    expect(closedTo(built({ book }, { plannedDays: { early: { [first.id]: '2027-03-01' } } }))).toEqual([
      'interval',
      '',
      '',
      '',
    ]);
    const outcome = { kind: 'done', tasks: [] } as const;
    const visit = { id: 'v', on: '2027-03-03', roundId: 'early', rigId: 'r', propertyId: first.id, outcome, note: '' };
    const recorded = { ...book, visits: [visit] };
    expect(closedTo(built({ book: recorded }))).toEqual(['interval', 'interval', 'interval', '']);
  });
});

describe('weather', () => {
  const products = sample.products.map((each) => ({ ...each, label: { ...each.label, mostWindMph: 10 } }));
  const windy = (on: string, from: number) => ({
    id: on,
    on,
    source: '',
    hours: Array.from({ length: 24 }, (_, hour) => ({ hour, windMph: hour < from ? 4 : 18 })),
  });

  test('puts days on hold and says when a part of one is closed, and when the work is planned', () => {
    const problem = built({ book: { products, weather: [windy('2027-03-15', 0), windy('2027-03-16', 13)] } });
    expect(closedTo(problem)).toEqual(['weather', '', '', '']);
    const told = problem.issues.filter((each) => each.code === 'weather-limits');
    expect(told).toHaveLength(1);
    expect(told[0]?.message).toMatch(/a part of the day to .*: 1:00 pm to .*wind 18 mph/);
    expect(told[0]?.message).toMatch(/Work with it is planned to 1:00 pm\.$/);
  });

  test('keeps in the rig alone whose shift it spoils', () => {
    const [rig] = sample.rigs;
    if (rig === undefined) throw new Error('no rig');
    const late = { ...rig, id: 'late', name: 'Late', shiftStartMin: 780, shiftMin: 360, machines: [] };
    const problem = built({
      book: { products, rigs: [rig, late], weather: [windy('2027-03-15', 13)] },
      round: { rigIds: [rig.id, 'late'] },
    });
    expect(problem.slots.filter((each) => each.day === 0).map((each) => each.rig)).toEqual([0]);
    expect(problem.slots.filter((each) => each.day === 1).map((each) => each.rig)).toEqual([0, 1]);
    expect(closedTo(problem)).toEqual(['', '', '', '']);
  });
});

describe('a round', () => {
  test('without an open day is refused with the reasons', () => {
    const book = bookWith({ calendar: { holidays: DATES.map((on) => ({ on, name: '' })) } });
    const problem = buildProblem(book, spring.id);
    expect(!problem.ok && problem.error).toMatchObject({ code: 'nothing-to-do' });
    expect(!problem.ok && problem.error.detail).toContain('2027-03-15 to 2027-03-18 holiday');
  });

  test('has the lawns that its choice takes, and gives a treatment to the zones that its choice takes', () => {
    const tagged = { lawn: { tags: ['front row'] } };
    const chosen = built({ ...tagged, round: { choice: { tags: ['front row'] } } });
    expect(new Set(chosen.jobs.map((each) => each.propertyId))).toEqual(new Set([first.id]));
    const treatmentId = spring.treatmentIds[0] ?? '';
    const none = built({ round: { only: [{ treatmentId, choice: { address: first.address } }] } });
    expect(new Set(none.tasks.map((each) => each.propertyId))).toEqual(new Set([first.id]));
    expect(
      new Set(built({ lawn: { hold: { why: 'seeding' } } }).tasks.map((each) => each.propertyId)).has(first.id),
    ).toBe(false);
  });

  test('keeps a reserve of every day', () => {
    const whole = built({});
    const kept = built({ calendar: { serviceMin: 45 } });
    expect(kept.rigs[0]?.shiftMs).toBe((whole.rigs[0]?.shiftMs ?? 0) - 45 * 60_000);
    expect(kept.issues.find((each) => each.code === 'day-reserve')?.message).toMatch(/^45 min of every/);
  });

  test('whose shift runs through a change of the clock says so', () => {
    // Clocks go forward on Sunday 14 March 2027 at 2 am.
    const rigs = sample.rigs.map((rig) => ({ ...rig, shiftStartMin: 60, shiftMin: 480 }));
    const dates = ['2027-03-13', '2027-03-14'];
    const codes = (calendar: Partial<Calendar>): string[] =>
      built({ book: { rigs }, round: { dates }, calendar })
        .issues.filter((each) => each.code === 'clock-changes')
        .map((each) => each.where.slice(-10));
    expect(codes({})).toEqual(rigs.map(() => '2027-03-14'));
    expect(codes({ clockChange: 'none' })).toEqual([]);
  });
});

test('a plan has promised lawns on their day, and says of work without an open day why', () => {
  const closed = DATES.map((on) => ({ kind: 'date' as const, on, why: 'scaffolding' }));
  const [, second] = sample.properties;
  const properties = sample.properties.map((each) => (each === second ? { ...each, closed } : each));
  const book = bookWith({ round: { promised: [{ propertyId: first.id, on: '2027-03-17' }] }, book: { properties } });
  const problem = buildProblem(book, spring.id);
  if (!problem.ok) throw new Error(problem.error.detail);
  const plan = explainPlan(book, problem.value, solve(problem.value, { seed: 1, iterations: 200 }));
  const days = plan.days.filter((each) => each.stops.some((stop) => stop.propertyId === first.id));
  expect(days.map((each) => each.date)).toEqual(['2027-03-17']);
  expect(judgePlan(problem.value, plan).violations).toEqual([]);
  const left = plan.unplaced.filter((each) => each.propertyId === second?.id);
  expect(left.length).toBeGreaterThan(0);
  expect(left[0]?.reasons[0]).toMatchObject({ code: 'day-not-allowed' });
  expect(left[0]?.reasons[0]?.words).toMatch(
    /^no day is open to it: 2027-03-15 to 2027-03-18 closed: scaffolding; fits with leave to work there on 2027-03-1/,
  );
});
