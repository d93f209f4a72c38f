/** What a round takes of one product on one day. */
export type Use = {
  readonly roundId: string;
  readonly roundName: string;
  readonly date: string;
  readonly productId: string;
  /** In the product's unit. */
  readonly amount: number;
  /** From the loads of a plan, or from rates and ground where there is no plan yet. */
  readonly from: 'plan' | 'rates';
};

/** A week, Monday to Sunday (ISO 8601). */
export type Week = { readonly label: string; readonly monday: string };

/** One product of one round in one week. Amounts in the product's unit. */
export type BuyLine = {
  readonly roundId: string;
  readonly roundName: string;
  readonly week: Week;
  readonly firstUse: string;
  /** Day on which what is to be bought has to be ordered. */
  readonly orderBy: string;
  readonly productId: string;
  readonly need: number;
  /** Taken from what lies in the store, or is left of bags bought for a line before. */
  readonly fromStock: number;
  /** To buy: whole bags where the product comes in bags. */
  readonly buy: number;
  /** Null where the product has no bags. */
  readonly bags: number | null;
  readonly costUsd: number;
  readonly from: Use['from'];
};

/** Product to be ordered by one day. */
export type Order = {
  readonly productId: string;
  readonly orderBy: string;
  readonly firstUse: string;
  readonly amount: number;
  readonly bags: number | null;
  readonly costUsd: number;
  /** True where that day has gone by. */
  readonly late: boolean;
};

/** What has to be bought for rounds, when, and what it costs in dollars. */
export type BuyingList = {
  readonly lines: readonly BuyLine[];
  readonly orders: readonly Order[];
  /** What is left in the store at the end, by product id, in its unit; products that nobody uses are left out. */
  readonly left: ReadonlyMap<string, number>;
  readonly costUsd: number;
};

/** Water that a plan takes at one fill point. */
export type WaterAt = {
  readonly fillPointId: string;
  /** In the morning into tanks and nurse tanks, and on visits during the day, gal. */
  readonly morningGal: number;
  readonly visitsGal: number;
  readonly visits: number;
  readonly byDay: readonly { readonly date: string; readonly rigId: string; readonly gal: number }[];
};

/** What the cost of a round is for. */
export const COST_PARTS = ['wage', 'overtime', 'miles', 'fixed', 'late', 'evenness', 'product'] as const;
/** One of `COST_PARTS`. */
export type CostPart = (typeof COST_PARTS)[number];

/** Whole cents by what they are for. */
export type Cents = Readonly<Record<CostPart, number>>;

/** The share of a round's cost that falls to one lawn, whole cents. */
export type LawnCost = {
  readonly propertyId: string;
  readonly name: string;
  readonly cents: Cents;
  readonly totalCents: number;
  /** Paid time that falls to the lawn, seconds. */
  readonly paidSec: number;
};

/** What a round costs, whole cents, and what of it falls to each lawn. */
export type RoundCost = {
  readonly cents: Cents;
  readonly totalCents: number;
  /** Without product: what the plan itself calls its cost. */
  readonly planCents: number;
  readonly lawns: readonly LawnCost[];
};
