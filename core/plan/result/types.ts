import type { InferOutput } from 'valibot';
import type { Frozen } from '../../book/index.ts';
import type {
  activitySchema,
  fillSchema,
  levelLineSchema,
  planDaySchema,
  planLoadSchema,
  planSchema,
  planStopSchema,
  planTaskSchema,
  productAmountSchema,
  stockFillSchema,
  totalsSchema,
  unplacedSchema,
} from './schema.ts';

/** All days of a round, and what has no place in them; its file form is docs/schemas/plan.schema.json. */
export type Plan = Frozen<InferOutput<typeof planSchema>>;
/**
 * One rig's day: times in seconds after midnight or of duration, ground in square feet, distance in metres, cost in
 * dollars.
 */
export type PlanDay = Frozen<InferOutput<typeof planDaySchema>>;
/** One visit of a rig to a property, seconds after midnight. */
export type PlanStop = Frozen<InferOutput<typeof planStopSchema>>;
/** One treatment step on one zone as it is done: seconds after midnight, square feet, gallons, pounds. */
export type PlanTask = Frozen<InferOutput<typeof planTaskSchema>>;
/** One fill of a compartment, gallons or pounds, and the ground that it covers, square feet. */
export type PlanLoad = Frozen<InferOutput<typeof planLoadSchema>>;
/** One thing that a rig does, from when to when, seconds after midnight. */
export type PlanActivity = Frozen<InferOutput<typeof activitySchema>>;
/** What went into a compartment, gallons or pounds. */
export type PlanFill = Frozen<InferOutput<typeof fillSchema>>;
/** What went into a rig's own stock: gallons of water, or pounds and bags of a product. */
export type PlanStockFill = Frozen<InferOutput<typeof stockFillSchema>>;
/** An amount of one product in the unit it is measured in. */
export type PlanProductAmount = Frozen<InferOutput<typeof productAmountSchema>>;
/** The level of one tank, hopper or stock over the day: points of seconds after midnight and gallons or pounds. */
export type LevelLine = Frozen<InferOutput<typeof levelLineSchema>>;
/** Sums over a whole plan: square feet, seconds, metres, gallons, dollars. */
export type PlanTotals = Frozen<InferOutput<typeof totalsSchema>>;
/** A task that has no place in the plan, with the reason for every rig. */
export type UnplacedTask = Frozen<InferOutput<typeof unplacedSchema>>;
