import { flagMinutes } from './flags.ts';
import type { Option, TaskFacts } from './options.ts';
import type { EquippedRig } from './rigs.ts';
import { minutesToMs } from './scale.ts';
import type { Mode, Op } from './types.ts';

/** One task of a job with the options that a rig has for it; never empty. */
export type TaskOptions = { readonly task: number; readonly facts: TaskFacts; readonly options: readonly Option[] };

/** More ways than this to do one visit are not worth telling apart; the quickest are kept. */
const MOST_MODES = 4;
/** What has to happen first inside a stop: holes before seed, dry before wet. Work of one kind is done one material after the other. */
const ORDER_OF_WORK = { aerate: 0, seed: 1, spread: 2, spray: 3 } as const;

/**
 * The ways in which a rig can do all tasks of a job: the quickest option of each task, and for every machine and hand method
 * that can do some of them, that one wherever it can and the quickest one elsewhere. Ways that are slower than another one
 * and draw at least as much from every compartment are dropped.
 *
 * @param materialOf number of the material of a task, -1 for none
 */
export function modesOf(
  equipped: EquippedRig,
  tasks: readonly TaskOptions[],
  materialOf: (facts: TaskFacts) => number,
): readonly Mode[] {
  const orders = ordersOfWork(tasks, materialOf);
  const modes = orders.map((inOrder) => {
    const preferences = ['', ...new Set(inOrder.flatMap((each) => each.options.map(unitOf)))];
    return keepUseful(
      preferences.map((unit) => {
        const chosen = inOrder.map((each) => ({ ...each, option: choose(each.options, unit) }));
        return buildMode(equipped, chosen, materialOf);
      }),
    );
  });
  return modes.flatMap((each) => each.slice(0, Math.floor(MOST_MODES / orders.length)));
}

/**
 * The tasks in the order of work, with no material taken up twice. Where several materials of one kind are used, a second order
 * takes them the other way round, so that a stop can begin with what the tank still holds from the one before.
 */
function ordersOfWork(
  tasks: readonly TaskOptions[],
  materialOf: (facts: TaskFacts) => number,
): readonly (readonly TaskOptions[])[] {
  const sorted = (direction: number): readonly TaskOptions[] =>
    [...tasks].sort(
      (left, right) =>
        rank(left) - rank(right) ||
        direction * (materialOf(left.facts) - materialOf(right.facts)) ||
        left.task - right.task,
    );
  const forward = sorted(1);
  const backward = sorted(-1);
  return backward.every((each, index) => each === forward[index]) ? [forward] : [forward, backward];
}

function rank(each: TaskOptions): number {
  return ORDER_OF_WORK[each.facts.demand.what];
}

function unitOf(option: Option): string {
  return option.method.kind === 'machine' ? `machine ${option.method.machineId}` : `hand ${option.handMethodId}`;
}

function choose(options: readonly Option[], unit: string): Option {
  const preferred = options.filter((each) => unitOf(each) === unit);
  return quickest(preferred.length > 0 ? preferred : options);
}

function quickest(options: readonly Option[]): Option {
  return options.reduce((best, each) => (each.serviceMs < best.serviceMs ? each : best));
}

type Chosen = TaskOptions & { readonly option: Option };

function buildMode(equipped: EquippedRig, chosen: readonly Chosen[], materialOf: (facts: TaskFacts) => number): Mode {
  const { rig } = equipped;
  const machineIds = new Set(chosen.flatMap((each) => each.option.machineIds));
  const carried = rig.machines.filter((each) => machineIds.has(each.machineId));
  const unloadMin = carried.reduce((sum, each) => sum + each.unloadMin, 0);
  const loadMin = carried.reduce((sum, each) => sum + each.loadMin, 0);
  const handIds = new Set(chosen.map((each) => each.option.handMethodId));
  const handMin = equipped.handMethods.reduce((sum, each) => sum + (handIds.has(each.id) ? each.setUpMin : 0), 0);
  const flagMin = flagMinutes(chosen.map((each) => each.facts.treatment));
  const reloadMs = minutesToMs(unloadMin + loadMin);
  return {
    beforeMs: minutesToMs(rig.stopMin + flagMin + unloadMin + handMin / 2),
    afterMs: minutesToMs(loadMin + handMin / 2),
    ops: chosen.map((each) => buildOp(equipped, each, reloadMs, materialOf(each.facts))),
  };
}

function buildOp(equipped: EquippedRig, chosen: Chosen, reloadMs: number, material: number): Op {
  const { option, facts } = chosen;
  const machine = equipped.machines.findIndex((each) => option.headId !== '' && each.id === option.machineIds[0]);
  const heads = equipped.machines[machine]?.heads ?? [];
  const head = heads.findIndex((each) => each.id === option.headId);
  return {
    task: chosen.task,
    method: option.method,
    material,
    draws: option.draws,
    areaUnits: areaUnits(facts.demand.treatedSqFt),
    serviceMs: option.serviceMs,
    machine,
    head,
    swapMs: minutesToMs(heads[head]?.swapMin ?? 0),
    reloadMs,
  };
}

/** Whole ft2, rounded up, at least one. */
export function areaUnits(squareFeet: number): number {
  return Math.max(1, Math.ceil(squareFeet - 1e-6));
}

function keepUseful(modes: readonly Mode[]): readonly Mode[] {
  const ordered = modes
    .map((mode) => ({ mode, ms: totalMs(mode), draws: totalDraws(mode) }))
    .sort((left, right) => left.ms - right.ms);
  const kept: typeof ordered = [];
  for (const each of ordered) {
    if (!kept.some((other) => drawsNoMore(other.draws, each.draws))) kept.push(each);
  }
  return kept.map((each) => each.mode);
}

function totalMs(mode: Mode): number {
  return mode.beforeMs + mode.afterMs + mode.ops.reduce((sum, op) => sum + op.serviceMs, 0);
}

function totalDraws(mode: Mode): ReadonlyMap<number, number> {
  const draws = new Map<number, number>();
  for (const draw of mode.ops.flatMap((op) => op.draws))
    draws.set(draw.compartment, (draws.get(draw.compartment) ?? 0) + draw.parts);
  return draws;
}

function drawsNoMore(left: ReadonlyMap<number, number>, right: ReadonlyMap<number, number>): boolean {
  return [...left].every(([compartment, parts]) => parts <= (right.get(compartment) ?? 0));
}
