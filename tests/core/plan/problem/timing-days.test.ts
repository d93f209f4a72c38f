import { describe, expect, test } from 'vitest';
import type { Book, Property, Round, Timing } from '../../../../core/book/index.ts';
import { judgePlan } from '../../../../core/plan/judge/index.ts';
import { buildProblem, type Problem } from '../../../../core/plan/problem/index.ts';
import { explainPlan } from '../../../../core/plan/result/index.ts';
import { solve } from '../../../../core/plan/search/index.ts';
import { roundCost } from '../../../../core/round/buying/index.ts';
import { lawnsBySite, MISSED, timingSeason } from '../../../../core/round/timing/index.ts';
import { sampleBook } from '../../../support/samples.ts';
import { bookWith, countTiming } from '../../round/timing/stations.ts';
import { naiveJudge } from '../naive/naive-judge.ts';

const sample = sampleBook('residential-day');
const [spring] = sample.rounds as readonly [Round];
const DATES = ['2027-03-15', '2027-03-16', '2027-03-17', '2027-03-18'];
const NANO = 1_000_000_000;
const byCalendar = (opens: string, closes: string): Timing => ({
  id: 't',
  name: 'Early April',
  source: '',
  kind: 'calendar',
  opens,
  closes,
});
/**
 * Highest and lowest of the air from 1 March: 60 and 50 F count 5 degree days above 50 F each day, so 75 are reached on the 15th day.
 * Where 5 F are added it is 10 a day and the 8th day.
 */
const counted = countTiming({ opensAt: 75, closesAt: 90 });
const steady = (until: string) => bookWith('2027-03-01', until, () => [60, 50, null]).temperatures;
const temperatures = steady('2027-04-30');

function built(timing: Timing | null, round: Partial<Round> = {}, book: Partial<Book> = {}) {
  const whole: Book = {
    ...sample,
    properties: sample.properties.slice(0, 4),
    prices: { ...sample.prices, perDayLate: 7 },
    timings: timing === null ? [] : [timing],
    rounds: [{ ...spring, dates: DATES, ...(timing === null ? {} : { timingId: 't' }), ...round }],
    ...book,
  };
  const problem = buildProblem(whole, spring.id);
  if (!problem.ok) throw new Error(problem.error.detail);
  return { book: whole, problem: problem.value };
}

const codesOf = ({ jobs: [job], dates }: Problem) => dates.map((_, day) => job?.closed?.[day]?.code ?? '');
const lateOf = ({ jobs: [job] }: Problem) => Array.from(job?.lateCost ?? [], (each) => each / NANO);

describe('the timing of a round', () => {
  test('closes the days before the window opens, to the day, with the reason', () => {
    const { problem } = built(byCalendar('03-16', '04-15'));
    expect(codesOf(problem)).toEqual(['timing', '', '', '']);
    expect(problem.jobs[0]?.closed?.[0]?.words).toBe('by Early April it is of use from 2027-03-16');
    expect(problem.jobs.every((job) => job.dayAllowed[0] === 0 && job.dayAllowed[1] === 1)).toBe(true);
  });

  test('makes each day after the last useful one late, at the price of the book', () => {
    expect(lateOf(built(byCalendar('03-01', '03-16')).problem)).toEqual([0, 0, 7, 14]);
    expect(codesOf(built(byCalendar('03-01', '03-16')).problem)).toEqual(['', '', '', '']);
  });

  test('counts from the due date where that comes first, and from the window where that does', () => {
    const late = (dueDate: string) => lateOf(built(byCalendar('03-01', '03-16'), { dueDate }).problem);
    expect(late('2027-03-15')).toEqual([0, 7, 14, 21]);
    expect(late('2027-03-17')).toEqual([0, 0, 7, 14]);
  });

  test('closes the days after the last useful one where the round says so', () => {
    const { problem } = built(byCalendar('03-01', '03-16'), { onlyInWindow: true });
    expect(codesOf(problem)).toEqual(['', '', 'timing', 'timing']);
    expect(problem.jobs[0]?.closed?.[2]?.words).toBe('by Early April it is of use until 2027-03-16');
  });

  test('asks every lawn by its own site', () => {
    const properties = sample.properties
      .slice(0, 4)
      .map((each, at): Property => (at === 1 ? { ...each, sites: ['south-slope'] } : each));
    const { problem } = built(counted, {}, { properties, temperatures, siteOffsets: { 'south-slope': 5 } });
    const [plain, warm] = problem.jobs;
    // 90 are reached on the 18th day, so the 17th is the last one of use; 10 a day make 80 on the 8th and 90 on the 9th.
    expect(plain?.lastOn).toBe('2027-03-17');
    expect(warm?.lastOn).toBe('2027-03-08');
    expect(Array.from(plain?.lateCost ?? [], (each) => each / NANO)).toEqual([0, 0, 0, 7]);
    expect(Array.from(warm?.lateCost ?? [], (each) => each / NANO)).toEqual([49, 56, 63, 70]);
    const said = problem.issues.filter((each) => each.code === 'timing-missed');
    expect(said).toHaveLength(1);
    expect(said[0]?.message).toContain(properties[1]?.name ?? '?');
    expect(said[0]?.message).not.toContain(properties[0]?.name ?? '?');
  });

  test('is unknown without temperatures: nothing is closed, and that is said', () => {
    const { problem } = built(counted, {}, { temperatures: [] });
    expect(codesOf(problem)).toEqual(['', '', '', '']);
    expect(problem.issues.map((each) => each.code)).toContain('timing-unknown');
  });

  test('that is never reached leaves no day', () => {
    const never = { ...counted, opensAt: 100_000, closesAt: 200_000 };
    const { problem } = built(never, {}, { temperatures: steady('2028-03-31') });
    expect(codesOf(problem)).toEqual(['timing', 'timing', 'timing', 'timing']);
  });

  test('is not opened by a promise, which is then said to be broken', () => {
    const promised = [{ propertyId: sample.properties[0]?.id ?? '', on: DATES[0] ?? '' }];
    const { problem } = built(byCalendar('03-16', '04-15'), { promised });
    expect(problem.issues.find((each) => each.code === 'promise-broken')?.message).toContain('of use from 2027-03-16');
  });

  test('is in the plan: the window is kept where it can be, what is late is named and costs what the round says', () => {
    const { book, problem } = built(byCalendar('03-16', '03-16'), { dates: ['2027-03-15', '2027-03-18'] });
    const plan = explainPlan(book, problem, solve(problem, { seed: 1, iterations: 30 }));
    expect(judgePlan(problem, plan).violations).toEqual([]);
    expect(naiveJudge(problem, plan).faults).toEqual([]);
    expect(plan.unplaced).toEqual([]);
    expect(plan.days.map((each) => each.date)).toEqual(['2027-03-18']);
    expect(plan.issues.find((each) => each.code === 'planned-late')?.message).toMatch(/After the last useful day .*/);
    const cost = roundCost(book, plan);
    // Four lawns, two days late at $7 each.
    expect(cost.cents.late).toBe(4 * 2 * 700);
    expect(cost.planCents).toBe(Math.round(plan.totals.costUsd * 100));
    // The lawns that the view of the timing says will miss it are those that are named.
    const season = timingSeason(book, book.timings[0] as Timing, '2027-03-15');
    const lawns = book.properties.map((property) => ({ property, plannedOn: '2027-03-18', doneOn: null }));
    const verdicts = lawnsBySite(season, book.siteOffsets, lawns, '2027-03-01', '2027-03-18').flatMap(
      (each) => each.lawns,
    );
    expect(verdicts.every((each) => MISSED.includes(each.verdict))).toBe(true);
  });

  test('of a round without one changes nothing', () => {
    const without = built(null).problem;
    expect(without.jobs.every((job) => job.lastOn === undefined && job.closed === undefined)).toBe(true);
    // A timing that no round has, and a window as wide as the round, leave the problem as it is.
    const unused = built(null, {}, { timings: [byCalendar('05-01', '05-02')] }).problem;
    expect(unused.hash).toBe(without.hash);
    expect(built(byCalendar('03-01', '04-15')).problem.hash).toBe(without.hash);
  });
});
