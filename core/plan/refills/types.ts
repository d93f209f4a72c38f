import type { Problem } from '../problem/index.ts';

/** A visit of a route: which job, and which of the rig's modes for it. */
export type Visit = { readonly job: number; readonly mode: number };

/** Parts that went into one compartment. */
export type CompartmentFill = { readonly compartment: number; readonly material: number; readonly parts: number };
/** Parts that were taken into the rig's stock. */
export type StockFill = { readonly stock: number; readonly parts: number };

/** Why a refill is where it is. */
export type RefillReason =
  | { readonly kind: 'runs-dry'; readonly compartment: number }
  | { readonly kind: 'stock-runs-out'; readonly stock: number }
  | { readonly kind: 'payload' }
  | { readonly kind: 'change-of-material'; readonly compartment: number }
  | { readonly kind: 'cheaper-here-than-later'; readonly savedMs: number };

type Span = { readonly startMs: number; readonly endMs: number };

/**
 * What a rig does from `shiftStartMs` to the end of the paid day, one thing after the other without gaps; what the second person does at
 * a stop overlaps with what the first one does.
 */
export type Activity = Span &
  (
    | { readonly kind: 'morning'; readonly fills: readonly CompartmentFill[]; readonly stock: readonly StockFill[] }
    | { readonly kind: 'drive'; readonly fromPlace: number; readonly toPlace: number; readonly distanceM: number }
    | { readonly kind: 'wait' }
    | { readonly kind: 'break' }
    | { readonly kind: 'set-up'; readonly visit: number }
    | { readonly kind: 'swap-head'; readonly visit: number; readonly op: number }
    | {
        readonly kind: 'treat';
        readonly visit: number;
        readonly op: number;
        readonly fromUnits: number;
        readonly toUnits: number;
      }
    | {
        readonly kind: 'refill';
        /** Index into `stations`, or -1 for a refill from the rig. */
        readonly station: number;
        /** The next op to be worked on, and how much of it is already done; 0 units at its beginning. */
        readonly visit: number;
        readonly op: number;
        readonly doneUnits: number;
        readonly rinsed: readonly number[];
        readonly fills: readonly CompartmentFill[];
        readonly stock: readonly StockFill[];
        readonly reason: RefillReason;
      }
    | {
        /** Bags that ride on a machine go into its hopper where it works. */
        readonly kind: 'pour';
        readonly visit: number;
        readonly op: number;
        /** Of the op, what is done; 0 units at its beginning. */
        readonly doneUnits: number;
        /** Compartment of the bags, and of the hopper. */
        readonly from: number;
        readonly into: number;
        readonly material: number;
        readonly parts: number;
      }
    | { readonly kind: 'pack-up'; readonly visit: number }
    | { readonly kind: 'evening' }
  );

/** A route with everything decided: its times, levels and cost follow from the activities alone. */
export type RouteOutcome = {
  readonly slot: number;
  readonly visits: readonly Visit[];
  readonly activities: readonly Activity[];
  /** Start of shift to end of evening work. */
  readonly paidMs: number;
  readonly distanceM: number;
  /** Pay, overtime, distance, rig-day, lateness. nano-dollars */
  readonly cost: number;
};

/** Why no refills make the order possible. */
export type RouteFault =
  | { readonly kind: 'too-long'; readonly overMs: number }
  | { readonly kind: 'window-missed'; readonly visit: number }
  | { readonly kind: 'no-material'; readonly visit: number; readonly material: number }
  | { readonly kind: 'payload'; readonly visit: number }
  | { readonly kind: 'station-closed'; readonly visit: number };

/** The decisions of a whole plan, still in whole numbers. */
export type Solution = {
  readonly problemHash: Problem['hash'];
  readonly routes: readonly RouteOutcome[];
  /** Jobs that found no place although some rig could do them. */
  readonly unserved: readonly number[];
  readonly cost: number;
  readonly iterations: number;
  readonly seed: number;
};
