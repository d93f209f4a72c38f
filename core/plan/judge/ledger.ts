import type { Violation } from './types.ts';

// A plan from elsewhere can be wrong thousands of times; the first ones tell enough.
const MOST_PER_CODE = 200;

/** Collects what a plan breaks. */
export type Ledger = {
  readonly add: (code: Violation['code'], where: string, message: string) => void;
  readonly violations: readonly Violation[];
};

export function createLedger(): Ledger {
  const violations: Violation[] = [];
  const counts = new Map<string, number>();
  return {
    add: (code, where, message) => {
      const count = (counts.get(code) ?? 0) + 1;
      counts.set(code, count);
      if (count <= MOST_PER_CODE) violations.push({ code, where, message });
    },
    violations,
  };
}
