import { HAND_METHOD_KINDS, type HandMethod } from '../../../core/book/index.ts';
import { commonWords } from '../../texts/index.ts';
import { machinesWords } from '../../texts/shed/index.ts';
import { handBench } from './bench/bench-part.tsx';
import { type Column, choiceOf } from './column.tsx';
import type { ShelfPlan } from './shelf.ts';

type Source = HandMethod['drawsFrom'];
const SOURCES = ['machine', 'rig', 'own-tank', 'own-hopper'] as const;
const SOURCE_WORDS = {
  machine: machinesWords.hand.fromMachine,
  rig: machinesWords.hand.fromRig,
  'own-tank': machinesWords.hand.ownTank,
  'own-hopper': machinesWords.hand.ownHopper,
};

function asSource(
  method: HandMethod,
  kind: Source['kind'],
  machines: readonly { id: string; tank: string }[],
): HandMethod {
  const [machine] = machines;
  if (kind === 'machine') {
    return machine === undefined
      ? method
      : { ...method, drawsFrom: { kind, machineId: machine.id, compartmentId: machine.tank } };
  }
  if (kind === 'own-hopper') return { ...method, drawsFrom: { kind, capacityLb: 40 } };
  return { ...method, drawsFrom: { kind, capacityGal: kind === 'rig' ? 50 : 4, sumpGal: 0, agitated: kind === 'rig' } };
}

const columns: readonly Column<HandMethod>[] = [
  {
    kind: 'text',
    label: machinesWords.hand.name,
    inTable: true,
    get: (h) => h.name,
    set: (h, name) => ({ ...h, name }),
  },
  choiceOf<HandMethod, HandMethod['what']>(
    commonWords.kind,
    HAND_METHOD_KINDS,
    (h) => h.what,
    (h, what) => ({ ...h, what }),
  ),
  {
    kind: 'choice',
    label: machinesWords.hand.drawsFrom,
    inTable: true,
    options: () => SOURCES.map((value) => ({ value, words: SOURCE_WORDS[value] })),
    get: (h) => h.drawsFrom.kind,
    set: (h, text, book) => {
      const kind = SOURCES.find((each) => each === text);
      const machines = book.machines.flatMap((machine) =>
        machine.compartments.filter((each) => each.kind === 'tank').map((each) => ({ id: machine.id, tank: each.id })),
      );
      return kind === undefined ? h : asSource(h, kind, machines);
    },
  },
  {
    kind: 'figure',
    figure: 'volume',
    label: machinesWords.hand.holds,
    positive: true,
    inTable: true,
    hiddenFor: (h) => !('capacityGal' in h.drawsFrom),
    get: (h) => ('capacityGal' in h.drawsFrom ? h.drawsFrom.capacityGal : null),
    set: (h, capacityGal) => ('capacityGal' in h.drawsFrom ? { ...h, drawsFrom: { ...h.drawsFrom, capacityGal } } : h),
  },
  {
    kind: 'figure',
    figure: 'weight',
    label: machinesWords.hand.holdsDry,
    positive: true,
    hiddenFor: (h) => h.drawsFrom.kind !== 'own-hopper',
    get: (h) => (h.drawsFrom.kind === 'own-hopper' ? h.drawsFrom.capacityLb : null),
    set: (h, capacityLb) =>
      h.drawsFrom.kind === 'own-hopper' ? { ...h, drawsFrom: { ...h.drawsFrom, capacityLb } } : h,
  },
  {
    kind: 'figure',
    figure: 'length',
    label: machinesWords.hand.reach,
    inTable: true,
    positive: true,
    get: (h) => h.reachFt ?? null,
    set: (h, reachFt) => ({ ...h, reachFt }),
    unset: ({ reachFt: _, ...method }) => method,
  },
  {
    kind: 'figure',
    figure: 'minutes',
    label: machinesWords.hand.minutesPerArea,
    inTable: true,
    positive: true,
    get: (h) => h.minutesPer1000SqFt,
    set: (h, minutesPer1000SqFt) => ({ ...h, minutesPer1000SqFt }),
  },
  {
    kind: 'figure',
    figure: 'number',
    label: machinesWords.hand.secondsPerZone,
    get: (h) => h.standSec ?? null,
    set: (h, standSec) => ({ ...h, standSec }),
    unset: ({ standSec: _, ...method }) => method,
  },
  {
    kind: 'figure',
    figure: 'number',
    label: machinesWords.hand.secondsPerHose,
    hiddenFor: (h) => h.what !== 'hose',
    get: (h) => h.moveSec ?? null,
    set: (h, moveSec) => ({ ...h, moveSec }),
    unset: ({ moveSec: _, ...method }) => method,
  },
  {
    kind: 'figure',
    figure: 'minutes',
    label: machinesWords.hand.readyMinutes,
    get: (h) => h.setUpMin,
    set: (h, setUpMin) => ({ ...h, setUpMin }),
  },
  {
    kind: 'figure',
    figure: 'volume',
    label: machinesWords.hand.leastVolume,
    get: (h) => h.leastVolumeGal,
    set: (h, leastVolumeGal) => ({ ...h, leastVolumeGal }),
  },
  {
    kind: 'flag',
    label: machinesWords.hand.secondPerson,
    get: (h) => h.besideMachine,
    set: (h, besideMachine) => ({ ...h, besideMachine }),
  },
  {
    kind: 'figure',
    figure: 'carrier',
    label: machinesWords.hand.delivers,
    positive: true,
    get: (h) => h.deliveredGalPer1000SqFt ?? null,
    set: (h, deliveredGalPer1000SqFt) => ({ ...h, deliveredGalPer1000SqFt }),
    unset: ({ deliveredGalPer1000SqFt: _, ...method }) => method,
  },
];

export const handMethodShelf: ShelfPlan<'handMethods'> = {
  shelf: 'handMethods',
  title: machinesWords.hand.handMethods,
  one: machinesWords.hand.handMethod,
  about: machinesWords.hand.about,
  caution: machinesWords.hand.caution,
  columns,
  parts: [handBench],
  create: (_book, id) => ({
    id,
    name: machinesWords.hand.newHandMethod,
    what: 'hose',
    drawsFrom: { kind: 'rig', capacityGal: 50, sumpGal: 0, agitated: true },
    reachFt: 150,
    minutesPer1000SqFt: 3,
    setUpMin: 4,
    leastVolumeGal: 0,
    besideMachine: true,
  }),
};
