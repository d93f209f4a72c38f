import { formatArea, formatDuration, formatVolume, formatWeight, quantity } from '../../units/index.ts';
import type { Mode, Op } from '../problem/index.ts';
import type { Activity, RefillReason } from '../refills/index.ts';
import { fromParts } from './amounts.ts';
import type { Names } from './names.ts';
import { reckonedWords } from './reckoned.ts';
import { isHandTrim, type RouteView } from './route.ts';

/** Savings below this are not worth a figure. */
const LEAST_SAVING_MS = 60_000;

type RefillActivity = Extract<Activity, { readonly kind: 'refill' }>;

/** Why a refill is where it is, with its figures. */
export function refillWords(view: RouteView, names: Names, activity: RefillActivity): string {
  const { op, task } = view.op(activity.visit, activity.op);
  const ground = `${names.zone(task.propertyId, task.zoneId)} of ${names.property(task.propertyId)}`;
  const zone = isHandTrim(op) ? `the hand trim on ${ground}` : ground;
  const place = activity.doneUnits > 0 ? `after ${area(activity.doneUnits)} of ${zone}` : `before ${zone}`;
  const share = 1 - activity.doneUnits / op.areaUnits;
  const need = op.draws.map((draw) => amount(view, draw.compartment, Math.ceil(draw.parts * share))).join(' and ');
  const rest = need === '' ? '' : `; this zone still needs ${need}`;
  return `${sentence(view, names, activity.reason, place)}${rest}.`;
}

function sentence(view: RouteView, names: Names, reason: RefillReason, place: string): string {
  switch (reason.kind) {
    case 'runs-dry':
      return `${compartment(view, names, reason.compartment)} ${verb(view, reason.compartment, 'run')} dry ${place}`;
    case 'stock-runs-out': {
      const stock = view.problem.stocks[reason.stock];
      const what =
        stock?.kind === 'dry'
          ? `${names.product(stock.productId)?.name ?? stock.productId} on the rig`
          : 'The nurse tank';
      return `${what} runs out ${place}`;
    }
    case 'payload':
      return `The payload does not allow carrying more at once; filled ${place}`;
    case 'change-of-material':
      return `${compartment(view, names, reason.compartment)} ${verb(view, reason.compartment, 'change')} to another material ${place}`;
    case 'cheaper-here-than-later': {
      const saving =
        reason.savedMs < LEAST_SAVING_MS
          ? 'no later place is cheaper'
          : `${duration(reason.savedMs)} less than filling later`;
      return `Filled ${place}: ${saving}`;
    }
  }
}

/** Joined tanks are several. */
function verb(view: RouteView, index: number, word: string): string {
  return view.rig.compartments[index]?.id.includes('+') ? word : `${word}s`;
}

function compartment(view: RouteView, names: Names, index: number): string {
  return names.compartment(view.rig.compartments[index]?.id ?? '');
}

function amount(view: RouteView, index: number, parts: number): string {
  const tank = view.rig.compartments[index]?.kind === 'tank';
  return tank ? formatVolume(quantity(fromParts(parts)), 'us') : formatWeight(quantity(fromParts(parts)), 'us');
}

function area(units: number): string {
  return formatArea(quantity(units), 'us');
}

/** Why a task is done by its method: its minutes and those of the other ways the rig has; and what they come from. */
export function methodWords(view: RouteView, names: Names, visit: number, opIndex: number): string {
  const { op } = view.op(visit, opIndex);
  const { job, mode } = view.visit(visit);
  const order = orderWords(view, names, visit, opIndex);
  const way = wayOf(mode, op.task);
  const own = way === null ? methodId(op.method) : methodId(way.method);
  if (isHandTrim(op)) {
    const words = `${names.method(methodId(op.method))} treats what ${names.method(own)} does not reach, in ${duration(op.serviceMs)}.`;
    return [words, ...order].join(' ');
  }
  const minutes = new Map<string, number>();
  for (const each of job.modes[view.slot.rig] ?? []) {
    const other = wayOf(each, op.task);
    if (other !== null) minutes.set(methodId(other.method), other.ms);
  }
  const others = [...minutes].filter(([id]) => id !== own).map(([id, ms]) => `${names.method(id)} ${duration(ms)}`);
  const trims = way !== null && way.ms > op.serviceMs ? ` and ${duration(way.ms - op.serviceMs)} of hand trim` : '';
  const chosen = `${names.method(own)} takes ${duration(op.serviceMs)}${trims}`;
  const compared =
    others.length === 0 ? `${chosen}; nothing else on this rig can do it sooner.` : `${chosen}; ${others.join(', ')}.`;
  return [compared, ...reckonedWords(op, names), ...order].join(' ');
}

/** How a mode does a task: its method, and the time with what is trimmed by hand after it. */
function wayOf(mode: Mode, task: number): { readonly method: Op['method']; readonly ms: number } | null {
  const ops = mode.ops.filter((each) => each.task === task);
  const main = ops.find((each) => !isHandTrim(each));
  return main === undefined ? null : { method: main.method, ms: ops.reduce((sum, each) => sum + each.serviceMs, 0) };
}

/** Who does it where two persons work, and what has to come first on the same ground. */
function orderWords(view: RouteView, names: Names, visit: number, opIndex: number): readonly string[] {
  const { mode } = view.visit(visit);
  const { op, task } = view.op(visit, opIndex);
  const before = mode.ops
    .map((_, other) => view.op(visit, other).task)
    .filter((other) => other.zoneId === task.zoneId && other.rank < task.rank)
    .map((other) => (other.treatmentId === task.treatmentId ? 'its seed' : names.treatment(other.treatmentId)));
  return [
    ...(op.second ? ['The second person does it while the first one works.'] : []),
    ...(before.length > 0 ? [`Comes after ${[...new Set(before)].join(' and ')} on the same ground.`] : []),
  ];
}

function duration(ms: number): string {
  return formatDuration(quantity(ms / 1000));
}

export function methodId(method: RouteViewMethod): string {
  return method.kind === 'machine' ? method.machineId : method.handMethodId;
}
type RouteViewMethod = ReturnType<RouteView['op']>['op']['method'];
