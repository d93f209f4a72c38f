import { hoursOfDays, type Job, type Problem, type ProblemRig, type RouteSlot } from '../problem/index.ts';
import { withAllAboard } from './aboard.ts';
import { settleAmounts } from './amounts.ts';
import { withoutIdle } from './busy.ts';
import { moveEarlier } from './earlier.ts';
import { finish, type Played } from './finish.ts';
import { keepLedger } from './ledger.ts';
import { findReasons } from './reasons.ts';
import { RefillSearch } from './refill-search.ts';
import type { RefillEvent, SearchLimits } from './search-limits.ts';
import { isTimeline, playDay, type Timeline, type TimelineFault } from './timeline.ts';
import type { RouteFault, RouteOutcome, Visit } from './types.ts';

/** The day with its refills, or what makes the order impossible. */
export type Placement =
  | { readonly kind: 'placed'; readonly outcome: RouteOutcome }
  | { readonly kind: 'impossible'; readonly fault: RouteFault };

/** How far the placing goes: the best day of the labels; improved where that can be; and with the reason of every refill. */
export type Care = 'quick' | 'careful' | 'explained';

/** Labels kept at most from op to op where the best is wanted; met only by days of dozens of forced refills. */
const WIDE = 300;
const NARROW = 8;
/** Labels that do where only time counts. */
const FAIR = 100;
/** Ends of the day that are dearer than the best one by more than this are not looked at. */
const MARGIN_MS = 60_000;
/** Ends of the day that are played exactly before the best is taken. */
const ENDS = 12;

/** Places refills on routes of one problem; keeps its buffers from one route to the next. */
export class RefillPlacer {
  readonly problem: Problem;
  /** [row of the day * rigs + rig] */
  private readonly searches: (RefillSearch | undefined)[] = [];
  private readonly rowOf: Int32Array;

  constructor(problem: Problem) {
    this.problem = problem;
    this.rowOf = hoursOfDays(problem).rowOf;
  }

  /**
   * Cost of a route without lateness as the labels reckon it: exact where neither windows nor hours nor breaks bind, else close.
   * Infinity where it cannot be done. `beam` bounds the labels kept from op to op.
   */
  estimate(slot: number, jobs: ArrayLike<number>, modes: ArrayLike<number>, count: number, beam: number): number {
    const search = this.searchOf(slot);
    return search.run(jobs, modes, count, { beam, latestMs: latestOf(search.model.rig) });
  }

  /** End of the paid day of the best route that `estimate` found last for this slot. */
  lastEndMs(slot: number): number {
    return this.searchOf(slot).bestEnd();
  }

  /** See `placeRefills`. `beam` bounds the labels kept from op to op: with few of them the refills are good ones, not the best. */
  place(slot: number, visits: readonly Visit[], care: Care = 'explained', beam: number = WIDE): Placement {
    if (visits.length === 0) return { kind: 'placed', outcome: emptyRoute(slot) };
    const search = this.searchOf(slot);
    const jobs = visits.map((visit) => visit.job);
    const modes = visits.map((visit) => visit.mode);
    const limits = { beam, latestMs: latestOf(search.model.rig) };
    runTwice(search, jobs, modes, limits);
    const { best: first, fault } = playEnds(search);
    const best = first === null || care === 'quick' ? first : finish(search, first);
    if (best === null) return { kind: 'impossible', fault: this.faultOf(search, jobs, modes, fault) };
    if (care !== 'explained') return { kind: 'placed', outcome: this.outcome(slot, visits, best.timeline) };
    const { events, timeline } = best;
    const reasons = findReasons(search, events, timeline.cost, { ...limits, beam: NARROW });
    const explained = playDay(search.chain, best, reasons) as Timeline;
    return { kind: 'placed', outcome: this.outcome(slot, visits, explained) };
  }

  /** Visits whose customers are reached too late whatever is done, as many as that holds for once those before them are let wait. */
  missed(slot: number, visits: readonly Visit[]): readonly number[] {
    const search = this.searchOf(slot);
    const latestMs = latestOf(search.model.rig);
    const jobs = visits.map((visit) => visit.job);
    const modes = visits.map((visit) => visit.mode);
    search.run(jobs, modes, jobs.length, { beam: FAIR, latestMs, hasty: true, marked: true, lenient: true });
    return [...search.failures.missed];
  }

  private outcome(slot: number, visits: readonly Visit[], timeline: Timeline): RouteOutcome {
    const { day, rig } = this.problem.slots[slot] as RouteSlot;
    const late = visits.reduce(
      (sum, visit) => sum + ((this.problem.jobs[visit.job] as Job).lateCost[day] as number),
      0,
    );
    const { paidMs, distanceM, cost } = timeline;
    const activities = withAllAboard(this.problem, this.problem.rigs[rig] as ProblemRig, timeline.activities);
    return { slot, visits, activities, paidMs, distanceM, cost: cost + late };
  }

  private faultOf(
    search: RefillSearch,
    jobs: readonly number[],
    modes: readonly number[],
    fault: TimelineFault | null,
  ): RouteFault {
    if (fault !== null && fault.kind !== 'too-long') return { kind: fault.kind, visit: fault.visit };
    const { visit, kind, material } = search.failures.dead;
    if (fault !== null || kind === 'too-long') {
      search.run(jobs, modes, jobs.length, { beam: NARROW, latestMs: Number.POSITIVE_INFINITY });
      const endMs = search.earliestEnd();
      return { kind: 'too-long', overMs: Math.max(1, endMs - latestOf(search.model.rig)) };
    }
    if (kind === 'window') return { kind: 'window-missed', visit };
    if (kind === 'closed') return { kind: 'station-closed', visit };
    if (kind === 'payload') return { kind: 'payload', visit };
    return { kind: 'no-material', visit: Math.max(0, visit), material };
  }

  /** One for each rig, and one more for each of its days with hours of treating. */
  private searchOf(slot: number): RefillSearch {
    const { rig, day } = this.problem.slots[slot] as RouteSlot;
    const row = this.rowOf[day] as number;
    const key = row * this.problem.rigs.length + rig;
    const search = this.searches[key] ?? new RefillSearch(this.problem, rig, row === 0 ? -1 : day);
    this.searches[key] = search;
    return search;
  }
}

/**
 * First with few labels, so that the wide run can leave out all that costs more; a margin where times of day may bind. Where few
 * labels find nothing, time alone is looked at: that finds a day, or that there is none, long before all that may be cheapest is known.
 */
function runTwice(search: RefillSearch, jobs: readonly number[], modes: readonly number[], limits: SearchLimits): void {
  let first = search.run(jobs, modes, jobs.length, { ...limits, beam: NARROW, marked: true });
  if (!search.cut) return;
  if (!Number.isFinite(first)) {
    first = search.run(jobs, modes, jobs.length, { ...limits, beam: FAIR, hasty: true });
    if (!Number.isFinite(first)) return;
  }
  search.run(jobs, modes, jobs.length, { ...limits, upper: first + MARGIN_MS * search.costPerMs });
}

function latestOf(rig: ProblemRig): number {
  return rig.shiftStartMs + rig.shiftMs + rig.overtimeMs;
}

function emptyRoute(slot: number): RouteOutcome {
  return { slot, visits: [], activities: [], paidMs: 0, distanceM: 0, cost: 0 };
}

/** Plays the ends of the day that the labels found, best first, until no further one can be better. */
function playEnds(search: RefillSearch): { best: Played | null; fault: TimelineFault | null } {
  let best: Played | null = null;
  let fault: TimelineFault | null = null;
  const ends = Math.min(ENDS, search.finals.length);
  for (let end = 0; end < ends; end += 1) {
    const events = search.eventsOf(search.finals[end] as number);
    const { played, fault: failed } = playBest(search, events);
    fault ??= failed;
    if (played !== null && (best === null || played.timeline.cost < best.timeline.cost)) best = played;
  }
  return { best, fault };
}

/** Plays events as they are, then with the refills after each station as early as can be, and keeps what is better. */
function playBest(
  search: RefillSearch,
  events: readonly RefillEvent[],
): { played: Played | null; fault: TimelineFault | null } {
  const { played: plain, fault } = playBoth(search, events);
  let played = plain;
  for (let first = 0; first < events.length && played !== null; first += 1) {
    if (first > 0 && (events[first - 1] as RefillEvent).station < 0) continue;
    const row = moveEarlier(search.chain, played.events, first);
    const other = row === null ? null : playBoth(search, row).played;
    if (other !== null && other.timeline.cost < played.timeline.cost) played = other;
  }
  return { played, fault };
}

function playBoth(
  search: RefillSearch,
  events: readonly RefillEvent[],
): { played: Played | null; fault: TimelineFault | null } {
  let best: Played | null = null;
  let fault: TimelineFault | null = null;
  for (const sparing of [false, true]) {
    const amounts = settleAmounts(search, keepLedger(search.chain, events), sparing);
    if (amounts === null) continue;
    const work = withoutIdle({ events, ...amounts });
    const played = playDay(search.chain, work);
    if (!isTimeline(played)) fault ??= played;
    else if (best === null || played.cost < best.timeline.cost) best = { ...work, timeline: played };
  }
  return { played: best, fault };
}

/**
 * Places the refills of one rig on one day along a fixed row of visits (job and mode) so that the route costs least.
 *
 * First by labels: refills inside ops lie where a compartment runs dry, transfers are reckoned when their parts are used, and where
 * more than a few hundred labels stay in play the rest is cut. The best ends of the day are played exactly. The best of them is then
 * improved (see `finish`): a linear programme settles all amounts together with the places of refills inside ops, with waits, hours
 * and the break in it; in rows of up to ten visits single refills are also tried elsewhere, until nothing helps. That is a descent,
 * not a proof; but of 2,194 small days of tests/core/plan/oracle/refills.test.ts (its families, seeds 1 to 440) four cost more than
 * brute force finds, and 36 less. Longer rows have only their amounts settled anew, where flows differ or a wait comes after a refill.
 *
 * Morning load, refills, trips, rinses and breaks are as in ../problem/types.ts. A station on the way to a stop is visited before the
 * drive there; at most two stations lie between two stops.
 *
 * @param slot index into `problem.slots`; whether the jobs are allowed on its day is not looked at
 */
export function placeRefills(problem: Problem, slot: number, visits: readonly Visit[]): Placement {
  return new RefillPlacer(problem).place(slot, visits);
}
