import type { Job, Op, Problem } from '../../../../core/plan/problem/index.ts';

const SECOND = 1000;
const HOUR = 3600 * SECOND;
export const START_SEC = 7 * 3600;

/** Everything is ten minutes and five kilometres from everything else. */
export const DRIVE_SEC = 600;
export const LEG_M = 5000;

const PLACES = ['shop', 'hydrant', 'acre', 'birch', 'cedar'] as const;

function op(fields: Partial<Op> & Pick<Op, 'task' | 'material' | 'draws' | 'areaUnits' | 'serviceMs'>): Op {
  const head = fields.head ?? 0;
  return {
    method: { kind: 'machine', machineId: 'rider', headId: head === 0 ? 'boom' : 'seeder' },
    machine: 0,
    head,
    swapMs: 300 * SECOND,
    reloadMs: 200 * SECOND,
    second: false,
    ...fields,
  };
}

function job(
  propertyId: string,
  place: number,
  tasks: readonly number[],
  ops: readonly Op[],
  fields: Partial<Job>,
): Job {
  return {
    propertyId,
    place,
    openMs: 0,
    closeMs: 24 * HOUR,
    tasks,
    modes: [[{ beforeMs: 180 * SECOND, afterMs: 120 * SECOND, ops }], []],
    dayAllowed: Uint8Array.of(1, 0),
    lateCost: Float64Array.of(2e9, 0),
    ...fields,
  };
}

/**
 * A problem small enough to be planned by hand: one rig with a 20-gal tank, a 100-lb hopper and a 30-gal nurse tank; seed and a mix at
 * Acre, the same mix at Birch (more than the tank holds, reckoned from passes, which leave 90 ft2), another mix at Cedar; a bank that nobody can do. Times in round numbers.
 * A second rig has nothing that it can do.
 */
export function smallProblem(): Problem {
  const count = PLACES.length;
  const cells = Array.from({ length: count * count }, (_, cell) => Math.floor(cell / count) !== cell % count);
  const acre = [
    op({ task: 0, material: 2, draws: [{ compartment: 1, parts: 4000 }], areaUnits: 4000, serviceMs: 1200e3, head: 1 }),
    op({ task: 1, material: 0, draws: [{ compartment: 0, parts: 1800 }], areaUnits: 6000, serviceMs: 1800e3 }),
  ];
  const birch = [
    op({
      task: 2,
      ground: { coveredUnits: 9801, worstPasses: 3, swaths: 12, trims: 1, leftUnits: 90 },
      material: 0,
      draws: [{ compartment: 0, parts: 2700 }],
      areaUnits: 9000,
      serviceMs: 2700e3,
    }),
  ];
  const cedar = [
    op({ task: 3, material: 1, draws: [{ compartment: 0, parts: 600 }], areaUnits: 2000, serviceMs: 600e3 }),
  ];
  const rig = {
    rigId: 'north',
    home: 0,
    end: 0,
    depot: 0,
    shiftStartMs: START_SEC * SECOND,
    shiftMs: 4 * HOUR,
    overtimeMs: HOUR,
    morningMs: 600 * SECOND,
    eveningMs: 900 * SECOND,
    breakAfterMs: 8.5 * HOUR,
    breakMs: 1200 * SECOND,
    costPerMs: 5000,
    overtimeCostPerMs: 2500,
    costPerM: 300_000,
    costPerDay: 10e9,
    compartments: [
      { id: 'rider/tank', kind: 'tank' as const, capacityParts: 2000, fillMsPerPart: 30 },
      { id: 'rider/hopper', kind: 'dry' as const, capacityParts: 10_000, fillMsPerPart: 2 },
    ],
    nurseParts: 3000,
    bagPlaces: 1,
    refillMs: 240 * SECOND,
    midZoneMs: 120 * SECOND,
    cargoLimit: 5_000_000,
  };
  return {
    hash: 'small',
    bookId: 'invented',
    roundId: 'invented',
    dates: ['2031-04-01', '2031-04-02'],
    placeIds: PLACES,
    travelMs: Int32Array.from(cells, (apart) => (apart ? DRIVE_SEC * SECOND : 0)),
    travelM: Int32Array.from(cells, (apart) => (apart ? LEG_M : 0)),
    travelKind: 'estimate',
    stocks: [
      { kind: 'water', productId: '', weightPerPart: 834, bagParts: 0 },
      { kind: 'dry', productId: 'grass', weightPerPart: 100, bagParts: 5000 },
    ],
    materials: [
      { id: 'mix-one', stock: 0, rinseMs: 300 * SECOND, rinseParts: 200 },
      { id: 'mix-two', stock: 0, rinseMs: 240 * SECOND, rinseParts: 100, reserveParts: 50 },
      { id: 'grass', stock: 1, rinseMs: 0, rinseParts: 0 },
    ],
    stations: [
      { fillPointId: 'shop', place: 0, openMs: 0, closeMs: 24 * HOUR, visitMs: 300 * SECOND, msPerPart: [6, 3] },
      {
        fillPointId: 'hydrant',
        place: 1,
        openMs: 8 * HOUR,
        closeMs: 10 * HOUR + 5 * 60 * SECOND,
        visitMs: 240 * SECOND,
        msPerPart: [10, -1],
      },
    ],
    rigs: [rig, { ...rig, rigId: 'south' }],
    slots: [
      { rig: 0, day: 0 },
      { rig: 1, day: 0 },
      { rig: 0, day: 1 },
      { rig: 1, day: 1 },
    ],
    tasks: [
      { propertyId: 'acre', zoneId: 'front', treatmentId: 'seed', step: 0, areaUnits: 4000, rank: 2 },
      { propertyId: 'acre', zoneId: 'front', treatmentId: 'spray', step: 0, areaUnits: 6000, rank: 6 },
      { propertyId: 'birch', zoneId: 'lawn', treatmentId: 'spray', step: 0, areaUnits: 9000, rank: 6 },
      { propertyId: 'cedar', zoneId: 'lawn', treatmentId: 'spray-two', step: 0, areaUnits: 2000, rank: 6 },
      { propertyId: 'cedar', zoneId: 'bank', treatmentId: 'spray-two', step: 0, areaUnits: 500, rank: 6 },
    ],
    jobs: [
      job('acre', 2, [0, 1], acre, {
        openMs: 7 * HOUR,
        closeMs: 7 * HOUR + 25 * 60 * SECOND,
        lateCost: Float64Array.of(0, 0),
      }),
      job('birch', 3, [2], birch, {}),
      job('cedar', 4, [3], cedar, { lateCost: Float64Array.of(0, 0) }),
    ],
    unplaceable: [{ task: 4, reasons: [{ rigId: 'north', code: 'too-steep', words: 'slope 30 degrees' }] }],
    issues: [],
  };
}
