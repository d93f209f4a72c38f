import { type CarriedMachine, type FillPoint, RIDES, type Rig } from '../../../core/book/index.ts';
import { commonWords } from '../../texts/index.ts';
import { rigsWords } from '../../texts/shed/index.ts';
import type { QuantityKind } from '../../ui/index.ts';
import { type Column, choiceOf } from './column.tsx';
import { part } from './part.tsx';
import type { ShelfPlan } from './shelf.ts';

/** Members of a record that always hold a number. */
type NumberKeys<R> = { [Key in keyof R]-?: R[Key] extends number ? Key : never }[keyof R] & string;

function figure<R>(
  label: string,
  kind: QuantityKind,
  key: NumberKeys<R>,
  options: { readonly inTable?: boolean; readonly positive?: boolean } = {},
): Column<R> {
  return {
    kind: 'figure',
    figure: kind,
    label,
    ...options,
    get: (record) => record[key] as number,
    set: (record, value) => ({ ...record, [key]: value }),
  };
}

const rigColumns: readonly Column<Rig>[] = [
  { kind: 'text', label: rigsWords.rig.name, inTable: true, get: (r) => r.name, set: (r, name) => ({ ...r, name }) },
  {
    kind: 'choice',
    label: rigsWords.rig.startsFrom,
    inTable: true,
    options: (book) => book.fillPoints.map((point) => ({ value: point.id, words: point.name })),
    get: (r) => r.homeId,
    set: (r, homeId) => ({ ...r, homeId }),
  },
  {
    kind: 'choice',
    label: rigsWords.rig.dayEndsAt,
    options: (book) => book.fillPoints.map((point) => ({ value: point.id, words: point.name })),
    get: (r) => r.endId ?? r.homeId,
    set: ({ endId: _, ...rig }, endId) => (endId === rig.homeId ? rig : { ...rig, endId }),
  },
  figure<Rig>(rigsWords.rig.crew, 'whole', 'crew', { inTable: true, positive: true }),
  {
    kind: 'figure',
    figure: 'money',
    label: rigsWords.rig.wagePerHourPerson,
    get: (r) => r.wagePerHour ?? null,
    set: (r, wagePerHour) => ({ ...r, wagePerHour }),
    unset: ({ wagePerHour: _, ...rig }) => rig,
  },
  figure<Rig>(rigsWords.rig.nurseTank, 'volume', 'nurseTankGal', { inTable: true }),
  figure<Rig>(rigsWords.rig.bagPlaces, 'whole', 'bagPlaces', { inTable: true }),
  figure<Rig>(rigsWords.rig.payload, 'weight', 'payloadLb', { inTable: true, positive: true }),
  figure<Rig>(rigsWords.rig.shiftStarts, 'clock', 'shiftStartMin'),
  figure<Rig>(rigsWords.rig.shift, 'minutes', 'shiftMin', { positive: true }),
  figure<Rig>(rigsWords.rig.overtimeAtMost, 'minutes', 'overtimeMin'),
  {
    kind: 'figure',
    figure: 'clock',
    label: rigsWords.rig.breakFrom,
    get: (r) => r.breakAfterMin ?? null,
    set: (r, breakAfterMin) => ({ ...r, breakAfterMin }),
    unset: ({ breakAfterMin: _, ...rig }) => rig,
  },
  figure<Rig>(rigsWords.rig.break, 'minutes', 'breakMin'),
  figure<Rig>(rigsWords.rig.morningWork, 'minutes', 'morningMin'),
  figure<Rig>(rigsWords.rig.eveningWork, 'minutes', 'eveningMin'),
  figure<Rig>(rigsWords.rig.nurseFlow, 'flow', 'nurseFlowGpm', { positive: true }),
  figure<Rig>(rigsWords.rig.oneRefill, 'minutes', 'refillMin'),
  figure<Rig>(rigsWords.rig.moreMidZone, 'minutes', 'midZoneMin'),
  figure<Rig>(rigsWords.rig.oneBag, 'minutes', 'minutesPerBag'),
  figure<Rig>(rigsWords.rig.atEveryStop, 'minutes', 'stopMin'),
];

const carriedColumns: readonly Column<CarriedMachine>[] = [
  {
    kind: 'choice',
    label: commonWords.machine,
    options: (book) => book.machines.map((machine) => ({ value: machine.id, words: machine.name })),
    get: (c) => c.machineId,
    set: (c, machineId) => ({ ...c, machineId }),
  },
  choiceOf<CarriedMachine, CarriedMachine['ride']>(
    rigsWords.rig.ridesOn,
    RIDES,
    (c) => c.ride,
    (c, ride) => ({ ...c, ride }),
  ),
  figure<CarriedMachine>(rigsWords.rig.unload, 'minutes', 'unloadMin'),
  figure<CarriedMachine>(rigsWords.rig.load, 'minutes', 'loadMin'),
];

export const rigShelf: ShelfPlan<'rigs'> = {
  shelf: 'rigs',
  title: rigsWords.rig.rigs,
  one: commonWords.rig,
  about: rigsWords.rig.about,
  caution: rigsWords.rig.caution,
  columns: rigColumns,
  parts: [
    part<Rig, CarriedMachine>({
      title: rigsWords.rig.carries,
      one: commonWords.machine,
      rows: (r) => r.machines,
      replace: (r, machines) => ({ ...r, machines }),
      columns: carriedColumns,
      name: (c, book) => book.machines.find((machine) => machine.id === c.machineId)?.name ?? c.machineId,
      keyOf: (c) => c.machineId,
      create: (r, book) => {
        const free = book.machines.find((machine) => !r.machines.some((each) => each.machineId === machine.id));
        return free === undefined
          ? rigsWords.rig.allCarried
          : { machineId: free.id, ride: 'rack', unloadMin: 1, loadMin: 1 };
      },
    }),
    part<Rig, string>({
      title: rigsWords.rig.handMethodsAboard,
      one: rigsWords.rig.handMethod,
      rows: (r) => r.handMethodIds,
      replace: (r, handMethodIds) => ({ ...r, handMethodIds }),
      columns: [
        {
          kind: 'choice',
          label: rigsWords.rig.method,
          options: (book) => book.handMethods.map((method) => ({ value: method.id, words: method.name })),
          get: (id) => id,
          set: (_, id) => id,
        },
      ],
      name: (id, book) => book.handMethods.find((method) => method.id === id)?.name ?? id,
      keyOf: (id) => id,
      create: (r, book) =>
        book.handMethods.find((method) => !r.handMethodIds.includes(method.id))?.id ?? rigsWords.rig.allAboard,
    }),
  ],
  create: (book, id) => {
    const [home] = book.fillPoints;
    if (home === undefined) return rigsWords.rig.fillPointFirst;
    return {
      id,
      name: rigsWords.rig.newRig,
      crew: 1,
      homeId: home.id,
      shiftStartMin: 420,
      shiftMin: 540,
      overtimeMin: 60,
      breakMin: 0,
      morningMin: 20,
      eveningMin: 15,
      machines: [],
      handMethodIds: [],
      nurseTankGal: 100,
      nurseFlowGpm: 20,
      bagPlaces: 10,
      minutesPerBag: 1,
      refillMin: 4,
      midZoneMin: 2,
      stopMin: 3,
      payloadLb: 3000,
    };
  },
};

const FILL_KINDS = ['shop', 'hydrant', 'supplier'] as const;

export const fillPointShelf: ShelfPlan<'fillPoints'> = {
  shelf: 'fillPoints',
  title: rigsWords.rig.fillPoints,
  one: commonWords.fillPoint,
  about: rigsWords.rig.fillPointsAbout,
  columns: [
    { kind: 'text', label: rigsWords.rig.name, inTable: true, get: (p) => p.name, set: (p, name) => ({ ...p, name }) },
    choiceOf<FillPoint, FillPoint['what']>(
      commonWords.kind,
      FILL_KINDS,
      (p) => p.what,
      (p, what) => ({ ...p, what }),
    ),
    figure<FillPoint>(rigsWords.rig.water, 'flow', 'waterGpm', { inTable: true }),
    figure<FillPoint>(rigsWords.rig.oneVisit, 'minutes', 'visitMin', { inTable: true }),
    {
      kind: 'figure',
      figure: 'degrees',
      label: rigsWords.rig.longitude,
      get: (p) => p.at[0],
      set: (p, longitude) => ({ ...p, at: [longitude, p.at[1]] }),
    },
    {
      kind: 'figure',
      figure: 'degrees',
      label: rigsWords.rig.latitude,
      get: (p) => p.at[1],
      set: (p, latitude) => ({ ...p, at: [p.at[0], latitude] }),
    },
    {
      kind: 'shown',
      label: rigsWords.rig.open,
      inTable: true,
      show: (p, _, words) =>
        p.hours === undefined
          ? rigsWords.rig.always
          : commonWords.span(words.clock(p.hours.openMin * 60), words.clock(p.hours.closeMin * 60)),
    },
    {
      kind: 'figure',
      figure: 'clock',
      label: rigsWords.rig.opens,
      get: (p) => p.hours?.openMin ?? null,
      set: (p, openMin) => ({ ...p, hours: { openMin, closeMin: p.hours?.closeMin ?? END_OF_DAY_MIN } }),
      unset: alwaysOpen,
    },
    {
      kind: 'figure',
      figure: 'clock',
      label: rigsWords.rig.closes,
      get: (p) => p.hours?.closeMin ?? null,
      set: (p, closeMin) => ({ ...p, hours: { openMin: p.hours?.openMin ?? 0, closeMin } }),
      unset: alwaysOpen,
    },
    figure<FillPoint>(rigsWords.rig.oneBag, 'minutes', 'minutesPerBag'),
    {
      kind: 'flag',
      label: rigsWords.rig.holdsEveryProduct,
      get: (p) => p.products === 'all',
      set: (p, all) => ({ ...p, products: all ? 'all' : [] }),
    },
    {
      kind: 'several',
      label: rigsWords.rig.products,
      hiddenFor: (p) => p.products === 'all',
      options: (book) => book.products.map((product) => ({ value: product.id, words: product.name })),
      get: (p) => (p.products === 'all' ? [] : p.products),
      set: (p, products) => ({ ...p, products }),
    },
    {
      kind: 'shown',
      label: rigsWords.rig.products,
      inTable: true,
      show: (p, book) => {
        const held = p.products;
        if (held === 'all') return 'all';
        const names = held.map((id) => book.products.find((product) => product.id === id)?.name ?? id);
        return names.length === 0 ? 'none' : names.join(', ');
      },
    },
  ],
  parts: [],
  create: (book, id) => ({
    id,
    name: rigsWords.rig.newFillPoint,
    what: rigsWords.rig.shop,
    at: book.properties[0]?.parking ?? [0, 0],
    waterGpm: 20,
    visitMin: 5,
    minutesPerBag: 0.5,
    products: 'all',
  }),
};

const END_OF_DAY_MIN = 24 * 60;

function alwaysOpen({ hours: _, ...point }: FillPoint): FillPoint {
  return point;
}
