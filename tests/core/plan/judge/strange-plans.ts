import type { Problem } from '../../../../core/plan/problem/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { bagOfGrass, type Draft, find, stretch } from './breakers.ts';

/** A way to change the small plan, or its problem, that some rule is about. */
export type StrangePlan = {
  readonly what: string;
  readonly run?: (plan: Draft<Plan>) => void;
  readonly problem?: (problem: Problem) => Problem;
};

type Day = Draft<Plan>['days'][number];

export function day(plan: Draft<Plan>): Day {
  return plan.days[0] as Day;
}

/** Takes an activity out and makes everything after it earlier. */
export function leaveOut(plan: Draft<Plan>, index: number): void {
  const { activities } = day(plan);
  const gone = activities[index];
  stretch(plan, index, (gone?.startSec ?? 0) - (gone?.endSec ?? 0));
  activities.splice(index, 1);
}

/** Lets the hydrant have other stocks. */
export function hydrantWith(msPerPart: readonly number[]) {
  return (problem: Problem): Problem => ({
    ...problem,
    stations: problem.stations.map((each, index) => (index === 1 ? { ...each, msPerPart } : each)),
  });
}

export function rigWith(fields: Partial<Problem['rigs'][number]>) {
  return (problem: Problem): Problem => ({ ...problem, rigs: problem.rigs.map((rig) => ({ ...rig, ...fields })) });
}

/** Plans that nobody would make, one rule at a time. What the judge says of each is in verdicts.json, read and found right. */
export const STRANGE_PLANS: readonly StrangePlan[] = [
  {
    what: 'a second morning',
    run: (plan) =>
      void day(plan).activities.splice(1, 1, { ...find(plan, 'morning'), startSec: 25_800, endSec: 26_400 }),
  },
  { what: 'a drive before the morning', run: (plan) => void day(plan).activities.reverse().splice(0, 23) },
  {
    what: 'a wait after the evening',
    run: (plan) => void day(plan).activities.push({ kind: 'wait', startSec: 40_558, endSec: 40_600 }),
  },
  { what: 'a drive to nowhere', run: (plan) => void Object.assign(find(plan, 'drive', 5), { toPlaceId: 'moon' }) },
  {
    what: 'a drive from elsewhere',
    run: (plan) => void Object.assign(find(plan, 'drive', 1), { fromPlaceId: 'cedar' }),
  },
  { what: 'a drive of another length', run: (plan) => void Object.assign(find(plan, 'drive', 2), { distanceM: 4999 }) },
  {
    what: 'an activity that ends before it starts',
    run: (plan) => void Object.assign(find(plan, 'wait', 0) ?? find(plan, 'break'), { endSec: 30_599 }),
  },
  {
    what: 'a set-up where nothing is to be done',
    run: (plan) => void Object.assign(find(plan, 'set-up', 1), { propertyId: 'dogwood' }),
  },
  { what: 'a stop that is never set up', run: (plan) => leaveOut(plan, 9) },
  { what: 'a stop that is never packed up', run: (plan) => leaveOut(plan, 17) },
  { what: 'a last stop that is never packed up', run: (plan) => leaveOut(plan, 22) },
  {
    what: 'a set-up at the other property',
    run: (plan) => void Object.assign(find(plan, 'set-up', 2), { propertyId: 'acre' }),
  },
  {
    what: 'a pack-up of another property',
    run: (plan) => void Object.assign(find(plan, 'pack-up', 1), { propertyId: 'acre' }),
  },
  { what: 'a pack-up that is too short', run: (plan) => stretch(plan, 17, -60) },
  { what: 'a morning that is too short', run: (plan) => stretch(plan, 0, -300) },
  { what: 'an evening that is too short', run: (plan) => stretch(plan, 24, -300) },
  { what: 'a break that is too short', run: (plan) => stretch(plan, 8, -60) },
  {
    what: 'a break before its time',
    run: (plan) => stretch(plan, 1, -300),
    problem: rigWith({ breakAfterMs: 8.5 * 3_600_000 }),
  },
  {
    what: 'work on the ground of another property',
    run: (plan) => void Object.assign(find(plan, 'treat', 5), { propertyId: 'birch', treatmentId: 'spray' }),
  },
  { what: 'ground below nothing', run: (plan) => void Object.assign(find(plan, 'treat', 5), { areaSqFt: -2000 }) },
  {
    what: 'a draw of another mix',
    run: (plan) => {
      for (const draw of find(plan, 'treat', 1).draws) draw.materialId = 'mix-two';
    },
  },
  {
    what: 'a draw from the wrong compartment',
    run: (plan) => {
      for (const draw of find(plan, 'treat', 1).draws) draw.compartmentId = 'rider/hopper';
    },
  },
  {
    what: 'a draw of another amount',
    run: (plan) => {
      for (const draw of find(plan, 'treat', 1).draws) draw.volumeGal = 17;
    },
  },
  {
    what: 'a swap to the wrong head',
    run: (plan) => void Object.assign(find(plan, 'swap-head'), { headId: 'seeder' }),
  },
  {
    what: 'a swap on the wrong machine',
    run: (plan) => void Object.assign(find(plan, 'swap-head'), { machineId: 'other' }),
  },
  {
    what: 'a rinse of what is not there',
    run: (plan) => void Object.assign(find(plan, 'refill', 0), { rinsedCompartmentIds: ['rider/box'] }),
  },
  {
    what: 'a rinse too early',
    run: (plan) => void Object.assign(find(plan, 'refill', 0), { rinsedCompartmentIds: ['rider/tank'] }),
  },
  {
    what: 'a change made where the rig is not',
    run: (plan) => void Object.assign(find(plan, 'refill', 2), { fillPointId: 'hydrant' }),
  },
  {
    what: 'a rinse where the fill point has no water',
    run: (plan) => void Object.assign(find(plan, 'refill', 1), { rinsedCompartmentIds: ['rider/tank'] }),
    problem: hydrantWith([-1, 3]),
  },
  { what: 'no water at the hydrant', problem: hydrantWith([-1, -1]) },
  {
    what: 'grass in a tank',
    run: (plan) => {
      for (const fill of find(plan, 'refill', 0).fills) fill.materialId = 'grass';
    },
  },
  {
    what: 'a mix that is not in the book',
    run: (plan) => {
      for (const fill of find(plan, 'refill', 2).fills) fill.materialId = 'mix-three';
    },
  },
  {
    what: 'water in a hopper',
    run: (plan) => {
      for (const fill of find(plan, 'morning').fills.slice(1)) fill.materialId = 'mix-one';
    },
  },
  {
    what: 'stock that is not in the book',
    run: (plan) => {
      find(plan, 'morning').stock = [...find(plan, 'morning').stock, { ...bagOfGrass(10), productId: 'rye' }];
    },
  },
  {
    what: 'dry stock by the name of water',
    run: (plan) => {
      find(plan, 'morning').stock = [...find(plan, 'morning').stock, { ...bagOfGrass(10), productId: '' }];
    },
  },
  {
    what: 'stock that is taken out',
    run: (plan) => {
      find(plan, 'morning').stock = [...find(plan, 'morning').stock, bagOfGrass(-1)];
    },
  },
  {
    what: 'a bag of grass and a part of one',
    run: (plan) => {
      find(plan, 'morning').stock = [...find(plan, 'morning').stock, bagOfGrass(50.01)];
    },
    problem: rigWith({ cargoLimit: 1e9 }),
  },
  {
    what: 'a bag of grass',
    run: (plan) => {
      find(plan, 'morning').stock = [...find(plan, 'morning').stock, bagOfGrass(50)];
    },
    problem: rigWith({ cargoLimit: 1e9 }),
  },
  {
    what: 'grass from a fill point that has it',
    run: (plan) => {
      find(plan, 'refill', 1).stock = [bagOfGrass(10)];
    },
    problem: hydrantWith([10, 3]),
  },
  {
    what: 'no grass at home',
    problem: (problem) => ({ ...problem, stations: problem.stations.map((each) => ({ ...each, msPerPart: [6, -1] })) }),
  },
  {
    what: 'another refill place stated',
    run: (plan) => {
      find(plan, 'refill', 1).afterSqFt = 7000;
    },
  },
  {
    what: 'a station before the stop with something done',
    run: (plan) => {
      find(plan, 'refill', 2).afterSqFt = 100;
    },
  },
  {
    what: 'work that is done and listed',
    run: (plan) =>
      void plan.unplaced.push({
        ...(plan.unplaced[0] as Draft<Plan>['unplaced'][number]),
        propertyId: 'birch',
        zoneId: 'lawn',
        treatmentId: 'spray',
      }),
  },
  {
    what: 'work that is listed twice',
    run: (plan) => void plan.unplaced.push(structuredClone(plan.unplaced[0] as Draft<Plan>['unplaced'][number])),
  },
  { what: 'stops in another order', run: (plan) => void day(plan).stops.reverse() },
  { what: 'a stop too few', run: (plan) => void day(plan).stops.pop() },
  { what: 'loads in another order', run: (plan) => void day(plan).loads.reverse() },
  {
    what: 'a load too many',
    run: (plan) => void day(plan).loads.push(structuredClone(day(plan).loads[0] as Day['loads'][number])),
  },
  {
    what: 'a load of another mix',
    run: (plan) => {
      for (const load of day(plan).loads.slice(2, 3)) load.materialId = 'mix-two';
    },
  },
  {
    what: 'a load from another fill point',
    run: (plan) => {
      for (const load of day(plan).loads.slice(3, 4)) load.fillPointId = '';
    },
  },
  {
    what: 'something left over',
    run: (plan) => {
      day(plan).leftOver = [
        { compartmentId: 'rider/tank', materialId: 'mix-two', volumeGal: 1, weightLb: 0, advice: '' },
        { compartmentId: 'rider/hopper', materialId: 'grass', volumeGal: 0, weightLb: 2, advice: '' },
      ];
    },
  },
  { what: 'no payload to speak of', problem: rigWith({ cargoLimit: 4_569_949 }) },
  { what: 'a payload that just does', problem: rigWith({ cargoLimit: 4_569_950 }) },
  { what: 'a shift and overtime that just do', problem: rigWith({ overtimeMs: 958_000 }) },
  { what: 'overtime that is a second short', problem: rigWith({ overtimeMs: 957_000 }) },
  { what: 'a shift that starts earlier', problem: rigWith({ shiftStartMs: 7 * 3_600_000 - 60_000 }) },
  { what: 'a rig that does not work', problem: (problem) => ({ ...problem, slots: problem.slots.slice(1) }) },
  { what: 'a rig without a break', problem: rigWith({ breakAfterMs: -1 }) },
  {
    what: 'a day on which nothing is done',
    run: (plan) => {
      Object.assign(day(plan), { activities: [], stops: [], loads: [] });
    },
  },
];
