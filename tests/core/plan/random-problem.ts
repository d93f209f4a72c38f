import { createRandom, type Random } from '../../../core/base/index.ts';
import type {
  Draw,
  Job,
  Material,
  Mode,
  Op,
  Problem,
  ProblemCompartment,
  ProblemRig,
  RouteSlot,
  Station,
  Stock,
  Task,
} from '../../../core/plan/problem/index.ts';

/**
 * Invented planning problems for tests: whole numbers of a believable size, drawn from a seed. Nothing here is real and no rate
 * is meant for use.
 */
export type ProblemShape = {
  readonly jobs: number;
  readonly rigs?: number;
  readonly days?: number;
  /** Stations beside home. */
  readonly stations?: number;
  /** Chance of a job window, and of stations with hours. */
  readonly windows?: number;
  /** Chance of a break in a rig's day. */
  readonly breaks?: number;
  /** Materials: two mixes that cannot share a tank, and two dry products. */
  readonly materials?: number;
  /** Most ways in which one rig can do one job. */
  readonly modes?: number;
  /** Most zones per job. */
  readonly zones?: number;
  /** Multiplies the parts that ops draw: above 1 there are more refills. */
  readonly thirst?: number;
  /** Chance that a rig has no nurse tank. */
  readonly noNurse?: number;
  /** Chance that the payload binds. */
  readonly heavy?: number;
  /** Length of the paid day in hours; overtime is a quarter of it. */
  readonly hours?: number;
  /** True: every station needs the same time per part, where it holds a stock. */
  readonly evenFlow?: boolean;
  /** Largest zone in thousands of ft2. */
  readonly largest?: number;
  /** Half width of the town in metres. */
  readonly town?: number;
  /** Tanks of the machine; one or two where it is not given. */
  readonly tanks?: number;
  /** Chance that the machine carries bags beside its hopper: one to three of the smallest size. */
  readonly bagsAboard?: number;
  /** Chance that a second person does some of a stop's zones by hand, out of a vessel of their own, beside the machine. */
  readonly seconds?: number;
  /** Chance that an op of a machine is reckoned from passes. */
  readonly driven?: number;
  /** Chance that a job has hours of treating on a day. */
  readonly treatHours?: number;
  /** True: every day ends at the second station. */
  readonly endsElsewhere?: boolean;
};

const HOUR = 3_600_000;
const MINUTE = 60_000;

type Dice = Random & {
  readonly chance: (share: number) => boolean;
  readonly between: (low: number, high: number) => number;
};

function dice(seed: number): Dice {
  const random = createRandom(seed);
  return {
    ...random,
    chance: (share) => random.unit() < share,
    between: (low, high) => low + random.below(high - low + 1),
  };
}

/** The problem of a seed. The same seed and shape always give the same problem. */
export function randomProblem(seed: number, shape: ProblemShape): Problem {
  const roll = dice(seed * 7919 + 17);
  const days = shape.days ?? 1;
  const stocks = makeStocks();
  const materials = makeMaterials(roll, shape.materials ?? 2);
  const stationCount = 1 + (shape.stations ?? 0);
  const stations = makeStations(roll, shape, stocks, stationCount);
  const rigs = Array.from({ length: shape.rigs ?? 1 }, (_, index) => makeRig(roll, shape, index)).map((rig, index) =>
    withBags(dice(seed * 31 + index), shape, rig, stocks),
  );
  const { tasks, jobs } = makeJobs(roll, shape, { materials, rigs, days, stationCount });
  const slots: RouteSlot[] = [];
  for (let day = 0; day < days; day += 1) for (let rig = 0; rig < rigs.length; rig += 1) slots.push({ rig, day });
  const places = stationCount + jobs.length;
  const problem: Problem = {
    hash: `random-${seed}`,
    bookId: 'invented',
    roundId: 'invented',
    dates: Array.from({ length: days }, (_, day) => `2031-04-${String(day + 1).padStart(2, '0')}`),
    placeIds: Array.from({ length: places }, (_, index) => `place-${index}`),
    ...makeTravel(roll, places, shape.town ?? 4000),
    travelKind: 'estimate',
    stocks,
    materials,
    stations,
    rigs,
    slots,
    tasks,
    jobs,
    unplaceable: [],
    issues: [],
  };
  const timed =
    shape.treatHours === undefined ? problem : withTreatHours(dice(seed * 53 + 5), shape.treatHours, problem);
  return shape.endsElsewhere === true ? endingAt(timed, 1) : timed;
}

/** Hours of treating, drawn from dice of their own: a morning, a part of the day, or an afternoon without end. */
function withTreatHours(roll: Dice, chance: number, problem: Problem): Problem {
  const hours = (): NonNullable<Job['treatHours']>[number] => {
    if (!roll.chance(chance)) return null;
    const openMs = roll.chance(0.4) ? 0 : roll.between(16, 26) * 30 * MINUTE;
    const closeMs = Math.max(openMs, 7 * HOUR) + roll.between(3, 12) * 30 * MINUTE;
    return openMs > 0 && roll.chance(0.3) ? { openMs, words: 'wind' } : { openMs, closeMs, words: 'wind' };
  };
  return { ...problem, jobs: problem.jobs.map((job) => ({ ...job, treatHours: problem.dates.map(hours) })) };
}

/** The problem with days that end at a station: one more place, out of which ways are those from home and into which those to it. */
function endingAt(problem: Problem, end: number): Problem {
  const depot = problem.placeIds.length;
  const [from, to] = [problem.stations[0]?.place ?? 0, problem.stations[end]?.place ?? 0];
  const stretched = (source: Int32Array): Int32Array => {
    const table = new Int32Array((depot + 1) ** 2);
    for (let row = 0; row <= depot; row += 1)
      for (let column = 0; column <= depot; column += 1) {
        const [start, finish] = [row === depot ? from : row, column === depot ? to : column];
        if (row !== column) table[row * (depot + 1) + column] = source[start * depot + finish] as number;
      }
    return table;
  };
  return {
    ...problem,
    placeIds: [...problem.placeIds, 'depot'],
    travelMs: stretched(problem.travelMs),
    travelM: stretched(problem.travelM),
    rigs: problem.rigs.map((rig) => ({ ...rig, end, depot })),
  };
}

function makeStocks(): readonly Stock[] {
  return [
    { kind: 'water', productId: '', weightPerPart: 834, bagParts: 0 },
    { kind: 'dry', productId: 'granules-one', weightPerPart: 100, bagParts: 5000 },
    { kind: 'dry', productId: 'granules-two', weightPerPart: 100, bagParts: 4000 },
  ];
}

/** Up to two mixes and two dry products: mix-one, granules-one, mix-two, granules-two. */
function makeMaterials(roll: Dice, count: number): readonly Material[] {
  const all: readonly Material[] = [
    { id: 'mix-one', stock: 0, rinseMs: roll.between(4, 10) * MINUTE, rinseParts: roll.between(100, 400) },
    { id: 'granules-one', stock: 1, rinseMs: roll.between(1, 4) * MINUTE, rinseParts: 0 },
    { id: 'mix-two', stock: 0, rinseMs: roll.between(4, 10) * MINUTE, rinseParts: roll.between(100, 400) },
    { id: 'granules-two', stock: 2, rinseMs: roll.between(1, 4) * MINUTE, rinseParts: 0 },
  ];
  return all.slice(0, Math.max(1, Math.min(4, count)));
}

function makeStations(roll: Dice, shape: ProblemShape, stocks: readonly Stock[], count: number): readonly Station[] {
  const flow = stocks.map((stock) => (stock.kind === 'water' ? roll.between(5, 60) : roll.between(2, 12)));
  return Array.from({ length: count }, (_, place) => {
    const what = place === 0 ? 'all' : (['all', 'water', 'water', 'dry'] as const)[roll.below(4)];
    const limited = place > 0 && roll.chance(shape.windows ?? 0);
    return {
      fillPointId: `fill-${place}`,
      place,
      openMs: limited ? roll.between(7, 9) * HOUR : 0,
      closeMs: limited ? roll.between(13, 18) * HOUR : 24 * HOUR,
      visitMs: roll.between(2, 8) * MINUTE + roll.below(1000),
      msPerPart: stocks.map((stock, index) => {
        const held = what === 'all' || what === stock.kind;
        const even = flow[index] as number;
        return held ? (shape.evenFlow ? even : Math.max(0, even + roll.between(-4, 20))) : -1;
      }),
    };
  });
}

function makeRig(roll: Dice, shape: ProblemShape, index: number): ProblemRig {
  const hours = shape.hours ?? 10;
  const compartments = makeCompartments(roll, shape);
  const nurseParts = roll.chance(shape.noNurse ?? 0.2) ? 0 : roll.between(20, 120) * 100;
  const bagPlaces = roll.between(2, 10);
  const costPerMs = roll.between(4000, 12000);
  const heavy = roll.chance(shape.heavy ?? 0.2);
  return {
    rigId: `rig-${index}`,
    home: 0,
    end: 0,
    depot: 0,
    shiftStartMs: roll.between(13, 16) * 30 * MINUTE,
    shiftMs: hours * HOUR,
    overtimeMs: (hours * HOUR) / 4,
    morningMs: roll.between(5, 20) * MINUTE,
    eveningMs: roll.between(5, 20) * MINUTE,
    breakAfterMs: roll.chance(shape.breaks ?? 0) ? roll.between(20, 26) * 30 * MINUTE : -1,
    breakMs: 30 * MINUTE,
    costPerMs,
    overtimeCostPerMs: Math.floor(costPerMs / 2),
    costPerM: roll.between(0, 600_000),
    costPerDay: roll.chance(0.5) ? 0 : roll.between(1, 40) * 1_000_000_000,
    compartments,
    nurseParts,
    bagPlaces,
    refillMs: roll.between(2, 8) * MINUTE + roll.below(1000),
    midZoneMs: roll.between(0, 4) * MINUTE + roll.below(1000),
    cargoLimit: heavy ? roll.between(400, 1200) * 10_000 : 1_000_000_000,
  };
}

/** A hopper, and one or two tanks; then the second person's tank and hopper. */
function makeCompartments(roll: Dice, shape: ProblemShape): readonly ProblemCompartment[] {
  const tanks = shape.tanks ?? roll.between(1, 2);
  const list: ProblemCompartment[] = [
    { id: 'm/hopper', kind: 'dry', capacityParts: roll.between(60, 220) * 100, fillMsPerPart: roll.between(1, 15) },
  ];
  for (let tank = 0; tank < tanks; tank += 1) {
    list.push({
      id: `m/tank-${tank}`,
      kind: 'tank',
      capacityParts: roll.between(8, 40) * 100,
      fillMsPerPart: roll.between(10, 60),
    });
  }
  if ((shape.seconds ?? 0) > 0) {
    list.push(
      { id: 'hose', kind: 'tank', capacityParts: roll.between(4, 30) * 100, fillMsPerPart: roll.between(10, 60) },
      { id: 'spreader', kind: 'dry', capacityParts: roll.between(20, 80) * 100, fillMsPerPart: roll.between(1, 15) },
    );
  }
  return list;
}

/** Bags on the machine, drawn from dice of their own, so that everything else of a seed stays as it is without them. */
function withBags(roll: Dice, shape: ProblemShape, rig: ProblemRig, stocks: readonly Stock[]): ProblemRig {
  const hopper = rig.compartments[0];
  if (hopper === undefined || !roll.chance(shape.bagsAboard ?? 0)) return rig;
  const smallest = Math.min(...stocks.flatMap((each) => (each.kind === 'dry' ? [each.bagParts] : [])));
  const bags: ProblemCompartment = {
    id: 'm/bags',
    kind: 'dry',
    capacityParts: roll.between(1, 3) * smallest,
    fillMsPerPart: 0,
    pours: { into: 0, msPerPart: hopper.fillMsPerPart + roll.below(8) },
  };
  return { ...rig, compartments: [...rig.compartments, bags] };
}

type JobSetting = {
  readonly materials: readonly Material[];
  readonly rigs: readonly ProblemRig[];
  readonly days: number;
  readonly stationCount: number;
};

function makeJobs(
  roll: Dice,
  shape: ProblemShape,
  setting: JobSetting,
): { tasks: readonly Task[]; jobs: readonly Job[] } {
  const tasks: Task[] = [];
  const jobs: Job[] = [];
  for (let index = 0; index < shape.jobs; index += 1) {
    const zones = roll.between(1, shape.zones ?? 2);
    const first = tasks.length;
    for (let zone = 0; zone < zones; zone += 1) {
      tasks.push({
        propertyId: `p-${index}`,
        zoneId: `z-${zone}`,
        treatmentId: 't',
        step: 0,
        areaUnits: roll.between(2, shape.largest ?? 30) * 1000 + roll.below(1000),
        rank: 0,
      });
    }
    const taskIds = Array.from({ length: zones }, (_, zone) => first + zone);
    jobs.push(makeJob(roll, shape, setting, { index, taskIds, tasks }));
  }
  return { tasks, jobs };
}

type JobSeed = { readonly index: number; readonly taskIds: readonly number[]; readonly tasks: readonly Task[] };

function makeJob(roll: Dice, shape: ProblemShape, setting: JobSetting, seed: JobSeed): Job {
  // The material belongs to the task; a rig's mode must be able to hold it.
  const wanted = seed.taskIds.map(() => roll.below(setting.materials.length));
  const modes = setting.rigs.map((rig) =>
    Array.from({ length: roll.between(1, shape.modes ?? 1) }, () => makeMode(roll, shape, setting, rig, seed, wanted)),
  );
  if (setting.rigs.length > 1 && roll.chance(0.2)) modes[roll.below(modes.length)] = [];
  const windowed = roll.chance(shape.windows ?? 0);
  const openMs = windowed ? roll.between(14, 24) * 30 * MINUTE : 0;
  const dayAllowed = new Uint8Array(setting.days).fill(1);
  const lateCost = new Float64Array(setting.days);
  if (setting.days > 1) {
    if (roll.chance(0.2)) dayAllowed[roll.below(setting.days)] = 0;
    const due = roll.below(setting.days);
    for (let day = due + 1; day < setting.days; day += 1) lateCost[day] = (day - due) * 8_000_000_000;
  }
  return {
    propertyId: `p-${seed.index}`,
    place: setting.stationCount + seed.index,
    openMs,
    closeMs: windowed ? openMs + roll.between(2, 8) * 30 * MINUTE : 24 * HOUR,
    tasks: seed.taskIds,
    modes,
    dayAllowed,
    lateCost,
  };
}

function makeMode(
  roll: Dice,
  shape: ProblemShape,
  setting: JobSetting,
  rig: ProblemRig,
  seed: JobSeed,
  wanted: readonly number[],
): Mode {
  const order = seed.taskIds.map((_, index) => index);
  if (order.length > 1 && roll.chance(0.5)) order.reverse();
  return {
    beforeMs: roll.between(1, 6) * MINUTE,
    afterMs: roll.between(1, 4) * MINUTE,
    ops: withSecond(
      roll,
      shape,
      rig,
      setting,
      order.map((index) =>
        makeOp(roll, shape, rig, {
          task: seed.taskIds[index] as number,
          areaUnits: (seed.tasks[seed.taskIds[index] as number] as Task).areaUnits,
          material: wanted[index] as number,
          dry: (setting.materials[wanted[index] as number] as Material).stock > 0,
        }),
      ),
    ),
  };
}

/** The ops with some of them done by a second person: before those of the first, or after them where a vessel does not last. */
function withSecond(
  roll: Dice,
  shape: ProblemShape,
  rig: ProblemRig,
  setting: JobSetting,
  ops: readonly Op[],
): readonly Op[] {
  if (shape.seconds === undefined || ops.length < 2 || !roll.chance(shape.seconds)) return ops;
  const some = roll.between(1, ops.length - 1);
  const second = ops.slice(0, some).map((op): Op => {
    const dry = op.material >= 0 && (setting.materials[op.material] as Material).stock > 0;
    const parts = op.draws.reduce((sum, draw) => sum + draw.parts, 0);
    const handMethodId = dry ? 'spreader' : 'hose';
    const compartment = rig.compartments.findIndex((each) => each.id === handMethodId);
    const { ground: _, ...onFoot } = op;
    return {
      ...onFoot,
      method: { kind: 'hand', handMethodId },
      draws: parts === 0 ? [] : [{ compartment, parts }],
      machine: -1,
      head: -1,
      second: true,
    };
  });
  const need = (vessel: number): number =>
    second.flatMap((op) => op.draws).reduce((sum, draw) => sum + (draw.compartment === vessel ? draw.parts : 0), 0);
  const lasts = rig.compartments.every((each, vessel) => need(vessel) <= each.capacityParts);
  return lasts ? [...second, ...ops.slice(some)] : [...ops.slice(some), ...second];
}

type OpSeed = { readonly task: number; readonly areaUnits: number; readonly material: number; readonly dry: boolean };

function makeOp(roll: Dice, shape: ProblemShape, rig: ProblemRig, seed: OpSeed): Op {
  const idle = roll.chance(0.06);
  const head = roll.below(2);
  return {
    task: seed.task,
    ...groundOf(roll, shape, seed),
    method: { kind: 'machine', machineId: 'm', headId: `head-${head}` },
    material: idle ? -1 : seed.material,
    draws: idle ? [] : makeDraws(roll, shape, rig, seed),
    areaUnits: seed.areaUnits,
    serviceMs: Math.ceil((seed.areaUnits / 1000) * roll.between(30, 90) * 1000) + roll.below(1000),
    machine: roll.chance(0.3) ? 0 : -1,
    head,
    swapMs: roll.between(1, 6) * MINUTE,
    reloadMs: roll.between(2, 6) * MINUTE,
    second: false,
  };
}

/** Figures of passes that have nothing to do with time and draws: only what is told hangs on them. */
function groundOf(roll: Dice, shape: ProblemShape, { areaUnits }: OpSeed): Pick<Op, 'ground'> {
  if (shape.driven === undefined || !roll.chance(shape.driven)) return {};
  const leftUnits = roll.chance(0.5) ? 0 : roll.below(Math.ceil(areaUnits / 4));
  const coveredUnits = Math.round((areaUnits - leftUnits) * (1 + roll.below(30) / 100));
  return {
    ground: { coveredUnits, worstPasses: roll.between(1, 4), swaths: roll.below(30), trims: roll.below(3), leftUnits },
  };
}

/** Dry goods from the hopper; a mix from one tank, or from both at once. */
function makeDraws(roll: Dice, shape: ProblemShape, rig: ProblemRig, seed: OpSeed): readonly Draw[] {
  const thirst = shape.thirst ?? 1;
  if (seed.dry) {
    return [{ compartment: 0, parts: Math.ceil((seed.areaUnits / 1000) * roll.between(200, 420) * thirst) }];
  }
  const parts = Math.ceil((seed.areaUnits / 1000) * roll.between(25, 110) * thirst);
  const tanks = rig.compartments.filter((each) => each.id.startsWith('m/tank')).length;
  if (tanks === 2 && roll.chance(0.25)) {
    const share = Math.ceil(parts / 2);
    return [
      { compartment: 1, parts: share },
      { compartment: 2, parts: parts - share + 1 },
    ];
  }
  return [{ compartment: 1 + roll.below(tanks), parts }];
}

/** Points on a square town of even numbers, 1.4 times the straight line, at 10 metres a second: whole numbers, rounded up. */
function makeTravel(roll: Dice, places: number, half: number): Pick<Problem, 'travelMs' | 'travelM'> {
  const at = Array.from({ length: places }, () => ({ x: roll.between(-half, half), y: roll.between(-half, half) }));
  const travelMs = new Int32Array(places * places);
  const travelM = new Int32Array(places * places);
  at.forEach((from, row) => {
    at.forEach((to, column) => {
      if (row === column) return;
      const metres = 1.4 * Math.hypot(from.x - to.x, from.y - to.y);
      travelM[row * places + column] = Math.ceil(metres);
      travelMs[row * places + column] = Math.ceil(metres * 100) + 30_000;
    });
  });
  return { travelMs, travelM };
}
