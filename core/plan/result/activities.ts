import type { Activity } from '../refills/index.ts';
import { drawnParts, fromParts, planFill, planStockFill, toSeconds } from './amounts.ts';
import type { Names } from './names.ts';
import { isHandTrim, must, personOf, type RouteView } from './route.ts';
import type { PlanActivity } from './types.ts';
import { refillWords } from './words.ts';

/** The activities of a route with names, units and reasons in place of numbers. */
export function planActivities(view: RouteView, names: Names): readonly PlanActivity[] {
  const held = new Map<number, number>();
  return view.route.activities.map((each) => {
    const rinseParts = each.kind === 'refill' ? rinsePartsOf(view, held, each.rinsed) : 0;
    if (each.kind === 'morning' || each.kind === 'refill')
      for (const fill of each.fills) held.set(fill.compartment, fill.material);
    return planActivity(view, names, each, rinseParts);
  });
}

/** Water for rinsing what the compartments held so far. */
function rinsePartsOf(view: RouteView, held: ReadonlyMap<number, number>, rinsed: readonly number[]): number {
  return rinsed.reduce((sum, each) => sum + (view.problem.materials[held.get(each) ?? -1]?.rinseParts ?? 0), 0);
}

function planActivity(view: RouteView, names: Names, activity: Activity, rinseParts: number): PlanActivity {
  const { problem, rig } = view;
  const span = { startSec: toSeconds(activity.startMs), endSec: toSeconds(activity.endMs) };
  switch (activity.kind) {
    case 'wait':
    case 'break':
    case 'evening':
      return { ...span, kind: activity.kind };
    case 'morning':
      return {
        ...span,
        kind: 'morning',
        fills: activity.fills.map((fill) => planFill(problem, rig, names, fill)),
        stock: activity.stock.map((fill) => planStockFill(problem, fill)),
      };
    case 'drive':
      return {
        ...span,
        kind: 'drive',
        fromPlaceId: placeId(view, activity.fromPlace, rig.home),
        toPlaceId: placeId(view, activity.toPlace, rig.end),
        distanceM: activity.distanceM,
      };
    case 'set-up':
    case 'pack-up':
      return { ...span, kind: activity.kind, propertyId: view.visit(activity.visit).job.propertyId };
    case 'swap-head':
      return { ...span, kind: 'swap-head', ...atOp(view, activity), ...headOf(view, activity) };
    case 'treat':
      return { ...span, kind: 'treat', ...atOp(view, activity), ...treated(view, activity) };
    case 'pour':
      return {
        ...span,
        kind: 'pour',
        ...atOp(view, activity),
        afterSqFt: activity.doneUnits,
        fromCompartmentId: must(rig.compartments[activity.from], 'compartment').id,
        fills: [planFill(problem, rig, names, { ...activity, compartment: activity.into })],
      };
    case 'refill':
      return {
        ...span,
        kind: 'refill',
        ...atOp(view, activity),
        fillPointId: activity.station < 0 ? '' : must(problem.stations[activity.station], 'station').fillPointId,
        afterSqFt: activity.doneUnits,
        rinsedCompartmentIds: activity.rinsed.map((index) => must(rig.compartments[index], 'compartment').id),
        rinseGal: fromParts(rinseParts),
        fills: activity.fills.map((fill) => planFill(problem, rig, names, fill)),
        stock: activity.stock.map((fill) => planStockFill(problem, fill)),
        reasonCode: activity.reason.kind,
        reason: refillWords(view, names, activity),
      };
  }
}

/** The id of a place; the depot stands for a station: where the day starts, or where it ends. */
function placeId({ problem, rig }: RouteView, place: number, atDepot: number): string {
  const real = place === rig.depot ? must(problem.stations[atDepot], 'station').place : place;
  return must(problem.placeIds[real], 'place');
}

function atOp(view: RouteView, activity: { readonly visit: number; readonly op: number }) {
  const { propertyId, zoneId, treatmentId, step } = view.op(activity.visit, activity.op).task;
  return { propertyId, zoneId, treatmentId, step };
}

function headOf(view: RouteView, activity: { readonly visit: number; readonly op: number }) {
  const { method } = view.op(activity.visit, activity.op).op;
  return method.kind === 'machine'
    ? { machineId: method.machineId, headId: method.headId }
    : { machineId: '', headId: '' };
}

type TreatActivity = Extract<Activity, { readonly kind: 'treat' }>;

function treated(view: RouteView, activity: TreatActivity) {
  const { op } = view.op(activity.visit, activity.op);
  const materialId = view.problem.materials[op.material]?.id ?? '';
  return {
    method: op.method,
    person: personOf(op),
    ...(isHandTrim(op) ? { handTrim: true } : {}),
    doneSqFt: activity.fromUnits,
    areaSqFt: activity.toUnits - activity.fromUnits,
    draws: op.draws.map((draw) => {
      const compartment = must(view.rig.compartments[draw.compartment], 'compartment');
      const drawn = fromParts(drawnParts(op, draw, activity.fromUnits, activity.toUnits));
      const tank = compartment.kind === 'tank';
      return { compartmentId: compartment.id, materialId, volumeGal: tank ? drawn : 0, weightLb: tank ? 0 : drawn };
    }),
  };
}
