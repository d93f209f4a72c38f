import type { HandMethod } from '../../book/index.ts';
import { flagMinutes } from './flags.ts';
import type { Option, TaskFacts } from './options.ts';
import type { EquippedRig } from './rigs.ts';
import { minutesToMs } from './scale.ts';
import { type StrandOp, secondMethods, visitMs } from './strands.ts';
import type { Mode, Op } from './types.ts';

/** One task of a job with its rank and the options that a rig has for it; never empty. */
export type TaskOptions = {
  readonly task: number;
  readonly rank: number;
  readonly facts: TaskFacts;
  readonly options: readonly Option[];
};

/** More ways than this to do one visit are not worth telling apart; the quickest are kept. */
const MOST_MODES = 4;

/**
 * The ways in which a rig can do all tasks of a job: the quickest option of each task, and for every machine and hand method
 * that can do some of them, that one wherever it can and the quickest one elsewhere. Where the crew has two persons, also ways that
 * share the zones out between a machine and a hand method beside it. Ways that are slower than another one and draw at least as much
 * from every compartment are dropped.
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
    const plain = preferences.map((unit) => inOrder.map((each) => ({ ...each, option: choose(each.options, unit) })));
    const build = (chosen: readonly Chosen[]): Mode => buildMode(equipped, chosen, materialOf);
    const shared = equipped.rig.crew < 2 ? [] : plain.flatMap((chosen) => sharedOut(equipped, chosen, build));
    return keepUseful([...plain.map(build), ...shared]);
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
        left.rank - right.rank ||
        direction * (materialOf(left.facts) - materialOf(right.facts)) ||
        left.task - right.task,
    );
  const forward = sorted(1);
  const backward = sorted(-1);
  return backward.every((each, index) => each === forward[index]) ? [forward] : [forward, backward];
}

function unitOf(option: Option): string {
  return option.method.kind === 'machine' ? `machine ${option.method.machineId}` : `hand ${option.handMethodId}`;
}

function choose(options: readonly Option[], unit: string): Option {
  const preferred = options.filter((each) => unitOf(each) === unit);
  return quickest(preferred.length > 0 ? preferred : options);
}

function quickest(options: readonly Option[]): Option {
  const ms = (option: Option): number => option.serviceMs + (option.trim?.serviceMs ?? 0);
  return options.reduce((best, each) => (ms(each) < ms(best) ? each : best));
}

type Chosen = TaskOptions & { readonly option: Option };

/**
 * Ways in which a hand method does some zones beside the machine: one zone after the other goes over to it, always the one that
 * shortens the visit most, as long as one does. One way for each hand method that shortens it at all.
 */
function sharedOut(
  equipped: EquippedRig,
  plain: readonly Chosen[],
  build: (chosen: readonly Chosen[]) => Mode,
): readonly Mode[] {
  const zoneIds = [...new Set(plain.map((each) => each.facts.zone.id))];
  return equipped.handMethods.filter(mayRunBeside).flatMap((hand) => {
    const given = (chosen: readonly Chosen[], zoneId: string): readonly Chosen[] =>
      chosen.map((each) => {
        const option = each.options.find((other) => other.handMethodId === hand.id);
        return each.facts.zone.id === zoneId && option !== undefined ? { ...each, option } : each;
      });
    let best = plain;
    let mode = build(plain);
    for (;;) {
      const ways = zoneIds.map((zoneId) => given(best, zoneId)).map((chosen) => ({ chosen, built: build(chosen) }));
      const [next] = ways.sort((left, right) => visitMs(left.built) - visitMs(right.built));
      if (next === undefined || visitMs(next.built) >= visitMs(mode)) break;
      best = next.chosen;
      mode = next.built;
    }
    return best === plain ? [] : [mode];
  });
}

/** A hand method that draws on a machine needs the machine to stand. */
function mayRunBeside(hand: HandMethod): boolean {
  return hand.besideMachine && hand.drawsFrom.kind !== 'machine';
}

function buildMode(equipped: EquippedRig, chosen: readonly Chosen[], materialOf: (facts: TaskFacts) => number): Mode {
  const { rig } = equipped;
  const machineIds = new Set(chosen.flatMap((each) => each.option.machineIds));
  const carried = rig.machines.filter((each) => machineIds.has(each.machineId));
  const unloadMin = carried.reduce((sum, each) => sum + each.unloadMin, 0);
  const loadMin = carried.reduce((sum, each) => sum + each.loadMin, 0);
  const second = rig.crew < 2 ? new Set<string>() : secondMethods(chosen.flatMap((each) => strandOps(equipped, each)));
  const used = equipped.handMethods.filter((hand) =>
    chosen.some(({ option }) => option.handMethodId === hand.id || option.trim?.handMethodId === hand.id),
  );
  const handMin = (whose: boolean): number =>
    used.reduce((sum, each) => sum + (second.has(each.id) === whose ? each.setUpMin : 0), 0);
  const flagMin = flagMinutes(chosen.map((each) => each.facts.treatment));
  const reloadMs = minutesToMs(unloadMin + loadMin);
  const ops = chosen.flatMap((each) => buildOps(equipped, each, reloadMs, materialOf(each.facts), second));
  // Each person gets ready and puts away what is theirs.
  return {
    beforeMs: minutesToMs(rig.stopMin + flagMin + Math.max(unloadMin + handMin(false) / 2, handMin(true) / 2)),
    afterMs: minutesToMs(Math.max(loadMin + handMin(false) / 2, handMin(true) / 2)),
    ops: secondInPlace(equipped, ops),
  };
}

function strandOps(equipped: EquippedRig, { option, facts, rank }: Chosen): readonly StrandOp[] {
  const strand = (handMethodId: string, trims: boolean): StrandOp => {
    const hand = equipped.handMethods.find((each) => each.id === handMethodId);
    return {
      zoneId: facts.zone.id,
      rank,
      handMethodId,
      mayRunBeside: hand !== undefined && mayRunBeside(hand),
      ...(trims ? { trims } : {}),
    };
  };
  const own = strand(option.handMethodId, false);
  return option.trim === null ? [own] : [own, strand(option.trim.handMethodId, true)];
}

/**
 * The second person's ops before those of the first, so that they are over when a machine has to be refilled; after them where a
 * vessel of the second person has to be refilled at this stop, so that the riding is over by then.
 */
function secondInPlace(equipped: EquippedRig, ops: readonly Op[]): readonly Op[] {
  const second = ops.filter((each) => each.second);
  const first = ops.filter((each) => !each.second);
  const need = totalDraws(second);
  const lasts = [...need].every(([at, parts]) => parts <= (equipped.compartments[at]?.capacityParts ?? 0));
  return lasts ? [...second, ...first] : [...first, ...second];
}

/** The op of a task, and after a machine's its hand trim. */
function buildOps(
  equipped: EquippedRig,
  { task, option }: Chosen,
  reloadMs: number,
  material: number,
  second: ReadonlySet<string>,
): readonly Op[] {
  const machine = equipped.machines.findIndex((each) => option.headId !== '' && each.id === option.machineIds[0]);
  const heads = equipped.machines[machine]?.heads ?? [];
  const head = heads.findIndex((each) => each.id === option.headId);
  const { method, draws, areaUnits, serviceMs, ground, trim } = option;
  const main: Op = {
    task,
    ...(ground === null ? {} : { ground }),
    method,
    material,
    draws,
    areaUnits,
    serviceMs,
    machine,
    head,
    swapMs: minutesToMs(heads[head]?.swapMin ?? 0),
    reloadMs,
    second: second.has(option.handMethodId),
  };
  if (trim === null) return [main];
  const onFoot = { machine: -1, head: -1, swapMs: 0, reloadMs, material, task, groundBefore: areaUnits };
  const { handMethodId, ...work } = trim;
  return [main, { ...onFoot, ...work, second: second.has(handMethodId) }];
}

function keepUseful(modes: readonly Mode[]): readonly Mode[] {
  const ordered = modes
    .map((mode) => ({ mode, ms: visitMs(mode), draws: totalDraws(mode.ops) }))
    .sort((left, right) => left.ms - right.ms);
  const kept: typeof ordered = [];
  for (const each of ordered) {
    if (!kept.some((other) => drawsNoMore(other.draws, each.draws))) kept.push(each);
  }
  return kept.map((each) => each.mode);
}

function totalDraws(ops: readonly Op[]): ReadonlyMap<number, number> {
  const draws = new Map<number, number>();
  for (const draw of ops.flatMap((op) => op.draws))
    draws.set(draw.compartment, (draws.get(draw.compartment) ?? 0) + draw.parts);
  return draws;
}

function drawsNoMore(left: ReadonlyMap<number, number>, right: ReadonlyMap<number, number>): boolean {
  return [...left].every(([compartment, parts]) => parts <= (right.get(compartment) ?? 0));
}
