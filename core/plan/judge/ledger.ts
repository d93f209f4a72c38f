import type { Excess, Spot, Violation } from './types.ts';

// A plan from elsewhere can be wrong thousands of times; the first ones tell enough.
const MOST_PER_CODE = 200;

/** Collects what a plan breaks. */
export type Ledger = {
  readonly add: (code: Violation['code'], where: string, message: string, excess?: Excess) => void;
  /** What is added from now on belongs to this place of the plan; null for the plan as a whole. */
  readonly standAt: (spot: Spot | null) => void;
  readonly violations: readonly Violation[];
};

export function createLedger(): Ledger {
  const violations: Violation[] = [];
  const counts = new Map<string, number>();
  let spot: Spot | null = null;
  return {
    add: (code, where, message, excess) => {
      const count = (counts.get(code) ?? 0) + 1;
      counts.set(code, count);
      if (count > MOST_PER_CODE) return;
      violations.push({ code, where, message, ...(spot === null ? {} : { spot }), ...(excess ? { excess } : {}) });
    },
    standAt: (next) => {
      spot = next;
    },
    violations,
  };
}
