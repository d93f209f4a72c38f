import { type Compartment, HEAD_PURPOSES, type Head, MACHINE_KINDS, type Machine } from '../../../core/book/index.ts';
import { freshId } from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { machinesWords } from '../../texts/shed/index.ts';
import { machineBench } from './bench/bench-part.tsx';
import { type Column, choiceOf } from './column.tsx';
import { NEW_PASSES, passColumns } from './head-passes.ts';
import { part } from './part.tsx';
import type { ShelfPlan } from './shelf.ts';

const columns: readonly Column<Machine>[] = [
  {
    kind: 'text',
    label: machinesWords.machine.name,
    inTable: true,
    get: (m) => m.name,
    set: (m, name) => ({ ...m, name }),
  },
  {
    kind: 'choice',
    label: commonWords.kind,
    inTable: true,
    // The words of the trade, with their hyphens.
    options: () => MACHINE_KINDS.map((value) => ({ value, words: value })),
    get: (m) => m.what,
    set: (m, text) => ({ ...m, what: MACHINE_KINDS.find((each) => each === text) ?? m.what }),
  },
  {
    kind: 'figure',
    figure: 'width',
    label: machinesWords.machine.transitWidth,
    inTable: true,
    positive: true,
    get: (m) => m.transitWidthIn,
    set: (m, transitWidthIn) => ({ ...m, transitWidthIn }),
  },
  {
    kind: 'figure',
    figure: 'slope',
    label: machinesWords.machine.steepestSlope,
    inTable: true,
    most: 60,
    get: (m) => m.maxSlopeDeg,
    set: (m, maxSlopeDeg) => ({ ...m, maxSlopeDeg }),
  },
  {
    kind: 'figure',
    figure: 'weight',
    label: machinesWords.machine.emptyWeight,
    inTable: true,
    get: (m) => m.emptyWeightLb,
    set: (m, emptyWeightLb) => ({ ...m, emptyWeightLb }),
  },
  {
    kind: 'shown',
    label: machinesWords.machine.holds,
    inTable: true,
    show: (m) =>
      m.compartments
        .map((each) =>
          each.kind === 'tank'
            ? machinesWords.machine.gal(each.capacityGal)
            : machinesWords.machine.lb(each.capacityLb),
        )
        .join(' + '),
  },
  {
    kind: 'figure',
    figure: 'whole',
    label: machinesWords.machine.bagsBeside,
    get: (m) => m.bagPlaces,
    set: (m, bagPlaces) => ({ ...m, bagPlaces }),
  },
  {
    kind: 'figure',
    figure: 'minutes',
    label: machinesWords.machine.minutesPerBag,
    hiddenFor: (m) => m.bagPlaces === 0,
    get: (m) => m.minutesPerBag ?? null,
    set: (m, minutesPerBag) => ({ ...m, minutesPerBag }),
    unset: ({ minutesPerBag: _, ...machine }) => machine,
  },
];

const COMPARTMENT_KINDS = ['tank', 'hopper', 'seed-box'] as const;

function asKind(compartment: Compartment, kind: Compartment['kind']): Compartment {
  const { id, name } = compartment;
  if (kind === 'tank') return { kind, id, name, capacityGal: 20, sumpGal: 0, agitated: true };
  return { kind, id, name, capacityLb: 100 };
}

const compartmentColumns: readonly Column<Compartment>[] = [
  { kind: 'text', label: machinesWords.machine.name, get: (c) => c.name, set: (c, name) => ({ ...c, name }) },
  choiceOf<Compartment, Compartment['kind']>(commonWords.kind, COMPARTMENT_KINDS, (c) => c.kind, asKind),
  {
    kind: 'figure',
    figure: 'volume',
    label: machinesWords.machine.holds,
    positive: true,
    hiddenFor: (c) => c.kind !== 'tank',
    get: (c) => (c.kind === 'tank' ? c.capacityGal : null),
    set: (c, capacityGal) => (c.kind === 'tank' ? { ...c, capacityGal } : c),
  },
  {
    kind: 'figure',
    figure: 'volume',
    label: machinesWords.machine.pumpLeaves,
    hiddenFor: (c) => c.kind !== 'tank',
    get: (c) => (c.kind === 'tank' ? c.sumpGal : null),
    set: (c, sumpGal) => (c.kind === 'tank' ? { ...c, sumpGal } : c),
  },
  {
    kind: 'flag',
    label: machinesWords.machine.agitated,
    hiddenFor: (c) => c.kind !== 'tank',
    get: (c) => c.kind === 'tank' && c.agitated,
    set: (c, agitated) => (c.kind === 'tank' ? { ...c, agitated } : c),
  },
  {
    kind: 'figure',
    figure: 'weight',
    label: machinesWords.machine.holds,
    positive: true,
    hiddenFor: (c) => c.kind === 'tank',
    get: (c) => (c.kind === 'tank' ? null : c.capacityLb),
    set: (c, capacityLb) => (c.kind === 'tank' ? c : { ...c, capacityLb }),
  },
];

const headColumns: readonly Column<Head>[] = [
  { kind: 'text', label: machinesWords.machine.name, get: (h) => h.name, set: (h, name) => ({ ...h, name }) },
  choiceOf<Head, Head['purpose']>(
    machinesWords.machine.for,
    HEAD_PURPOSES,
    (h) => h.purpose,
    (h, purpose) => ({ ...h, purpose }),
  ),
  {
    kind: 'figure',
    figure: 'length',
    label: machinesWords.machine.swath,
    positive: true,
    get: (h) => h.swathFt,
    set: (h, swathFt) => ({ ...h, swathFt }),
  },
  {
    kind: 'figure',
    figure: 'speed',
    label: machinesWords.machine.speed,
    positive: true,
    get: (h) => h.speedMph,
    set: (h, speedMph) => ({ ...h, speedMph }),
  },
  {
    kind: 'figure',
    figure: 'share',
    label: machinesWords.machine.fieldEfficiency,
    positive: true,
    most: 1,
    get: (h) => h.fieldEfficiency,
    set: (h, fieldEfficiency) => ({ ...h, fieldEfficiency }),
  },
  {
    kind: 'figure',
    figure: 'minutes',
    label: machinesWords.machine.fitMinutes,
    get: (h) => h.swapMin,
    set: (h, swapMin) => ({ ...h, swapMin }),
  },
  {
    kind: 'figure',
    figure: 'carrier',
    label: machinesWords.machine.delivers,
    positive: true,
    hiddenFor: (h) => h.purpose !== 'spray',
    get: (h) => h.deliveredGalPer1000SqFt ?? null,
    set: (h, deliveredGalPer1000SqFt) => ({ ...h, deliveredGalPer1000SqFt }),
    unset: ({ deliveredGalPer1000SqFt: _, ...head }) => head,
  },
];

/** What a head of this machine can draw from; several tanks run together. */
function drawsFrom(machine: Machine): Column<Head> {
  return {
    kind: 'several',
    label: machinesWords.machine.drawsFrom,
    hiddenFor: (h) => h.purpose === 'aerate',
    options: () => machine.compartments.map((each) => ({ value: each.id, words: each.name })),
    get: (h) => h.compartmentIds,
    set: (h, compartmentIds) => ({ ...h, compartmentIds }),
  };
}

export const machineShelf: ShelfPlan<'machines'> = {
  shelf: 'machines',
  title: machinesWords.machine.machines,
  one: commonWords.machine,
  about: machinesWords.machine.about,
  caution: machinesWords.machine.caution,
  columns,
  parts: [
    part<Machine, Compartment>({
      title: machinesWords.machine.tanksAndHoppers,
      one: machinesWords.machine.compartment,
      rows: (m) => m.compartments,
      replace: (m, compartments) => ({ ...m, compartments }),
      columns: compartmentColumns,
      name: (c) => c.name,
      keyOf: (c) => c.id,
      create: (m) => ({
        kind: 'tank',
        id: freshId(m.compartments, 'tank'),
        name: machinesWords.machine.tank,
        capacityGal: 20,
        sumpGal: 0,
        agitated: true,
      }),
    }),
    part<Machine, Head>({
      title: machinesWords.machine.heads,
      one: machinesWords.machine.head,
      rows: (m) => m.heads,
      replace: (m, heads) => ({ ...m, heads }),
      columns: (m) => [...headColumns, drawsFrom(m), ...passColumns],
      name: (h) => h.name,
      keyOf: (h) => h.id,
      create: (m) => ({
        id: freshId(m.heads, 'head'),
        name: machinesWords.machine.boom,
        purpose: 'spray',
        swathFt: 8,
        speedMph: 4,
        fieldEfficiency: 0.65,
        swapMin: 0,
        compartmentIds: m.compartments.filter((each) => each.kind === 'tank').map((each) => each.id),
        passes: NEW_PASSES,
      }),
    }),
    machineBench,
  ],
  create: (_book, id) => ({
    id,
    name: machinesWords.machine.newMachine,
    what: machinesWords.machine.standOn,
    transitWidthIn: 36,
    emptyWeightLb: 700,
    maxSlopeDeg: 15,
    compartments: [],
    heads: [],
    bagPlaces: 0,
  }),
};
