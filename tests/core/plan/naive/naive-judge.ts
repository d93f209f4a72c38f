import type { Problem } from '../../../../core/plan/problem/index.ts';
import type { Plan, PlanDay } from '../../../../core/plan/result/index.ts';
import { changesOf } from './contents.ts';
import { type DayFacts, type Fault, GROUND, isKind, opOf, sum, taskNumber } from './day-facts.ts';
import { differing } from './differing.ts';
import { type DaySums, figureFaults, furtherFaults, sumsOf } from './figures.ts';
import { contentFaults } from './limits.ts';
import { timeFaults } from './times.ts';
import { marks, visitsOf } from './visits.ts';

/** What a naive judge says of a plan: every broken rule, every further figure that is off, and its own sums. */
export type NaiveVerdict = {
  readonly faults: readonly Fault[];
  readonly further: readonly Fault[];
  readonly days: readonly DaySums[];
};

/**
 * A second judge, written from docs/methods/planning.md and the published schemas alone. Slow and plain: there is no state that
 * walks along the day; every level, place and time is worked out anew from all activities before it.
 */
export function naiveJudge(problem: Problem, plan: Plan): NaiveVerdict {
  const days = plan.days.flatMap((day) => factsOf(problem, plan, day) ?? []);
  const sums = days.map(sumsOf);
  const where = (facts: DayFacts, fault: Fault): Fault => ({
    ...fault,
    where: `${facts.day.date} ${facts.day.rigId}, ${fault.where}`,
  });
  const faults = [
    ...planFaults(problem, plan),
    ...days.flatMap((facts) =>
      [...timeFaults(facts), ...contentFaults(facts), ...figureFaults(facts)].map((each) => where(facts, each)),
    ),
    ...coverageFaults(problem, plan, days),
    ...totalFaults(problem, plan, sums),
  ];
  const further = days.flatMap((facts) => furtherFaults(facts).map((each) => where(facts, each)));
  return { faults, further: [...further, ...furtherTotals(plan)], days: sums };
}

function factsOf(problem: Problem, plan: Plan, day: PlanDay): DayFacts | null {
  const rigNumber = problem.rigs.findIndex((each) => each.rigId === day.rigId);
  const rig = problem.rigs[rigNumber];
  if (rig === undefined || (day.activities.length === 0 && day.stops.length === 0)) return null;
  const dayNumber = problem.dates.indexOf(day.date);
  const facts = { problem, plan, day, rig, rigNumber, dayNumber, visits: visitsOf(problem, day, rigNumber) };
  return { ...facts, changes: changesOf(facts) };
}

/** The plan is for this problem, and each of its days for a rig that works then, once. */
function planFaults(problem: Problem, plan: Plan): readonly Fault[] {
  const stale: Fault[] =
    plan.problemHash === problem.hash ? [] : [{ code: 'plan-stale', where: 'plan', words: plan.problemHash }];
  return plan.days.reduce((faults, day, index) => {
    const where = `${day.date} ${day.rigId}`;
    const rig = problem.rigs.findIndex((each) => each.rigId === day.rigId);
    const date = problem.dates.indexOf(day.date);
    if (rig < 0) faults.push({ code: 'rig-unknown', where, words: 'no such rig' });
    else if (!problem.slots.some((slot) => slot.rig === rig && slot.day === date))
      faults.push({ code: 'day-not-allowed', where, words: 'does not work then' });
    if (plan.days.slice(0, index).some((other) => other.date === day.date && other.rigId === day.rigId))
      faults.push({ code: 'time-not-possible', where, words: 'planned twice' });
    return faults;
  }, stale);
}

/** Every task is done from its first to its last square foot once, or listed, and not both. */
function coverageFaults(problem: Problem, plan: Plan, days: readonly DayFacts[]): readonly Fault[] {
  const treats = days.flatMap((facts) => facts.day.activities.filter(isKind('treat')));
  // In the ground of a task a hand trim comes after what the machine does.
  const inTask = days.flatMap((facts) =>
    facts.day.activities.flatMap((each, index) => {
      if (each.kind !== 'treat') return [];
      const before = opOf(facts, index)?.groundBefore ?? 0;
      const [from, to] = marks(each);
      return [{ task: taskNumber(problem, each), piece: [before + from, before + to] as const }];
    }),
  );
  const listed = plan.unplaced.map((each) => taskNumber(problem, each));
  const faults: Fault[] = [];
  const add = (code: Fault['code'], where: string, words: string): void => void faults.push({ code, where, words });
  if (listed.includes(-1)) add('task-unknown', 'unplaced', 'no such task');
  for (const treat of treats) {
    if (taskNumber(problem, treat) < 0) add('task-unknown', treat.zoneId, 'no such task');
    if (treat.areaSqFt < -GROUND || treat.doneSqFt < -GROUND)
      add('ground-not-covered', treat.zoneId, 'negative ground');
  }
  problem.tasks.forEach((task, number) => {
    const where = `${task.propertyId}, ${task.zoneId}, ${task.treatmentId}`;
    const pieces = inTask.filter((each) => each.task === number).map((each) => each.piece);
    const times = listed.filter((each) => each === number).length;
    if (times > 1) add('figure-differs', where, 'listed twice');
    if (pieces.length > 0 && times > 0) add('figure-differs', where, 'done and listed');
    if (pieces.length === 0 && times === 0) add('task-missing', where, 'neither done nor listed');
    if (pieces.length === 0) return;
    const inOrder = [...pieces].sort((left, right) => left[0] - right[0]);
    const ends = [0, ...inOrder.map((_, at) => Math.max(0, ...inOrder.slice(0, at + 1).map((each) => each[1])))];
    const starts = [...inOrder.map((each) => each[0]), task.areaUnits];
    starts.forEach((start, at) => {
      const before = ends[at] ?? 0;
      if (start > before + GROUND) add('ground-not-covered', where, `${before} to ${start}`);
      if (start < before - GROUND) add('ground-covered-twice', where, `${start} to ${before}`);
    });
  });
  return faults;
}

function totalFaults(problem: Problem, plan: Plan, sums: readonly DaySums[]): readonly Fault[] {
  const { totals } = plan;
  const { cost: unlike, faults } = unlikeDays(problem, plan, sums);
  const all = (key: keyof DaySums): number => sum(sums.map((each) => each[key]));
  const many = Math.max(1, sums.length);
  return faults.concat(
    differing('totals', [
      ['days', totals.days, sums.length, 0],
      ['stops', totals.stops, all('stops'), 0],
      ['treatedSqFt', totals.treatedSqFt, all('treatedSqFt'), 0.5],
      ['coveredSqFt', totals.coveredSqFt, all('coveredSqFt'), 0.5],
      ['handTrimSqFt', totals.handTrimSqFt, all('handTrimSqFt'), 0.5],
      ['notReachedSqFt', totals.notReachedSqFt, all('notReachedSqFt'), 0.5],
      ['paidSec', totals.paidSec, all('paidSec'), 0.05 * many],
      ['overtimeSec', totals.overtimeSec, all('overtimeSec'), 0.05 * many],
      ['driveSec', totals.driveSec, all('driveSec'), 0.05 * many],
      ['distanceM', totals.distanceM, all('distanceM'), 0.5 * many],
      ['refills', totals.refills, all('refills'), 0],
      ['fillPointVisits', totals.fillPointVisits, all('stationRefills'), 0],
      ['loads', totals.loads, sum(plan.days.map((day) => day.loads.length)), 0],
      ['costUsd', totals.costUsd, (all('cost') + unlike) / 1e9, 0.0105 * many],
      ['unplaced', totals.unplaced, plan.unplaced.length, 0],
    ]),
  );
}

/** Part 9: hours above the mean day have a price where the problem says so. */
export function unlikeDays(
  problem: Problem,
  plan: Plan,
  sums: readonly DaySums[],
): { readonly cost: number; readonly faults: readonly Fault[] } {
  const price = problem.evenDays;
  if (price === undefined) return { cost: 0, faults: [] };
  const said = plan.evenDays;
  const lengths = sums.map((each) => Math.round(each.paidSec * 1000));
  const mean = lengths.length === 0 ? 0 : Math.ceil(sum(lengths) / lengths.length);
  const above = sum(lengths.map((each) => (each > mean ? each - mean : 0)));
  const cost = above * price.costPerMs;
  const missing: Fault = { code: 'figure-differs', where: 'evenDays', words: 'not said' };
  if (said === undefined) return { cost, faults: [missing] };
  const faults = differing('evenDays', [
    ['usdPerHour', said.usdPerHour, price.usdPerHour, 0],
    ['meanSec', said.meanSec, mean / 1000, 0.05],
    ['shortestSec', said.shortestSec, lengths.length === 0 ? 0 : Math.min(...lengths) / 1000, 0.05],
    ['longestSec', said.longestSec, Math.max(0, ...lengths) / 1000, 0.05],
    ['aboveSec', said.aboveSec, above / 1000, 0.05 * Math.max(1, lengths.length)],
    ['costUsd', said.costUsd, cost / 1e9, 0.0105],
  ]);
  return { cost, faults };
}

function furtherTotals(plan: Plan): readonly Fault[] {
  const water = sum(plan.days.flatMap((day) => day.loads.map((load) => load.volumeGal)));
  return differing('totals', [['waterGal', plan.totals.waterGal, water, 0.006]]);
}
