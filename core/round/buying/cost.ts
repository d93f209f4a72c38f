import type { Book, Round } from '../../book/index.ts';
import type { Plan } from '../../plan/result/index.ts';
import { wagePerMs } from '../../units/index.ts';
import { lastInTime } from '../timing/index.ts';
import { shareCents } from './cents.ts';
import { type StopCost, stopCosts } from './day-costs.ts';
import { type Cents, COST_PARTS, type CostPart, type LawnCost, type RoundCost } from './types.ts';

const NANO_PER_CENT = 10_000_000;
const PLAN_PARTS = COST_PARTS.filter((each) => each !== 'product');

/** Raw sums of one lawn, nano-dollars. */
type Raw = { readonly name: string; paidMs: number; readonly parts: Record<CostPart, number> };

/**
 * What the round of a plan costs, in whole cents by what it is for and by lawn, shared as `stopCosts` says. The parts without product add
 * up to the cost of the plan, parts and lawns to the sum of all: cents that rounding leaves go to the largest remainders. What days of
 * unlike length cost is shared by paid time. Prices are those of the book as it is; where they have changed since the plan was made its
 * own cost is another one.
 */
export function roundCost(book: Book, plan: Plan): RoundCost {
  const round = book.rounds.find((each) => each.id === plan.roundId);
  const lawns = new Map<string, Raw>();
  const lastDay = lastDays(book, round);
  for (const day of plan.days) for (const stop of stopCosts(book, day, lastDay)) addStop(lawns, stop);
  const raws = [...lawns.values()];
  const paidMs = raws.reduce((sum, each) => sum + each.paidMs, 0);
  const evenness = evennessOf(plan);
  for (const raw of raws) raw.parts.evenness = paidMs > 0 ? (evenness * raw.paidMs) / paidMs : 0;
  const sums = COST_PARTS.map((part) => raws.reduce((sum, each) => sum + each.parts[part], 0));
  const planSum = PLAN_PARTS.reduce((sum, part) => sum + (sums[COST_PARTS.indexOf(part)] ?? 0), 0);
  const planCents = wholeCents(planSum);
  const productCents = wholeCents(sums[COST_PARTS.indexOf('product')] ?? 0);
  const planParts = shareCents(planCents, sums.slice(0, PLAN_PARTS.length));
  const cents = centsOf((part) => (part === 'product' ? productCents : (planParts[PLAN_PARTS.indexOf(part)] ?? 0)));
  const shares = COST_PARTS.map((part) =>
    shareCents(
      cents[part],
      raws.map((each) => each.parts[part]),
    ),
  );
  return {
    cents,
    totalCents: planCents + productCents,
    planCents,
    lawns: [...lawns].map(([propertyId, raw], index): LawnCost => {
      const own = centsOf((part) => shares[COST_PARTS.indexOf(part)]?.[index] ?? 0);
      const totalCents = COST_PARTS.reduce((sum, part) => sum + own[part], 0);
      return { propertyId, name: raw.name, cents: own, totalCents, paidSec: Math.round(raw.paidMs / 1000) };
    }),
  };
}

/** The last day on which work on a property is not late. */
function lastDays(book: Book, round: Round | undefined): (propertyId: string) => string | null {
  if (round === undefined) return () => null;
  const last = lastInTime(book, round);
  const properties = new Map(book.properties.map((each) => [each.id, each]));
  return (id) => last(properties.get(id) ?? {});
}

/** Rounded after the dust of the sum is off it, so that half a cent is one. */
function wholeCents(nano: number): number {
  return Math.round(Math.round((nano / NANO_PER_CENT) * 1e6) / 1e6);
}

/** As the plan reckons it: the time by which days are longer than their mean, at the price of an hour. nano-dollars */
function evennessOf({ evenDays }: Plan): number {
  return evenDays === undefined ? 0 : Math.round(evenDays.aboveSec * 1000) * wagePerMs(evenDays.usdPerHour);
}

function addStop(lawns: Map<string, Raw>, stop: StopCost): void {
  const raw = lawns.get(stop.propertyId) ?? { name: stop.name, paidMs: 0, parts: { ...centsOf(() => 0) } };
  raw.paidMs += stop.paidMs;
  for (const part of COST_PARTS) if (part !== 'evenness') raw.parts[part] += stop[part];
  lawns.set(stop.propertyId, raw);
}

function centsOf(of: (part: CostPart) => number): Cents {
  return {
    wage: of('wage'),
    overtime: of('overtime'),
    miles: of('miles'),
    fixed: of('fixed'),
    late: of('late'),
    evenness: of('evenness'),
    product: of('product'),
  };
}
