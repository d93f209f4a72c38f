import type { Estimate } from '../book/index.ts';
import { formatArea, formatMoney, formatNumber, RATE_AREA_SQFT, type UnitSystem } from '../units/index.ts';
import type { VisitPrice } from './types.ts';

type Step = Estimate['steps'][number];

/**
 * Price of one visit by the owner's own steps: each step holds for the ground from the end of the one before it up to its own
 * end, so that one more square foot never makes a lawn cheaper. Ground beyond the last end is priced by the last step. A price
 * under the least per visit becomes that. Whole cents.
 * @returns null where there are no steps and no least price: the program has no prices of its own
 */
export function visitPrice(estimate: Estimate, areaSqFt: number, system: UnitSystem): VisitPrice | null {
  const steps = inOrder(estimate.steps);
  if (steps.length === 0 && estimate.leastPerVisit === 0) return null;
  const parts = shares(steps, areaSqFt);
  const sum = parts.reduce((total, each) => total + each.dollars, 0);
  const lines = parts.map(
    (each) =>
      `${formatArea(each.areaSqFt, system)} at ${formatMoney(each.dollarsPer1000SqFt)} per 1,000 ft² = ${formatMoney(each.dollars)}`,
  );
  if (parts.length > 1) lines.push(`together ${formatMoney(sum)}`);
  if (sum < estimate.leastPerVisit) {
    return {
      dollars: cents(estimate.leastPerVisit),
      lines: [...lines, `least per visit ${formatMoney(estimate.leastPerVisit)}`],
    };
  }
  return { dollars: cents(sum), lines };
}

function inOrder(steps: readonly Step[]): readonly Step[] {
  return steps.toSorted((left, right) => endOf(left) - endOf(right));
}

const endOf = (step: Step): number => step.upToSqFt ?? Number.POSITIVE_INFINITY;

type Share = { readonly areaSqFt: number; readonly dollarsPer1000SqFt: number; readonly dollars: number };

function shares(steps: readonly Step[], areaSqFt: number): readonly Share[] {
  const found: Share[] = [];
  let from = 0;
  for (const [index, step] of steps.entries()) {
    const end = index === steps.length - 1 ? Number.POSITIVE_INFINITY : endOf(step);
    const part = Math.min(areaSqFt, end) - from;
    if (part > 0) {
      const { dollarsPer1000SqFt } = step;
      found.push({ areaSqFt: part, dollarsPer1000SqFt, dollars: (part / RATE_AREA_SQFT) * dollarsPer1000SqFt });
    }
    from = Math.max(from, Math.min(areaSqFt, end));
  }
  return found;
}

export function cents(dollars: number): number {
  return Math.round(dollars * 100) / 100;
}

/** "12", "12.5": a figure in arithmetic. */
export function plain(value: number): string {
  return formatNumber(value, 2).replace(/\.?0+$/, '');
}
