import type { Op, ProblemRig } from '../problem/index.ts';
import type { PlanDay } from '../result/index.ts';
import type { Coverage } from './coverage.ts';
import type { Ledger } from './ledger.ts';
import type { SeenLoad } from './loads.ts';
import type { Lookup } from './lookup.ts';
import type { WorkedSpan } from './order-of-work.ts';
import type { Persons } from './persons.ts';
import type { DonePiece } from './told.ts';
import { cleanVessels, type Vessels } from './vessels.ts';
import type { MatchedVisit } from './visits.ts';

/** What the judge worked out for one day, in the units of the problem. */
export type DaySums = {
  stops: number;
  paidMs: number;
  overtimeMs: number;
  driveMs: number;
  treatMs: number;
  refillMs: number;
  refills: number;
  stationRefills: number;
  distanceM: number;
  /** Without what a machine does not reach and nobody trims. */
  treatedSqFt: number;
  /** What machines go over, overlap included, and what is treated by hand. */
  coveredSqFt: number;
  handTrimSqFt: number;
  notReachedSqFt: number;
  /** nano-dollars */
  cost: number;
};

/** A stop as it happened, to hold against the plan's own list. */
export type SeenStop = {
  readonly propertyId: string;
  readonly arriveMs: number;
  leaveMs: number;
  readonly done: DonePiece[];
};

/** A rig in the middle of its day. */
export type DayState = {
  readonly lookup: Lookup;
  readonly ledger: Ledger;
  readonly coverage: Coverage;
  readonly plan: PlanDay;
  readonly label: string;
  readonly rig: ProblemRig;
  readonly rigNumber: number;
  /** Number of the day, -1 where the date is not one of the problem's. */
  readonly dayNumber: number;
  readonly vessels: Vessels;
  readonly sums: DaySums;
  readonly stops: SeenStop[];
  readonly loads: SeenLoad[];
  /** The load in each compartment, by its number. */
  readonly openLoads: Map<number, SeenLoad>;
  /** Material below the reach of each compartment's pump. */
  readonly sumps: Map<number, number>;
  /** Jobs charged for being late on this day. */
  readonly lateJobs: Set<number>;
  clockMs: number;
  place: number;
  begun: boolean;
  ended: boolean;
  /** Last arrival or departure; what comes before the next set-up happened after it. */
  arrivedMs: number;
  /** Waiting since `arrivedMs`. */
  waitedMs: number;
  breakTaken: boolean;
  visit: MatchedVisit | null;
  /** Ground done of each op of the visit in progress. */
  readonly doneUnits: Map<Op, number>;
  lastOp: Op | null;
  /** Whether an op of the visit has ended after its hours of treating. */
  pastHours: boolean;
  /** Until when each of the two persons is busy. */
  readonly persons: Persons;
  /** Work on each zone of the visit in progress. */
  readonly worked: WorkedSpan[];
  /** Head on each machine, by the machine's number; absent until its first op. */
  readonly heads: Map<number, number>;
  /** A swap done since the last treat: machine, head and time spent. */
  swap: { readonly machineId: string; readonly headId: string; ms: number } | null;
};

export function startOfDay(
  lookup: Lookup,
  ledger: Ledger,
  coverage: Coverage,
  plan: PlanDay,
  rig: ProblemRig,
  rigNumber: number,
): DayState {
  return {
    lookup,
    ledger,
    coverage,
    plan,
    label: `${plan.date} ${plan.rigId}`,
    rig,
    rigNumber,
    dayNumber: lookup.dayOf.get(plan.date) ?? -1,
    vessels: cleanVessels(lookup.problem, rig),
    sums: emptySums(),
    stops: [],
    loads: [],
    openLoads: new Map(),
    sumps: new Map(),
    lateJobs: new Set(),
    clockMs: rig.shiftStartMs,
    place: lookup.problem.stations[rig.home]?.place ?? -1,
    begun: false,
    ended: false,
    arrivedMs: rig.shiftStartMs,
    waitedMs: 0,
    breakTaken: false,
    visit: null,
    doneUnits: new Map(),
    lastOp: null,
    pastHours: false,
    persons: { untilMs: [rig.shiftStartMs, rig.shiftStartMs] },
    worked: [],
    heads: new Map(),
    swap: null,
  };
}

export function emptySums(): DaySums {
  return {
    stops: 0,
    paidMs: 0,
    overtimeMs: 0,
    driveMs: 0,
    treatMs: 0,
    refillMs: 0,
    refills: 0,
    stationRefills: 0,
    distanceM: 0,
    treatedSqFt: 0,
    coveredSqFt: 0,
    handTrimSqFt: 0,
    notReachedSqFt: 0,
    cost: 0,
  };
}
