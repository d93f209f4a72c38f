import { formatDuration, formatMoney, MS_PER_SECOND, NANO_PER_DOLLAR, quantity } from '../../units/index.ts';
import { explainDay, type WhatIf } from '../explain/index.ts';
import type { Problem } from '../problem/index.ts';
import type { RouteOutcome, Solution } from '../refills/index.ts';
import type { Names } from './names.ts';
import { must } from './route.ts';
import type { PlanDay } from './types.ts';

type Change = PlanDay['whatIf'][number];

/** Less than this is no difference. */
const LEAST_SEC = 60;
const LEAST_USD = 0.5;
/** Plans with more days are without these figures, which take about 50 ms for a day. */
const MOST_DAYS = 12;

/** What a little more of something would change on a day; only what makes a difference. */
export function whatIfOf(problem: Problem, solution: Solution, names: Names, route: RouteOutcome): readonly Change[] {
  if (solution.routes.length > MOST_DAYS) return [];
  return explainDay(problem, solution, route.slot)
    .map((each) => change(problem, names, route, each))
    .filter((each) => each.savedSec >= LEAST_SEC || each.savedUsd >= LEAST_USD || each.propertyIds.length > 0);
}

function change(problem: Problem, names: Names, route: RouteOutcome, each: WhatIf): Change {
  const rig = must(problem.rigs[problem.slots[route.slot]?.rig ?? -1], 'rig');
  const compartmentId = rig.compartments[each.compartment]?.id ?? '';
  const propertyIds = [...new Set(each.jobs.map((job) => must(problem.jobs[job], 'job').propertyId))];
  const savedSec = each.savedMs / MS_PER_SECOND;
  const savedUsd = Math.round((each.savedCost / NANO_PER_DOLLAR) * 100) / 100;
  return {
    what: each.what,
    compartmentId,
    amount: 1,
    unit: each.what === 'shift' ? 'h' : 'gal',
    savedSec,
    savedUsd,
    propertyIds,
    words: `${moreOf(names, each, compartmentId)} ${effect(savedSec, savedUsd, propertyIds.length)}`,
  };
}

function moreOf(names: Names, { what }: WhatIf, compartmentId: string): string {
  if (what === 'shift') return 'One more hour of shift';
  if (what === 'nurse-tank') return 'One more gallon in the nurse tank';
  return `One more gallon in ${names.compartment(compartmentId)}`;
}

function effect(savedSec: number, savedUsd: number, lawns: number): string {
  const savings = [
    ...(savedSec >= LEAST_SEC ? [formatDuration(quantity(savedSec))] : []),
    ...(savedUsd > 0 ? [formatMoney(quantity(savedUsd))] : []),
  ];
  const first = savings.length === 0 ? [] : [`would save ${savings.join(' and ')}`];
  const lawn = lawns === 1 ? 'the one' : `any one of ${lawns}`;
  return (
    [...first, ...(lawns > 0 ? [`would let in ${lawn} without a place`] : [])].join(' and ') || 'would change nothing'
  );
}
