import { RATE_GROUND, rateWords } from '../../demand/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import type { Application, Limit } from './types.ts';

/** One part of a sum: where it comes from, and how much. */
export type SumPart = { readonly from: string; readonly amount: number };

/** "round Early (recorded 2027-03-01)": where an application comes from. */
export function sourceWords({ roundName, status, first, last }: Application): string {
  if (status === 'planned') return roundName;
  return `${roundName} (recorded ${first === last ? first : `${first} to ${last}`})`;
}

/**
 * A sum against its limit with the arithmetic: "Forecrop 3: 0.45 fl oz in round Early + 0.45 fl oz now = 0.9 fl oz per 1,000 ft² in
 * 2027, its label allows 0.8 fl oz".
 *
 * @param year the calendar year, '' for a limit of one application
 * @param system metric: amounts on 100 m2
 */
export function sumWords(limit: Limit, parts: readonly SumPart[], year: string, system: UnitSystem = 'us'): string {
  const rate = (amount: number): string => rateWords(limit.unit, amount, system);
  const sum = parts.reduce((total, each) => total + each.amount, 0);
  const terms = parts.map(({ from, amount }) => `${rate(amount)} ${from}`).join(' + ');
  const whole = parts.length > 1 ? `${terms} = ${rate(sum)}` : terms;
  const when = year === '' ? 'in one application' : `in ${year}`;
  return `${limit.name}: ${whole} per ${RATE_GROUND[system]} ${when}, ${allowance(limit)} ${rate(limit.most)}`;
}

function allowance({ kind, source }: Limit): string {
  if (kind === 'product-year' || kind === 'product-application') return 'its label allows';
  return source === '' ? 'the cap is' : `the cap (${source}) is`;
}
