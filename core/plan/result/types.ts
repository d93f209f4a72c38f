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

export type Plan = Frozen<InferOutput<typeof planSchema>>;
export type PlanDay = Frozen<InferOutput<typeof planDaySchema>>;
export type PlanStop = Frozen<InferOutput<typeof planStopSchema>>;
export type PlanTask = Frozen<InferOutput<typeof planTaskSchema>>;
export type PlanLoad = Frozen<InferOutput<typeof planLoadSchema>>;
export type PlanActivity = Frozen<InferOutput<typeof activitySchema>>;
export type PlanFill = Frozen<InferOutput<typeof fillSchema>>;
export type PlanStockFill = Frozen<InferOutput<typeof stockFillSchema>>;
export type PlanProductAmount = Frozen<InferOutput<typeof productAmountSchema>>;
export type LevelLine = Frozen<InferOutput<typeof levelLineSchema>>;
export type PlanTotals = Frozen<InferOutput<typeof totalsSchema>>;
export type UnplacedTask = Frozen<InferOutput<typeof unplacedSchema>>;
