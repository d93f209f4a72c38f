import type { Plan, PlanActivity, PlanDay, PlanTask } from '../../../../core/plan/result/index.ts';
import { DRIVE_SEC, LEG_M, START_SEC } from './small-problem.ts';

type Spanless<Activity> = Activity extends PlanActivity ? Omit<Activity, 'startSec' | 'endSec'> : never;
type Step = readonly [seconds: number, activity: Spanless<PlanActivity>];

const seed = { propertyId: 'acre', zoneId: 'front', treatmentId: 'seed', step: 0 };
const front = { propertyId: 'acre', zoneId: 'front', treatmentId: 'spray', step: 0 };
const birch = { propertyId: 'birch', zoneId: 'lawn', treatmentId: 'spray', step: 0 };
const cedar = { propertyId: 'cedar', zoneId: 'lawn', treatmentId: 'spray-two', step: 0 };
const boom = { kind: 'machine', machineId: 'rider', headId: 'boom' } as const;
const seeder = { kind: 'machine', machineId: 'rider', headId: 'seeder' } as const;

const drive = (fromPlaceId: string, toPlaceId: string): Step => [
  DRIVE_SEC,
  { kind: 'drive', fromPlaceId, toPlaceId, distanceM: LEG_M },
];
const tank = (materialId: string, volumeGal: number) => ({
  compartmentId: 'rider/tank',
  materialId,
  volumeGal,
  weightLb: 0,
  products: [],
});
const draw = (materialId: string, volumeGal: number) => ({
  compartmentId: 'rider/tank',
  materialId,
  volumeGal,
  weightLb: 0,
});
const grass = { compartmentId: 'rider/hopper', materialId: 'grass', volumeGal: 0, weightLb: 40 };
const refillBase = { kind: 'refill', rinsedCompartmentIds: [], rinseGal: 0, stock: [] } as const;

/**
 * The day in order, worked out by hand from the small problem. 2,700 parts over 9,000 ft2 at Birch: the 200 parts left from Acre
 * reach floor(200 x 9000 / 2700) = 666 ft2, a full tank of 2,000 more floor(2200 x 9000 / 2700) = 7,333 ft2.
 */
const STEPS: readonly Step[] = [
  [
    600,
    {
      kind: 'morning',
      fills: [tank('mix-one', 20), { ...grass, products: [] }],
      stock: [{ stock: 'water', productId: '', volumeGal: 30, weightLb: 0, bags: 0 }],
    },
  ],
  drive('shop', 'acre'),
  [180, { kind: 'set-up', propertyId: 'acre' }],
  [1200, { kind: 'treat', person: 1, ...seed, method: seeder, doneSqFt: 0, areaSqFt: 4000, draws: [grass] }],
  [300, { kind: 'swap-head', ...front, machineId: 'rider', headId: 'boom' }],
  [
    1800,
    { kind: 'treat', person: 1, ...front, method: boom, doneSqFt: 0, areaSqFt: 6000, draws: [draw('mix-one', 18)] },
  ],
  [120, { kind: 'pack-up', propertyId: 'acre' }],
  drive('acre', 'birch'),
  // Arrives at 8:30:00, when the break is due.
  [1200, { kind: 'break' }],
  [180, { kind: 'set-up', propertyId: 'birch' }],
  // floor(2,700,000 ms x 666 / 9000) = 199,800 ms.
  [
    199.8,
    { kind: 'treat', person: 1, ...birch, method: boom, doneSqFt: 0, areaSqFt: 666, draws: [draw('mix-one', 2)] },
  ],
  // 240 s, 120 s in the middle of a zone, 2,000 parts x 30 ms.
  [
    420,
    {
      ...refillBase,
      ...birch,
      fillPointId: '',
      afterSqFt: 666,
      fills: [tank('mix-one', 20)],
      reasonCode: 'runs-dry',
      reason: 'The tank is dry.',
    },
  ],
  // floor(2,700,000 x 7333 / 9000) - 199,800 = 2,000,100 ms.
  [
    2000.1,
    { kind: 'treat', person: 1, ...birch, method: boom, doneSqFt: 666, areaSqFt: 6667, draws: [draw('mix-one', 20)] },
  ],
  drive('birch', 'hydrant'),
  // 240 s, 200 s off and on the rig, 120 s in the middle of a zone, 500 parts x (30 + 10) ms.
  [
    580,
    {
      ...refillBase,
      ...birch,
      fillPointId: 'hydrant',
      afterSqFt: 7333,
      fills: [tank('mix-one', 5)],
      reasonCode: 'runs-dry',
      reason: 'The tank is dry.',
    },
  ],
  drive('hydrant', 'birch'),
  [
    500.1,
    { kind: 'treat', person: 1, ...birch, method: boom, doneSqFt: 7333, areaSqFt: 1667, draws: [draw('mix-one', 5)] },
  ],
  [120, { kind: 'pack-up', propertyId: 'birch' }],
  drive('birch', 'cedar'),
  [180, { kind: 'set-up', propertyId: 'cedar' }],
  // 240 s, rinsing 300 s, 600 parts x 30 ms; 200 parts of rinse water out of the nurse tank.
  [
    558,
    {
      ...refillBase,
      ...cedar,
      fillPointId: '',
      afterSqFt: 0,
      rinsedCompartmentIds: ['rider/tank'],
      rinseGal: 2,
      fills: [tank('mix-two', 6)],
      reasonCode: 'change-of-material',
      reason: 'Another mix.',
    },
  ],
  [600, { kind: 'treat', person: 1, ...cedar, method: boom, doneSqFt: 0, areaSqFt: 2000, draws: [draw('mix-two', 6)] }],
  [120, { kind: 'pack-up', propertyId: 'cedar' }],
  drive('cedar', 'shop'),
  [900, { kind: 'evening' }],
];

function timed(steps: readonly Step[]): PlanActivity[] {
  let ms = START_SEC * 1000;
  return steps.map(([seconds, activity]) => {
    const startSec = ms / 1000;
    ms += Math.round(seconds * 1000);
    return { ...activity, startSec, endSec: ms / 1000 } as PlanActivity;
  });
}

// 600+600+180+1200+300+1800+120+600+1200+180+199.8+420+2000.1+600+580+600+500.1+120+600+180+558+600+120+600+900 s.
const PAID_SEC = 15_358;
const OVERTIME_SEC = PAID_SEC - 4 * 3600;
const DRIVE_LEGS = 6;
// Pay 5000 nano-dollars per ms, overtime 2500 more, 0.0003 dollars per metre, 10 dollars a day, 2 dollars late at Birch.
const COST_USD = PAID_SEC * 5000e-6 + OVERTIME_SEC * 2500e-6 + DRIVE_LEGS * LEG_M * 0.0003 + 10 + 2;

type Told = Partial<PlanTask> & Pick<PlanTask, 'startSec' | 'endSec' | 'areaSqFt'>;
const capacity = { from: 'field-capacity', fieldEfficiency: 0.7 } as const;

function task(at: typeof front, { startSec, endSec, ...told }: Told): PlanTask {
  return {
    ...at,
    method: boom,
    person: 1,
    startSec: START_SEC + startSec,
    endSec: START_SEC + endSec,
    reckoned: capacity,
    volumeGal: 0,
    weightLb: 0,
    loadNumbers: [],
    why: '',
    ...told,
  };
}

// 9,801 ft2 covered for 9,000 - 90.
const passes = {
  from: 'passes',
  coveredSqFt: 9801,
  overlapShare: 0.1,
  averageRate: 1.1,
  worstRate: 3,
  swaths: 12,
  trimPasses: 1,
  notReachedSqFt: 90,
} as const;

const TASKS: Readonly<Record<string, readonly PlanTask[]>> = {
  acre: [
    task(seed, { startSec: 1380, endSec: 2580, method: seeder, areaSqFt: 4000, weightLb: 40 }),
    task(front, { startSec: 2880, endSec: 4680, areaSqFt: 6000, volumeGal: 18 }),
  ],
  birch: [task(birch, { startSec: 6780, endSec: 11_680, areaSqFt: 9000, volumeGal: 27, reckoned: passes })],
  cedar: [task(cedar, { startSec: 13_138, endSec: 13_738, areaSqFt: 2000, volumeGal: 6 })],
};

function stop(number: number, propertyId: string, arriveSec: number, leaveSec: number) {
  return {
    number,
    propertyId,
    name: propertyId,
    arriveSec: START_SEC + arriveSec,
    leaveSec: START_SEC + leaveSec,
    driveSec: DRIVE_SEC,
    distanceM: LEG_M,
    tasks: TASKS[propertyId] ?? [],
    otherWays: [],
  };
}

function load(
  number: number,
  materialId: string,
  fillPointId: string,
  amount: number,
  coversSqFt: number,
  leftGal = 0,
) {
  const dry = materialId === 'grass';
  return {
    number,
    compartmentId: dry ? 'rider/hopper' : 'rider/tank',
    materialId,
    kind: dry ? ('dry' as const) : ('tank' as const),
    fillPointId,
    fromBags: false,
    atPropertyId: '',
    startSec: START_SEC,
    beforeGal: 0,
    beforeLb: 0,
    volumeGal: dry ? 0 : amount,
    weightLb: dry ? amount : 0,
    sumpGal: 0,
    products: [],
    covers: [],
    coversSqFt,
    leftGal,
    leftLb: 0,
    why: '',
  };
}

function smallDay(): PlanDay {
  return {
    date: '2031-04-01',
    rigId: 'north',
    rigName: 'Rig North',
    startSec: START_SEC,
    endSec: START_SEC + PAID_SEC,
    paidSec: PAID_SEC,
    overtimeSec: OVERTIME_SEC,
    driveSec: DRIVE_LEGS * DRIVE_SEC,
    treatSec: 1200 + 1800 + 2700 + 600,
    refillSec: 420 + 580 + 558,
    distanceM: DRIVE_LEGS * LEG_M,
    treatedSqFt: 20_910,
    coveredSqFt: 4000 + 6000 + 9801 + 2000,
    handTrimSqFt: 0,
    notReachedSqFt: 90,
    costUsd: COST_USD,
    stops: [stop(1, 'acre', 1200, 4800), stop(2, 'birch', 5400, 11_800), stop(3, 'cedar', 12_400, 13_858)],
    loads: [
      // Of every 100 ft2 at birch the machine leaves one.
      load(1, 'mix-one', '', 20, 6000 + 0.99 * 666),
      load(2, 'grass', '', 40, 4000),
      load(3, 'mix-one', '', 20, 0.99 * 6667),
      load(4, 'mix-one', 'hydrant', 5, 0.99 * 1667),
      load(5, 'mix-two', '', 6, 2000),
    ],
    levels: [],
    activities: timed(STEPS),
    carry: [],
    carryWeightLb: 0,
    payloadLb: 600,
    leftOver: [],
    whatIf: [],
  };
}

/** A plan for the small problem that breaks nothing, made by hand. */
export function smallPlan(): Plan {
  const day = smallDay();
  return {
    format: 'swardway-plan',
    version: 1,
    bookId: 'invented',
    bookName: 'Invented',
    roundId: 'invented',
    roundName: 'Invented',
    invented: true,
    problemHash: 'small',
    seed: 1,
    iterations: 1,
    travel: 'estimate',
    days: [day],
    unplaced: [
      {
        propertyId: 'cedar',
        zoneId: 'bank',
        treatmentId: 'spray-two',
        step: 0,
        propertyName: 'Cedar',
        zoneName: 'Bank',
        reasons: [{ rigId: 'north', code: 'too-steep', words: 'slope 30 degrees', ways: [] }],
      },
    ],
    totals: {
      days: 1,
      stops: 3,
      treatedSqFt: day.treatedSqFt,
      coveredSqFt: day.coveredSqFt,
      handTrimSqFt: day.handTrimSqFt,
      notReachedSqFt: day.notReachedSqFt,
      paidSec: day.paidSec,
      overtimeSec: day.overtimeSec,
      driveSec: day.driveSec,
      distanceM: day.distanceM,
      refills: 3,
      fillPointVisits: 1,
      loads: 5,
      costUsd: day.costUsd,
      unplaced: 1,
      waterGal: 51,
      products: [],
    },
    issues: [],
  };
}
