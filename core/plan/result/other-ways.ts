import { formatDuration, formatMoney, MS_PER_SECOND, NANO_PER_DOLLAR, quantity } from '../../units/index.ts';
import { explainChoices, type OtherWay } from '../explain/index.ts';
import type { Mode, Problem } from '../problem/index.ts';
import type { RouteOutcome, Solution } from '../refills/index.ts';
import type { Names } from './names.ts';
import { must } from './route.ts';
import type { PlanStop } from './types.ts';
import { methodId } from './words.ts';

type PlanOtherWay = PlanStop['otherWays'][number];

/** Less than this is no difference. */
const LEAST_SEC = 30;
const LEAST_USD = 0.005;
/** Plans with more days are without these figures; and the days that are placed anew for a whole plan, about 3 ms each. */
const MOST_DAYS = 12;
const MOST_PLACINGS = 120;

/** For each visit of a route, what the plan would take if it were done another way. */
export function otherWaysOf(
  problem: Problem,
  solution: Solution,
  names: Names,
  route: RouteOutcome,
): readonly (readonly PlanOtherWay[])[] {
  const days = solution.routes.filter((each) => each.visits.length > 0).length;
  const most = days > MOST_DAYS ? 0 : Math.floor(MOST_PLACINGS / Math.max(1, days));
  const ways = most === 0 ? [] : explainChoices(problem, solution, route.slot, most);
  return route.visits.map((_, visit) =>
    ways.filter((way) => way.visit === visit).map((way) => planOtherWay(problem, names, route, way)),
  );
}

function planOtherWay(problem: Problem, names: Names, route: RouteOutcome, way: OtherWay): PlanOtherWay {
  const { job, mode: planned } = must(route.visits[way.visit], 'visit');
  const { rig } = must(problem.slots[way.slot], 'slot');
  const own = must(problem.slots[route.slot], 'slot').rig;
  const modes = must(problem.jobs[job], 'job').modes;
  const mode = must(modes[rig]?.[way.mode], 'mode');
  const { rigId } = must(problem.rigs[rig], 'rig');
  const addedSec = way.addedMs / MS_PER_SECOND;
  const addedUsd = Math.round((way.addedCost / NANO_PER_DOLLAR) * 100) / 100;
  const how = howWords(names, mode, must(modes[own]?.[planned], 'mode'), rig === own);
  const who = rig === own ? how : `${names.rig(rigId)}, ${how}`;
  return {
    rigId,
    methods: methodsOf(mode),
    addedSec,
    addedUsd,
    words: `${who}: ${differenceWords(addedSec, addedUsd)}`,
  };
}

function methodsOf(mode: Mode): PlanOtherWay['methods'] {
  return [...new Map(mode.ops.map((op) => [methodId(op.method), op.method])).values()];
}

function howWords(names: Names, mode: Mode, planned: Mode, sameRig: boolean): string {
  const said = (each: Mode): string =>
    [...new Set(each.ops.map((op) => names.method(methodId(op.method))))].join(' and ');
  const other = said(mode);
  return sameRig && other === said(planned) ? `${other}, shared out or in order otherwise` : other;
}

function differenceWords(seconds: number, dollars: number): string {
  const parts = [
    ...(Math.abs(seconds) >= LEAST_SEC ? [difference(seconds, formatDuration(quantity(Math.abs(seconds))))] : []),
    ...(Math.abs(dollars) >= LEAST_USD ? [difference(dollars, formatMoney(quantity(Math.abs(dollars))))] : []),
  ];
  return parts.length === 0 ? 'no difference' : parts.join(', ');
}

function difference(sign: number, amount: string): string {
  return `${amount} ${sign > 0 ? 'more' : 'less'}`;
}
