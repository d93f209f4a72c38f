import type { Issue } from '../../base/index.ts';
import type { Method } from '../../reach/index.ts';
import type { TravelKind } from '../../travel/index.ts';

/**
 * The frozen planning problem: whole numbers only, so that search, refills and judge agree to the last unit.
 *
 * Units: time in milliseconds after local midnight or as a span; levels in `parts`, one hundredth of a gallon (tanks, water)
 * or of a pound (hoppers, dry stock); ground in whole ft2; weight in ten-thousandths of a pound; money in nano-dollars;
 * distance in metres. Rounding is conservative: demands, times and weights up, capacities and limits down.
 *
 * How stock moves. A rig leaves home with its compartments and its stock loaded as far as the work needs and capacities allow.
 * A compartment is emptied by treating and refilled
 *  - from the rig, wherever the rig stands (`rigRefill`): costs `rig.refillMs` once for the event whatever it fills, more
 *    `rig.midZoneMs` where the event falls inside an op, and `fillMsPerPart` for each part moved;
 *  - at a station (a fill point): the rig drives there and on (or back), pays `station.visitMs` and, for each part that goes into
 *    the rig's stock or a compartment, `station.msPerPart` of that stock, plus `fillMsPerPart` for each part that goes into a
 *    compartment. A visit from the middle of a stop also pays `op.reloadMs` (machine onto the rig and off again), and
 *    `rig.midZoneMs` where it falls inside an op. A station resupplies only the stocks that it holds.
 * Parts loaded at home before the start cost nothing but `rig.morningMs`. A rig that `begins` with something aboard, in the middle of a
 * day, loads nothing then: it has what it has, and what is of no use stays aboard until it is rinsed out or the day ends.
 *
 * Bags that ride on a machine are a compartment of their own that no op draws on. They are filled with whatever their hopper holds,
 * in the same events as it, at `fillMsPerPart` 0, and poured into the hopper wherever the machine works, between ops or inside one:
 * that takes `pours.msPerPart` for each part and nothing else, neither a refill from the rig nor a way back to it.
 *
 * Inside an op, ground is counted in whole ft2 (`areaUnits`): after x of X ft2 an op has drawn ceil(parts * x / X) of each of its
 * draws, and its time is floor(serviceMs * x / X).
 *
 * A compartment holds one material at a time. Before an op that needs another material in a tank, the tank is rinsed:
 * `material.rinseMs` of the material that comes out, `rinseParts` of water from the rig's stock (or from the station, when the
 * change is made there); what was in it is left over. Hoppers are emptied in the same way with rinseParts 0, and bags beside a hopper
 * change together with it at no cost. The change is part of a refill event.
 *
 * Two persons. At a stop the ops of a mode that are marked `second` are done by a second person while the first one does the others:
 * each does its own ops in their order. A refill, wherever it is, brings both together: until it begins what comes before it in the
 * order of ops is done by both, and after it both go on. So each stretch of a stop between refills lasts as long as the longer of its
 * two strands. Nothing happens beside setting up, packing up, driving and refilling.
 */
export type Problem = {
  /** Fingerprint of everything below. */
  readonly hash: string;
  readonly bookId: string;
  readonly roundId: string;
  readonly dates: readonly string[];
  readonly placeIds: readonly string[];
  /** Row-major [from * placeIds.length + to]. */
  readonly travelMs: Int32Array;
  readonly travelM: Int32Array;
  /** Where the travel figures come from. */
  readonly travelKind: TravelKind;
  /** Whose roads the drive times come from; absent where none do. */
  readonly travelCredit?: string;
  readonly stocks: readonly Stock[];
  readonly materials: readonly Material[];
  readonly stations: readonly Station[];
  readonly rigs: readonly ProblemRig[];
  /** One per rig and working day, ordered by day, then rig. */
  readonly slots: readonly RouteSlot[];
  readonly tasks: readonly Task[];
  readonly jobs: readonly Job[];
  /** What days of unlike length cost; absent where they may be as they come. */
  readonly evenDays?: EvenDays;
  /** Rigs and machines that are out on single dates; absent for none. A rig that is out has no slot then. */
  readonly outages?: readonly Outage[];
  /** What was done before and is no work of the problem; absent for nothing. */
  readonly done?: readonly DoneWork[];
  /** Tasks that no rig can do, with the reason for every rig. They are in no job. */
  readonly unplaceable: readonly UnplaceableTask[];
  /** Warnings and notes found while building (rates that disagree, tight gates, estimates). */
  readonly issues: readonly Issue[];
};

/** A rig that does not go on a date, or that goes without one of its machines. */
export type Outage = {
  readonly date: string;
  readonly rigId: string;
  /** Absent: the whole rig is out. */
  readonly machineId?: string;
};

/** Work of a round that is not planned any more: one step on one zone, all steps where none is named, or a whole property. */
export type DoneWork = {
  readonly propertyId: string;
  readonly zoneId?: string;
  readonly treatmentId?: string;
  readonly step?: number;
};

/** What a rig carries and draws on: water, or one dry product. */
export type Stock = {
  readonly kind: 'water' | 'dry';
  /** '' for water, else the product id. */
  readonly productId: string;
  /** Weight of one part, ten-thousandths of a pound: 834 for water (8.34 lb/gal), 100 for dry goods. */
  readonly weightPerPart: number;
  /** Parts in one bag; 0 for water. */
  readonly bagParts: number;
};

/** What a compartment can hold: a mix (made with water) or a dry product. */
export type Material = {
  /** Mix id or product id. */
  readonly id: string;
  /** Index into `stocks`. */
  readonly stock: number;
  readonly rinseMs: number;
  readonly rinseParts: number;
  /** Most that a plan may leave of it in a compartment, before a rinse or at the end of the day; absent: any amount. parts */
  readonly reserveParts?: number;
};

/** A fill point. */
export type Station = {
  readonly fillPointId: string;
  readonly place: number;
  readonly openMs: number;
  readonly closeMs: number;
  readonly visitMs: number;
  /** For each stock: milliseconds per part taken on, or -1 where it cannot be had here. */
  readonly msPerPart: readonly number[];
};

/** A tank, hopper, bag rack or hand vessel as the search and the judge count it: in whole parts and milliseconds. */
export type ProblemCompartment = {
  /** "machineId/compartmentId" (joined tanks: ids joined with "+"), "machineId/bags", or the hand method id. */
  readonly id: string;
  readonly kind: 'tank' | 'dry';
  /** Usable content: capacity less what cannot be drawn. parts */
  readonly capacityParts: number;
  readonly fillMsPerPart: number;
  /** What lies below the reach of the pump and is filled once for each mix; absent: nothing. parts, rounded up */
  readonly sumpParts?: number;
  /** Given for the bags that ride on a machine; absent for what work draws on. */
  readonly pours?: {
    /** Index of the hopper that the bags go into. It stands before them in the list. */
    readonly into: number;
    /** Time for each part poured: never less than the hopper's `fillMsPerPart`. */
    readonly msPerPart: number;
  };
};

/** A rig as the search and the judge count it: in whole parts and milliseconds after midnight. */
export type ProblemRig = {
  readonly rigId: string;
  /** Indices into `stations`: where the day starts and is loaded, and where it ends. */
  readonly home: number;
  readonly end: number;
  /**
   * Index into `placeIds`: the place that a day sets out from and comes back to. That of `home` where the two are one; else a place of
   * its own from which all ways are those from home, and to which all ways are those to the end.
   */
  readonly depot: number;
  /** When the paid day starts. */
  readonly shiftStartMs: number;
  /** Regular length of the paid day, from `shiftStartMs` to the end of the evening work. */
  readonly shiftMs: number;
  readonly overtimeMs: number;
  readonly morningMs: number;
  readonly eveningMs: number;
  /** A break of `breakMs` is taken on the first arrival at a stop at or after this time of day; -1 for none. */
  readonly breakAfterMs: number;
  readonly breakMs: number;
  /** Crew pay per millisecond of the whole paid day; at least 1. nano-dollars */
  readonly costPerMs: number;
  /** Added pay per millisecond beyond `shiftMs`. */
  readonly overtimeCostPerMs: number;
  readonly costPerM: number;
  readonly costPerDay: number;
  readonly compartments: readonly ProblemCompartment[];
  /** Water that the nurse tank holds, parts; 0 without one. */
  readonly nurseParts: number;
  readonly bagPlaces: number;
  readonly refillMs: number;
  readonly midZoneMs: number;
  /**
   * Water, dry goods and mixes that may be aboard at once, ten-thousandths of a pound: payload less machines and sumps.
   * Checked as the sum over stocks of what has been used since that stock was last taken on, which is never less than
   * what is really aboard when only what is needed is carried.
   */
  readonly cargoLimit: number;
  /** What is aboard when the day begins, where that is given; absent: what the work needs is loaded at home. */
  readonly begins?: Aboard;
};

/** What a rig has aboard at one moment. */
export type Aboard = {
  /** For each compartment what is in it, and the index of its material, -1 where it is clean. parts */
  readonly parts: readonly number[];
  readonly materials: readonly number[];
  /** For each stock. parts */
  readonly stockParts: readonly number[];
};

/** A price on the time by which a rig's day is longer than the mean of all days of the plan. */
export type EvenDays = {
  /** As it was entered. */
  readonly usdPerHour: number;
  /** The same in the problem's units, at least 1. nano-dollars per millisecond */
  readonly costPerMs: number;
};

/** One day of one rig, by their numbers in the problem. */
export type RouteSlot = { readonly rig: number; readonly day: number };

/** One treatment step on one zone. */
export type Task = {
  readonly propertyId: string;
  readonly zoneId: string;
  readonly treatmentId: string;
  readonly step: number;
  /** Ground treated, whole ft2, rounded up. */
  readonly areaUnits: number;
  /** Where the task stands in the order of work: on the same zone nothing with a greater rank begins before it is finished. */
  readonly rank: number;
};

/** Amount of one compartment that an op empties, over its whole ground. */
export type Draw = { readonly compartment: number; readonly parts: number };

/** What the passes of a machine over the ground of an op come to. Its time and draws hold it already: these are for telling. */
export type OpGround = {
  /** Ground that the material goes over, overlap included, whole ft2. */
  readonly coveredUnits: number;
  /** Most passes over any one place. */
  readonly worstPasses: number;
  /** Straight swaths, and passes along the edge and round obstacles. */
  readonly swaths: number;
  readonly trims: number;
  /** Ground of the op that the machine does not reach and nobody trims by hand, whole ft2. */
  readonly leftUnits: number;
};

/** One task done by one method of one rig, or one of its two parts: what a machine reaches, and what is trimmed by hand. */
export type Op = {
  readonly task: number;
  /** Given for a hand trim: ground of its task that the machine's op does, which comes first in counting ground. whole ft2 */
  readonly groundBefore?: number;
  /** Given where time and draws come from the passes of the machine. */
  readonly ground?: OpGround;
  readonly method: Method;
  /** Index into `materials`, or -1 where nothing is applied (aeration). */
  readonly material: number;
  readonly draws: readonly Draw[];
  readonly areaUnits: number;
  readonly serviceMs: number;
  /** Machine of the rig whose head this op needs, or -1: a number per machine in the rig's own order. */
  readonly machine: number;
  /** Number of the head on that machine, or -1. */
  readonly head: number;
  /** Minutes to fit that head when another one is on. A machine leaves home with the head of its first op. */
  readonly swapMs: number;
  /** Machine onto the rig and off again, for a trip to a station from the middle of the stop. */
  readonly reloadMs: number;
  /** True where a second person does it beside the ops that are not marked. */
  readonly second: boolean;
};

/** One way for a rig to do a whole job: ops in the order in which they are done. */
export type Mode = {
  /** From parking to the first op: park, flag, unload, hose out. */
  readonly beforeMs: number;
  /** From the last op to driving off: hose in, load, notice. */
  readonly afterMs: number;
  readonly ops: readonly Op[];
};

type ClosedCode =
  | 'label'
  | 'promised'
  | 'holiday'
  | 'weather'
  | 'customer'
  | 'timing'
  | 'held-back'
  | 'interval'
  | 'notice';

/** Why a job may not be done on a day. */
export type ClosedDay = {
  readonly code: ClosedCode;
  readonly words: string;
  /** True where the answer depends on when it is asked or on plans of other rounds. A plan made then is not out of date because of it. */
  readonly isPassing: boolean;
};

/** Hours of one day in which a job may be treated; see `Job.treatHours`. */
export type TreatHours = {
  readonly openMs: number;
  /** Absent: the hours have no end. */
  readonly closeMs?: number;
  /** What closes the others. Words, so no part of the fingerprint. */
  readonly words: string;
};

/** What one rig does on one visit to one property. Tasks that the same rigs can do travel together. */
export type Job = {
  readonly propertyId: string;
  readonly place: number;
  /** The visit may start (arrival plus waiting) between these times. */
  readonly openMs: number;
  readonly closeMs: number;
  readonly tasks: readonly number[];
  /** [rig][k]: the modes of each rig; empty where the rig cannot do the job. */
  readonly modes: readonly (readonly Mode[])[];
  /** Per day: 1 where the job may be done. */
  readonly dayAllowed: Uint8Array;
  /** Per day: why it may not be done, null where it may. Words, so no part of the fingerprint; absent where nothing is known. */
  readonly closed?: readonly (ClosedDay | null)[];
  /** Per day: hours in which everything lies from the set-up to the end of the last op; null for all hours, absent where all days are so. */
  readonly treatHours?: readonly (TreatHours | null)[];
  /** Last useful day by the timing of the round. Told of days that come later, so no part of the fingerprint; absent where there is none. */
  readonly lastOn?: string;
  /** Per day: what being late costs. nano-dollars */
  readonly lateCost: Float64Array;
};

/** Why a rig cannot do a task on any day. */
export type UnplaceableReason = { readonly rigId: string; readonly code: string; readonly words: string };
/** A task that no rig can do, with the reason for every rig. */
export type UnplaceableTask = { readonly task: number; readonly reasons: readonly UnplaceableReason[] };
