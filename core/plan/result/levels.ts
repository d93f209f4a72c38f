import type { Problem, ProblemRig } from '../problem/index.ts';
import { fromParts } from './amounts.ts';
import { clean } from './loads.ts';
import type { Names } from './names.ts';
import type { LevelLine, PlanActivity, PlanFill, PlanStockFill } from './types.ts';

type Line = { readonly head: Omit<LevelLine, 'points'>; readonly points: [number, number][]; level: number };
type Refill = Extract<PlanActivity, { readonly kind: 'refill' }>;

/**
 * The level of every tank, hopper and stock that is used, as broken lines over the day. Treating empties a compartment
 * evenly from the start to the end of the activity; a refill raises it between its own start and end.
 */
export function levelsOf(
  problem: Problem,
  rig: ProblemRig,
  names: Names,
  activities: readonly PlanActivity[],
): readonly LevelLine[] {
  const lines = linesOf(problem, rig, names);
  const at = (id: string): Line | undefined => lines.get(id);
  for (const activity of activities) {
    if (activity.kind === 'morning') {
      for (const fill of activity.fills) start(at(fill.compartmentId), activity.startSec, amountOf(fill));
      for (const fill of activity.stock) start(at(stockId(fill)), activity.startSec, stockAmount(fill));
    } else if (activity.kind === 'treat') {
      for (const draw of activity.draws)
        move(at(draw.compartmentId), activity.startSec, activity.endSec, -draw.volumeGal - draw.weightLb);
    } else if (activity.kind === 'pour') {
      for (const fill of activity.fills) {
        move(at(activity.fromCompartmentId), activity.startSec, activity.endSec, -amountOf(fill));
        move(at(fill.compartmentId), activity.startSec, activity.endSec, amountOf(fill));
      }
    } else if (activity.kind === 'refill') refill(lines, activity);
  }
  const last = activities.at(-1)?.endSec ?? 0;
  const first = activities[0]?.startSec ?? 0;
  const used = [...lines.values()].filter((line) => line.points.length > 0);
  for (const line of used) {
    if ((line.points[0]?.[0] ?? first) > first) line.points.unshift([first, 0]);
    line.points.push([last, clean(line.level)]);
  }
  return used.map((line) => ({ ...line.head, points: line.points }));
}

function linesOf(problem: Problem, rig: ProblemRig, names: Names): ReadonlyMap<string, Line> {
  const lines = new Map<string, Line>();
  const add = (head: Line['head']): void => void lines.set(head.id, { head, points: [], level: 0 });
  for (const each of rig.compartments) {
    const unit = each.kind === 'tank' ? 'gal' : 'lb';
    add({
      id: each.id,
      label: names.compartment(each.id),
      kind: each.kind,
      unit,
      capacity: fromParts(each.capacityParts),
    });
  }
  for (const stock of problem.stocks) {
    if (stock.kind === 'water')
      add({ id: 'water', label: 'Nurse tank', kind: 'nurse', unit: 'gal', capacity: fromParts(rig.nurseParts) });
    else {
      const label = `${names.product(stock.productId)?.name ?? stock.productId}, bags`;
      add({
        id: `dry ${stock.productId}`,
        label,
        kind: 'bags',
        unit: 'lb',
        capacity: fromParts(rig.bagPlaces * stock.bagParts),
      });
    }
  }
  return lines;
}

function refill(lines: ReadonlyMap<string, Line>, activity: Refill): void {
  for (const id of activity.rinsedCompartmentIds) {
    const line = lines.get(id);
    if (line !== undefined) move(line, activity.startSec, activity.startSec, -line.level);
  }
  for (const fill of activity.fills) {
    move(lines.get(fill.compartmentId), activity.startSec, activity.endSec, amountOf(fill));
  }
  for (const [id, change] of stockChanges(lines, activity))
    move(lines.get(id), activity.startSec, activity.endSec, change);
}

/** What a refill does to each stock: fills from the rig and rinse water take out of it, a fill point puts into it. */
function stockChanges(lines: ReadonlyMap<string, Line>, activity: Refill): ReadonlyMap<string, number> {
  const changes = new Map<string, number>();
  const add = (id: string, amount: number): void => void changes.set(id, (changes.get(id) ?? 0) + amount);
  for (const fill of activity.stock) add(stockId(fill), stockAmount(fill));
  if (activity.fillPointId !== '') return changes;
  for (const fill of activity.fills) {
    const isTank = lines.get(fill.compartmentId)?.head.kind === 'tank';
    add(isTank ? 'water' : `dry ${fill.materialId}`, -amountOf(fill));
  }
  add('water', -activity.rinseGal);
  return changes;
}

function start(line: Line | undefined, atSec: number, level: number): void {
  if (line === undefined) return;
  line.level += level;
  line.points.push([atSec, clean(line.level)]);
}

function move(line: Line | undefined, fromSec: number, toSec: number, change: number): void {
  if (line === undefined || change === 0) return;
  line.points.push([fromSec, clean(line.level)]);
  line.level += change;
  line.points.push([toSec, clean(line.level)]);
}

function amountOf(fill: PlanFill): number {
  return fill.volumeGal + fill.weightLb;
}

function stockId(fill: PlanStockFill): string {
  return fill.stock === 'water' ? 'water' : `dry ${fill.productId}`;
}

function stockAmount(fill: PlanStockFill): number {
  return fill.stock === 'water' ? fill.volumeGal : fill.weightLb;
}
