import type { Problem } from '../../../../core/plan/problem/index.ts';
import { type Activity, type Placement, RefillPlacer, type Visit } from '../../../../core/plan/refills/index.ts';
import { RefillSearch } from '../../../../core/plan/refills/refill-search.ts';

/** nano-dollars in dollars, to the thousandth of a cent. */
const dollars = (cost: number): string => (cost / 1e9).toFixed(5);
const seconds = (ms: number): string => (ms / 1000).toFixed(3);

/** What is decided for one row of visits, and how much was tried for it: one line for each thing. */
export function linesOf(problem: Problem, visits: readonly Visit[], placement: Placement): readonly string[] {
  const decided = placement.kind === 'impossible' ? [faultLine(placement.fault)] : dayLines(placement.outcome);
  return [...decided, ...effortLines(problem, visits)];
}

function faultLine(fault: object): string {
  return `impossible: ${valuesOf(fault)}`;
}

function dayLines(outcome: Extract<Placement, { readonly kind: 'placed' }>['outcome']): readonly string[] {
  const { activities, cost, paidMs, distanceM } = outcome;
  return [`${dollars(cost)} $, ${seconds(paidMs)} s, ${distanceM} m`, ...activities.flatMap(activityLine)];
}

/** Whatever says where material goes. Times of the others follow from them. */
function activityLine(activity: Activity): readonly string[] {
  const at = `${seconds(activity.startMs)} s`;
  if (activity.kind === 'morning')
    return [`${at} morning, into ${listOf(activity.fills)}, stock ${listOf(activity.stock)}`];
  if (activity.kind === 'break' || activity.kind === 'wait') return [`${at} ${activity.kind}`];
  if (activity.kind === 'pour') {
    const { visit, op, doneUnits, from, into, material, parts } = activity;
    return [`${at} pour at ${visit}/${op}/${doneUnits}, ${parts} of ${material} from ${from} into ${into}`];
  }
  if (activity.kind !== 'refill') return [];
  const { station, visit, op, doneUnits, rinsed, fills, stock, reason } = activity;
  const where = station < 0 ? 'from the rig' : `at station ${station}`;
  const what = `into ${listOf(fills)}, stock ${listOf(stock)}, rinsed ${rinsed.join(' ') || '-'}`;
  return [`${at} refill ${where}, ${visit}/${op}/${doneUnits}, ${what}; ${valuesOf(reason)}`];
}

function listOf(entries: readonly object[]): string {
  return entries.length === 0 ? '-' : entries.map((each) => Object.values(each).join(':')).join(' ');
}

function valuesOf(fields: object): string {
  return Object.entries(fields)
    .map(([name, value]) => (name === 'kind' ? value : `${name} ${value}`))
    .join(' ');
}

/** Refills tried and ends of the day found: with all labels, with the best cost and end known beforehand, and with few labels. */
function effortLines(problem: Problem, visits: readonly Visit[]): readonly string[] {
  const [jobs, modes] = [visits.map((each) => each.job), visits.map((each) => each.mode)];
  const search = new RefillSearch(problem, 0, 0);
  const told = (words: string, cost: number): string => {
    const { nodes } = search.labels;
    return `${words}: ${nodes} tried for ${search.finals.length} ends, the best ${dollars(cost)} $`;
  };
  const run = (beam: number, latestMs: number, upper: number): number =>
    search.run(jobs, modes, jobs.length, { beam, latestMs, upper });
  const never = Number.POSITIVE_INFINITY;
  const best = run(300, never, never);
  const lines = [told('all', best)];
  const endMs = search.bestEnd();
  lines.push(told('below that', run(300, never, best)), told('by then', run(300, endMs, never)));
  run(300, endMs - 1, never);
  lines.push(`a millisecond earlier: ${search.finals.length} ends, ${valuesOf(search.failures.dead)}`);
  lines.push(told('few', run(2, never, never)));
  const placer = new RefillPlacer(problem);
  const estimate = placer.estimate(0, jobs, modes, jobs.length, 8);
  lines.push(`estimate ${dollars(estimate)} $, end ${seconds(placer.lastEndMs(0))} s`);
  const quick = placer.place(0, visits, 'quick');
  if (quick.kind === 'placed') lines.push(`quick ${dollars(quick.outcome.cost)} $`);
  return lines;
}
