/** One limit of the problem that may keep a job out. */
export type Limit =
  /** End of the paid day: shift and overtime. */
  | { readonly kind: 'time' }
  /** The job may not be done on the day. */
  | { readonly kind: 'day' }
  /** Hours of a customer: of the job itself or of one that it would push out of its own. `job` is an index into `problem.jobs`. */
  | { readonly kind: 'customer-hours'; readonly job: number }
  | { readonly kind: 'station-hours'; readonly station: number }
  | { readonly kind: 'payload' }
  | { readonly kind: 'bag-places' }
  | { readonly kind: 'nurse-tank' }
  | { readonly kind: 'compartment'; readonly compartment: number }
  /** Home does not hold what the job needs. */
  | { readonly kind: 'supply'; readonly stock: number };

/**
 * A limit that alone keeps a job out of a rig's days: moved by `amount`, the job fits before visit `position` of the slot's route.
 *
 * `amount`: milliseconds for time and hours, ten-thousandths of a pound for the payload, bags, parts for tanks; 0 for day and supply.
 * `fromMs` and `toMs` are the hours that would do, for the limits that are hours; else 0.
 */
export type Way = {
  readonly limit: Limit;
  readonly amount: number;
  readonly fromMs: number;
  readonly toMs: number;
  readonly slot: number;
  readonly position: number;
  readonly mode: number;
};

/** What a rig could do of a job on a day that has nothing else. */
export type Alone =
  | { readonly kind: 'fits'; readonly paidMs: number }
  | { readonly kind: 'too-long'; readonly overMs: number }
  | { readonly kind: 'never' };

/** Why one rig does not do one job in a plan. */
export type WhyNot = {
  readonly job: number;
  readonly rig: number;
  /**
   * `room` says that it would fit as things are, and the search had not come to it; `far-too-long` that alone it overruns a
   * day by more than 24 hours, at the least what `alone` tells: nothing is tried then; `weather` that it would fit on `day` but
   * for its hours of treating, which nobody can move.
   */
  readonly kind: 'out-of-reach' | 'far-too-long' | 'room' | 'weather' | 'limits' | 'no-single-cause';
  /** Each of them is enough by itself; placed once more before it is said. Empty unless `kind` is `limits`. */
  readonly ways: readonly Way[];
  readonly alone: Alone;
  /** Given where `kind` is `weather`. */
  readonly day?: number;
  /** Insertions looked at, of all there are; the others were ruled out by their least time only where `every` is true. */
  readonly tried: number;
  readonly insertions: number;
  readonly every: boolean;
};

/** What a day would be with a little more of something; its order of stops unchanged. */
export type WhatIf = {
  readonly what: 'shift' | 'nurse-tank' | 'compartment';
  /** Number of the compartment; -1 for the others. */
  readonly compartment: number;
  /** Milliseconds of shift, or parts. */
  readonly amount: number;
  readonly savedMs: number;
  /** nano-dollars */
  readonly savedCost: number;
  /** Jobs without a place that each would then fit into this day, not all together. */
  readonly jobs: readonly number[];
};

/** What a plan would take if one visit were done another way: in another mode, or by another rig on the same day. */
export type OtherWay = {
  /** Number of the visit in its route. */
  readonly visit: number;
  /** Where and how it would be done: in the same slot at the same place of the route, or before visit `position` of another slot's. */
  readonly slot: number;
  readonly position: number;
  readonly mode: number;
  /** More paid time, and more cost, over all rigs; negative where the plan would be better so. */
  readonly addedMs: number;
  /** nano-dollars */
  readonly addedCost: number;
};
