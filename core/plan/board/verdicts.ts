import { judgePlan, type Violation } from '../judge/index.ts';
import type { Problem } from '../problem/index.ts';
import type { Names, Plan, PlanDay, UnplacedTask } from '../result/index.ts';
import { breachesIn } from './breaches.ts';
import type { Breach } from './types.ts';

/**
 * What plans of one problem break. A day that was judged once is not judged again while it stays the same object: a move changes two
 * days of dozens.
 */
export class Verdicts {
  private readonly problem: Problem;
  private readonly names: Names;
  private readonly ofDay = new WeakMap<PlanDay, readonly Violation[]>();
  private readonly workOfDay = new WeakMap<PlanDay, readonly UnplacedTask[]>();
  /** What belongs to no day, found when a whole plan was judged last. */
  private ofPlan: readonly Violation[] = [];

  constructor(problem: Problem, names: Names) {
    this.problem = problem;
    this.names = names;
  }

  /** Everything that a plan breaks, its own sums included. */
  whole(plan: Plan): readonly Breach[] {
    const { violations } = judgePlan(this.problem, plan);
    this.keep(plan.days, violations);
    this.ofPlan = violations.filter((each) => each.spot === undefined);
    return this.inWords(plan, violations);
  }

  /** The same for a plan that a move has made of one that was judged: only days that are new are looked at. */
  afterMove(plan: Plan): readonly Breach[] {
    const fresh = plan.days.filter((day) => !this.ofDay.has(day));
    if (fresh.length === plan.days.length) return this.whole(plan);
    const others = plan.days.filter((day) => this.ofDay.has(day));
    // The work of the other days is told as left out, so that nobody misses it.
    const part: Plan = {
      ...plan,
      days: fresh,
      unplaced: [...plan.unplaced, ...others.flatMap((day) => this.workOf(day))],
    };
    const { violations } = judgePlan(this.problem, part);
    this.keep(fresh, violations);
    const ofPart = violations.filter(({ spot, code }) => spot === undefined && code !== 'figure-differs');
    const ofDays = plan.days.flatMap((day) => this.ofDay.get(day) ?? []);
    return this.inWords(plan, [...ofDays, ...this.ofPlan, ...ofPart]);
  }

  private workOf(day: PlanDay): readonly UnplacedTask[] {
    const known = this.workOfDay.get(day) ?? workOf(day);
    this.workOfDay.set(day, known);
    return known;
  }

  private keep(days: readonly PlanDay[], violations: readonly Violation[]): void {
    for (const day of days) {
      const own = violations.filter(({ spot }) => spot?.date === day.date && spot.rigId === day.rigId);
      this.ofDay.set(day, own);
    }
  }

  private inWords(plan: Plan, violations: readonly Violation[]): readonly Breach[] {
    return breachesIn(plan, violations, this.names);
  }
}

/** Each task of a day once, as work that is left out is listed. */
function workOf(day: PlanDay): readonly UnplacedTask[] {
  const tasks = new Map<string, UnplacedTask>();
  for (const { propertyId, zoneId, treatmentId, step } of day.stops.flatMap((stop) => stop.tasks)) {
    const task = { propertyId, zoneId, treatmentId, step, propertyName: '', zoneName: '', reasons: [] };
    tasks.set(JSON.stringify([propertyId, zoneId, treatmentId, step]), task);
  }
  return [...tasks.values()];
}
