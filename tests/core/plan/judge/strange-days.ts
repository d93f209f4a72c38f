import type { Op, Problem } from '../../../../core/plan/problem/index.ts';
import type { Plan, PlanActivity } from '../../../../core/plan/result/index.ts';
import { bagOfGrass, type Draft, find } from './breakers.ts';
import { day, hydrantWith, leaveOut, rigWith, type StrangePlan } from './strange-plans.ts';

type Activity = Draft<PlanActivity>;
type Spanless = Activity extends infer Each
  ? Each extends Activity
    ? Omit<Each, 'startSec' | 'endSec'>
    : never
  : never;

/** Puts an activity of so many seconds in, and makes everything after it later. */
function putIn(plan: Draft<Plan>, index: number, seconds: number, activity: Spanless): void {
  const { activities } = day(plan);
  const startSec = activities[index - 1]?.endSec ?? 0;
  activities.slice(index).forEach((each) => {
    each.startSec += seconds;
    each.endSec += seconds;
  });
  activities.splice(index, 0, { ...activity, startSec, endSec: startSec + seconds } as Activity);
}

/** A refill of the tank between activities; nothing is poured. */
function emptyRefill(plan: Draft<Plan>, fillPointId: string, afterSqFt: number): Spanless {
  return { ...find(plan, 'refill', 2), fillPointId, afterSqFt, rinsedCompartmentIds: [], fills: [], stock: [] };
}

function changedOps(change: (op: Op) => Partial<Op>) {
  return (problem: Problem): Problem => ({
    ...problem,
    jobs: problem.jobs.map((job) => ({
      ...job,
      modes: job.modes.map((modes) =>
        modes.map((mode) => ({ ...mode, ops: mode.ops.map((op) => ({ ...op, ...change(op) })) })),
      ),
    })),
  });
}

function acreOpen(openSec: number, closeSec: number) {
  return (problem: Problem): Problem => ({
    ...problem,
    jobs: problem.jobs.map((job, index) =>
      index === 0 ? { ...job, openMs: openSec * 1000, closeMs: closeSec * 1000 } : job,
    ),
  });
}

function hydrantOpen(openMs: number, closeMs: number) {
  return (problem: Problem): Problem => ({
    ...problem,
    stations: problem.stations.map((each, index) => (index === 1 ? { ...each, openMs, closeMs } : each)),
  });
}

function rinsing(rinseParts: number, then: (problem: Problem) => Problem = (problem) => problem) {
  return (problem: Problem): Problem =>
    then({ ...problem, materials: problem.materials.map((each) => ({ ...each, rinseParts: rinseParts })) });
}

const HOUR_MS = 3_600_000;
const wait = { kind: 'wait' } as const;
const noSwap = (plan: Draft<Plan>): void => {
  day(plan).activities.splice(4, 1, { kind: 'wait', startSec: 27_780, endSec: 28_080 });
};
const tankOf = (materialId: string, volumeGal: number) => ({
  compartmentId: 'rider/tank',
  materialId,
  volumeGal,
  weightLb: 0,
  products: [],
});

/** More of them: days with other hours, visits in two parts, refills where there need be none. */
export const STRANGE_DAYS: readonly StrangePlan[] = [
  { what: 'a customer who opens as the rig arrives', problem: acreOpen(26_400, 30_000) },
  { what: 'a customer who opens a millisecond later', problem: acreOpen(26_400.001, 30_000) },
  { what: 'a customer who closes as the rig arrives', problem: acreOpen(0, 26_400) },
  { what: 'a customer who closes a millisecond earlier', problem: acreOpen(0, 26_399.999) },
  { what: 'a wait until the customer closes', run: (plan) => putIn(plan, 2, 300, wait) },
  { what: 'a wait until the customer has closed', run: (plan) => putIn(plan, 2, 300.001, wait) },
  { what: 'a wait of no time', run: (plan) => putIn(plan, 2, 0, wait) },
  { what: 'a hydrant that opens as the rig arrives', problem: hydrantOpen(35_199_900, 11 * HOUR_MS) },
  { what: 'a hydrant that opens a millisecond later', problem: hydrantOpen(35_199_901, 11 * HOUR_MS) },
  { what: 'a hydrant that closes as the rig leaves', problem: hydrantOpen(0, 35_779_900) },
  { what: 'a hydrant that closes a millisecond earlier', problem: hydrantOpen(0, 35_779_899) },
  { what: 'a break that is due from midnight on', problem: rigWith({ breakAfterMs: 0 }) },
  { what: 'a break that is due a millisecond later', problem: rigWith({ breakAfterMs: 8.5 * HOUR_MS + 1 }) },
  { what: 'a wait during the visit', run: (plan) => putIn(plan, 11, 30, wait) },
  {
    what: 'a visit in two parts',
    run: (plan) => {
      putIn(plan, 11, 180, { kind: 'set-up', propertyId: 'birch' });
      putIn(plan, 11, 120, { kind: 'pack-up', propertyId: 'birch' });
    },
  },
  {
    what: 'a swap in two pieces',
    run: (plan) => {
      const swap = find(plan, 'swap-head');
      day(plan).activities.splice(4, 1, { ...swap, endSec: 27_900 }, { ...swap, startSec: 27_900 });
    },
  },
  {
    what: 'a swap in two pieces, one of them of another head',
    run: (plan) => {
      const swap = find(plan, 'swap-head');
      day(plan).activities.splice(4, 1, { ...swap, endSec: 27_900, headId: 'other' }, { ...swap, startSec: 27_900 });
    },
  },
  {
    what: 'a swap in two pieces, one of them on another machine',
    run: (plan) => {
      const swap = find(plan, 'swap-head');
      day(plan).activities.splice(4, 1, { ...swap, endSec: 27_900, machineId: 'x' }, { ...swap, startSec: 27_900 });
    },
  },
  {
    what: 'no swap where none is needed',
    run: noSwap,
    problem: changedOps((op) => (op.head === 0 ? { machine: -1 } : {})),
  },
  {
    what: 'no swap for work without a head',
    run: noSwap,
    problem: changedOps((op) => (op.head === 0 ? { head: -1 } : {})),
  },
  { what: 'no swap where it takes no time', run: noSwap, problem: changedOps(() => ({ swapMs: 0 })) },
  { what: 'no swap', run: noSwap },
  {
    what: 'work that begins before its beginning',
    run: (plan) => void Object.assign(find(plan, 'treat', 5), { doneSqFt: -1000, areaSqFt: 3000 }),
  },
  {
    what: 'work that begins half a foot before its beginning',
    run: (plan) => void Object.assign(find(plan, 'treat', 5), { doneSqFt: -0.5, areaSqFt: 2000.5 }),
  },
  {
    what: 'work of no ground',
    run: (plan) => putIn(plan, 22, 0, { ...find(plan, 'treat', 5), doneSqFt: 2000, areaSqFt: 0, draws: [] }),
  },
  {
    what: 'work on a zone that is not there',
    run: (plan) => void Object.assign(find(plan, 'treat', 5), { zoneId: 'side' }),
  },
  { what: 'a first stop that is never set up', run: (plan) => leaveOut(plan, 2) },
  {
    what: 'a drive out of nowhere',
    run: (plan) => void Object.assign(find(plan, 'drive', 1), { fromPlaceId: 'moon' }),
  },
  {
    what: 'water that comes at once',
    problem: (problem) =>
      hydrantWith([0, -1])({ ...problem, stations: problem.stations.map((each) => ({ ...each, msPerPart: [0, 0] })) }),
  },
  {
    what: 'a rinse at a fill point with water',
    run: (plan) => void Object.assign(find(plan, 'refill', 2), { fillPointId: 'hydrant' }),
    problem: rinsing(5000),
  },
  { what: 'a rinse from the rig that takes more than it has', problem: rinsing(5000) },
  { what: 'a rinse from the rig that takes all it has', problem: rinsing(400) },
  { what: 'a rinse from the rig that takes a part more', problem: rinsing(401) },
  {
    what: 'a rinse at a fill point without water that leaves too little',
    run: (plan) => void Object.assign(find(plan, 'refill', 1), { rinsedCompartmentIds: ['rider/tank'] }),
    problem: rinsing(250, hydrantWith([-1, 3])),
  },
  {
    what: 'a refill on the way to a stop',
    run: (plan) => {
      const refill = find(plan, 'refill', 2);
      leaveOut(plan, 20);
      leaveOut(plan, 18);
      putIn(plan, 18, 600, { kind: 'drive', fromPlaceId: 'birch', toPlaceId: 'hydrant', distanceM: 5000 });
      putIn(plan, 19, 564, { ...refill, fillPointId: 'hydrant' });
      putIn(plan, 20, 600, { kind: 'drive', fromPlaceId: 'hydrant', toPlaceId: 'cedar', distanceM: 5000 });
    },
    problem: hydrantOpen(0, 24 * HOUR_MS),
  },
  {
    what: 'a refill on the way to a stop, with something done',
    run: (plan) => {
      putIn(plan, 18, 600, { kind: 'drive', fromPlaceId: 'birch', toPlaceId: 'hydrant', distanceM: 5000 });
      putIn(plan, 19, 240, emptyRefill(plan, 'hydrant', 77));
      putIn(plan, 20, 600, { kind: 'drive', fromPlaceId: 'hydrant', toPlaceId: 'birch', distanceM: 5000 });
    },
    problem: hydrantOpen(0, 24 * HOUR_MS),
  },
  { what: 'a refill after the last op of a stop', run: (plan) => putIn(plan, 6, 240, emptyRefill(plan, '', 77)) },
  { what: 'a refill when everything is done', run: (plan) => putIn(plan, 24, 300, emptyRefill(plan, 'shop', 77)) },
  {
    what: 'fills of nothing',
    run: (plan) =>
      void Object.assign(find(plan, 'refill', 0), {
        fills: [
          ...find(plan, 'refill', 0).fills,
          { compartmentId: 'rider/hopper', materialId: 'grass', volumeGal: 0, weightLb: 0, products: [] },
        ],
        stock: [],
      }),
  },
  { what: 'stock of nothing', run: (plan) => void find(plan, 'morning').stock.push(bagOfGrass(0)) },
  {
    what: 'next to nothing of a bag',
    run: (plan) => void find(plan, 'morning').stock.push(bagOfGrass(0.0004)),
    problem: rigWith({ bagPlaces: 0 }),
  },
  {
    what: 'dry goods without bags',
    run: (plan) => void find(plan, 'morning').stock.push(bagOfGrass(1)),
    problem: (problem) =>
      rigWith({ bagPlaces: 0 })({ ...problem, stocks: problem.stocks.map((each) => ({ ...each, bagParts: 0 })) }),
  },
  {
    what: 'water by a name of its own',
    run: (plan) => {
      for (const fill of find(plan, 'morning').stock) fill.productId = 'tap';
    },
  },
  {
    what: 'the other mix in the tank',
    run: (plan) =>
      void Object.assign(find(plan, 'morning'), {
        fills: [tankOf('mix-two', 20), ...find(plan, 'morning').fills.slice(1)],
      }),
  },
  {
    what: 'a load of another compartment',
    run: (plan) => {
      for (const load of day(plan).loads.slice(3, 4)) load.compartmentId = 'rider/hopper';
    },
  },
  {
    what: 'a load out of bags',
    run: (plan) => {
      for (const load of day(plan).loads.slice(3, 4)) load.fromBags = true;
    },
  },
  {
    what: 'a load of another amount',
    run: (plan) => {
      for (const load of day(plan).loads.slice(3, 4)) load.volumeGal = 6;
    },
  },
  {
    what: 'something left over where nothing is',
    run: (plan) =>
      void Object.assign(day(plan), {
        leftOver: [{ compartmentId: 'other/tank', materialId: 'mix-one', volumeGal: 3, weightLb: 3, advice: '' }],
      }),
  },
  {
    what: 'stops with other numbers',
    run: (plan) => {
      for (const stop of day(plan).stops) stop.number += 1;
    },
  },
  { what: 'a day without stops', run: (plan) => void Object.assign(day(plan), { stops: [] }) },
  { what: 'stops of a day without activities', run: (plan) => void Object.assign(day(plan), { activities: [] }) },
];
