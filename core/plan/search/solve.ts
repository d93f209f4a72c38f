import { type Clock, createRandom, NEVER_STOP, type Progress, type StopSignal } from '../../base/index.ts';
import type { Problem } from '../problem/index.ts';
import type { RouteOutcome, Solution } from '../refills/index.ts';
import { Stepper } from './anneal.ts';
import { type JobTable, layOutJobs } from './jobs.ts';
import { polish } from './polish.ts';
import { choicesOf } from './recreate.ts';
import { RouteScreen } from './screen.ts';
import { Shortlist } from './shortlist.ts';
import { SMALL } from './size.ts';
import { better, emptyState, proved, type State } from './state.ts';
import { RouteValues } from './values.ts';

export type SolveOptions = {
  /** Same problem, same seed and same number of iterations give the same plan. */
  readonly seed: number;
  /** Rounds of ruin and recreate. Without it and without `seconds`, a number that suits the size. */
  readonly iterations?: number;
  /** Time to search, by the clock handed in. The first of the two limits ends the search. */
  readonly seconds?: number;
};

export type SolveRun = {
  readonly clock?: Clock;
  readonly signal?: StopSignal;
  readonly onProgress?: (progress: Progress) => void;
};

const STANDING_CLOCK: Clock = { nowMs: () => 0 };
/** Temperature at the start, as a share of a usual drive between neighbours, and how far it falls. */
const START_HEAT = 1;
const COOLING = 0.01;
/** Share of the time that is kept for polishing the best plan. */
const POLISH_SHARE = 0.12;
/** Plans of a small problem that are placed with all care before the best is taken. */
const SHORTLISTED = 12;
const PROGRESS_EVERY_MS = 100;
const PROGRESS_EVERY_ITERATIONS = 200;

/**
 * Searches for the order of stops, their days, rigs and methods: ruin and recreate with annealing, then polishing. In problems of
 * up to eight jobs every route is reckoned by the labels of ../refills, and the best dozen plans are placed with all care; in larger
 * ones routes are reckoned by rule, and the labels come in while the best plan is polished. Told to stop, it returns the best plan so
 * far.
 *
 * Fewest jobs left out comes first, then cost in nano-dollars. No proof of optimality is given; tests compare small problems with
 * brute force.
 */
export function solve(problem: Problem, options: SolveOptions, run: SolveRun = {}): Solution {
  const table = layOutJobs(problem);
  const values = new RouteValues(table);
  const random = createRandom(options.seed);
  const choices = choicesOf(table);
  const screens = problem.slots.map((_, slot) => new RouteScreen(table, slot));
  const stepper = new Stepper(table, values, screens, choices, random);
  const budget = new Budget(options, run, table.jobs);
  const heat = START_HEAT * usualDrive(table);

  let current = emptyState(table);
  let best: State = current;
  const shortlist = new Shortlist(SHORTLISTED);
  const absences = new Float64Array(table.jobs);
  while (!budget.spent()) {
    const next = stepper.step(current);
    for (const job of next.absent) absences[job] = (absences[job] as number) + 1;
    if (accepts(current, next, absences, heat * COOLING ** budget.share(), random.unit())) current = next;
    if (better(next, best)) best = bestOf(best, next, values);
    if (table.jobs <= SMALL) shortlist.add(next);
    budget.count(best, table.jobs);
  }
  const polished = polish(table, values, screens, choices, best, budget.polishSignal());
  const kept = cheapestOf(shortlist.list(), keepDrivable(values, polished), values);
  const solution = solutionOf(problem, values, kept, budget.iterations, options.seed);
  budget.report(kept, table.jobs, true);
  return solution;
}

/** In small problems a plan that is better by the labels counts only when it is better as it is really driven. */
function bestOf(best: State, next: State, values: RouteValues): State {
  if (values.table.jobs > SMALL) return next;
  const real = proved(next, values);
  return real !== null && better(real, best) ? real : best;
}

/** The cheapest of some plans when each is placed with all care; a plan that leaves out more is not looked at. */
function cheapestOf(states: readonly State[], first: State, values: RouteValues): State {
  let best = first;
  let least = values.carefulCost(first);
  for (const state of states) {
    if (state.absent.length > first.absent.length) continue;
    const cost = values.carefulCost(state);
    if (cost >= least) continue;
    best = state;
    least = cost;
  }
  return best;
}

/** Takes visits out of routes that cannot be driven after all, from the end, until they can. */
function keepDrivable(values: RouteValues, state: State): State {
  const absent = [...state.absent];
  const routes = state.routes.map((codes, slot) => {
    let kept = codes;
    while (kept.length > 0 && !Number.isFinite(values.prove(slot, kept))) {
      absent.push(Math.trunc((kept.at(-1) as number) / values.table.width));
      kept = kept.slice(0, -1);
    }
    return kept;
  });
  const costs = routes.map((codes, slot) => values.prove(slot, codes));
  return { routes, costs, absent, cost: costs.reduce((sum, each) => sum + each, 0) };
}

/**
 * Leaving out jobs that were seldom left out before is always accepted, whatever it costs (the fleet rule of Christiaens and Vanden
 * Berghe 2020); among plans that leave out as many, annealing decides.
 */
function accepts(current: State, next: State, absences: Float64Array, heat: number, chance: number): boolean {
  const before = current.absent.reduce((sum, job) => sum + (absences[job] as number), 0);
  const after = next.absent.reduce((sum, job) => sum + (absences[job] as number), 0);
  if (after < before) return true;
  if (next.absent.length > current.absent.length) return false;
  return next.cost < current.cost - heat * Math.log(Math.max(chance, 1e-12));
}

/** Cost of a usual drive between neighbours: a scale for the temperature. */
function usualDrive(table: JobTable): number {
  const rig = table.problem.rigs[0];
  const neighbours = Math.min(5, table.jobs - 1);
  if (rig === undefined || neighbours < 1) return 1;
  let ms = 0;
  let metres = 0;
  for (let job = 0; job < table.jobs; job += 1) {
    for (let k = 1; k <= neighbours; k += 1) {
      const other = table.near[job * table.jobs + k] as number;
      const at = (table.placeOf[job] as number) * table.places + (table.placeOf[other] as number);
      ms += table.problem.travelMs[at] as number;
      metres += table.problem.travelM[at] as number;
    }
  }
  const pairs = table.jobs * neighbours;
  return Math.max(1, (ms * rig.costPerMs + metres * rig.costPerM) / pairs);
}

/** How long to search, and how far it is. */
class Budget {
  iterations = 0;
  private readonly limit: number;
  private readonly endMs: number;
  private readonly searchEndMs: number;
  private readonly startMs: number;
  private readonly clock: Clock;
  private readonly signal: StopSignal;
  private readonly onProgress: ((progress: Progress) => void) | undefined;
  private nowMs: number;
  private reportedMs = Number.NEGATIVE_INFINITY;
  private reportedShare = 0;

  constructor(options: SolveOptions, run: SolveRun, jobs: number) {
    const usual = jobs <= SMALL ? 600 : 20_000;
    this.clock = run.clock ?? STANDING_CLOCK;
    this.signal = run.signal ?? NEVER_STOP;
    this.onProgress = run.onProgress;
    this.limit = options.iterations ?? (options.seconds === undefined ? usual : Number.POSITIVE_INFINITY);
    this.startMs = this.clock.nowMs();
    this.nowMs = this.startMs;
    const spanMs = options.seconds === undefined ? Number.POSITIVE_INFINITY : options.seconds * 1000;
    this.endMs = this.startMs + spanMs;
    this.searchEndMs = this.startMs + spanMs * (1 - POLISH_SHARE);
  }

  spent(): boolean {
    return this.iterations >= this.limit || this.nowMs >= this.searchEndMs || this.signal.stopped();
  }

  /** Share of the search that is over, 0 to 1. */
  share(): number {
    const byCount = Number.isFinite(this.limit) ? this.iterations / this.limit : 0;
    const byTime = Number.isFinite(this.endMs) ? (this.nowMs - this.startMs) / (this.searchEndMs - this.startMs) : 0;
    return Math.min(1, Math.max(byCount, byTime));
  }

  count(best: State, jobs: number): void {
    this.iterations += 1;
    this.nowMs = this.clock.nowMs();
    this.report(best, jobs, false);
  }

  polishSignal(): StopSignal {
    return { stopped: () => this.signal.stopped() || this.clock.nowMs() >= this.endMs };
  }

  report(best: State, jobs: number, last: boolean): void {
    if (this.onProgress === undefined) return;
    const due =
      this.nowMs - this.reportedMs >= PROGRESS_EVERY_MS ||
      (this.nowMs === this.startMs && this.iterations % PROGRESS_EVERY_ITERATIONS === 0);
    if (!last && !due) return;
    this.reportedMs = this.nowMs;
    this.reportedShare = last ? 1 : Math.max(this.reportedShare, this.share() * (1 - POLISH_SHARE));
    const dollars = (best.cost / 1e9).toFixed(2);
    const bestSoFar = `${jobs - best.absent.length} of ${jobs} visits placed, $${dollars}`;
    this.onProgress({ step: 'plan', done: Math.round(this.reportedShare * 1000), total: 1000, bestSoFar });
  }
}

function solutionOf(problem: Problem, values: RouteValues, state: State, iterations: number, seed: number): Solution {
  const routes: RouteOutcome[] = [];
  const unserved = [...state.absent];
  state.routes.forEach((codes, slot) => {
    if (codes.length === 0) return;
    const outcome = values.place(slot, codes, 'explained');
    if (outcome === null) throw new RangeError(`route ${slot} was proved and cannot be placed`);
    routes.push(outcome);
  });
  const cost = routes.reduce((sum, route) => sum + route.cost, 0);
  return {
    problemHash: problem.hash,
    routes,
    unserved: unserved.sort((left, right) => left - right),
    cost,
    iterations,
    seed,
  };
}
