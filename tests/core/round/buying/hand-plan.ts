import type { Plan, PlanDay } from '../../../../core/plan/result/index.ts';
import { BLANK_DAY } from '../../../support/blank-day.ts';

const AT = { propertyId: 'a', zoneId: 'z', treatmentId: 't', step: 0 };

/** A day of nothing but what is given. */
export function dayOf(more: Partial<PlanDay>): PlanDay {
  return { ...BLANK_DAY, date: '2027-03-15', ...more };
}

export function planOf(days: readonly PlanDay[], more: Partial<Plan> = {}): Plan {
  return {
    format: 'swardway-plan',
    version: 1,
    bookId: 'season',
    bookName: 'Season',
    roundId: 'spring',
    roundName: 'Spring',
    invented: true,
    problemHash: '',
    seed: 1,
    iterations: 1,
    travel: 'estimate',
    days,
    unplaced: [],
    totals: {
      days: days.length,
      stops: 0,
      treatedSqFt: 0,
      coveredSqFt: 0,
      handTrimSqFt: 0,
      notReachedSqFt: 0,
      paidSec: 0,
      overtimeSec: 0,
      driveSec: 0,
      distanceM: 0,
      refills: 0,
      fillPointVisits: 0,
      loads: 0,
      costUsd: 0,
      unplaced: 0,
      waterGal: 0,
      products: [],
    },
    issues: [],
    ...more,
  };
}

export function stopOf(propertyId: string, number: number): PlanDay['stops'][number] {
  return {
    number,
    propertyId,
    name: `Lawn ${propertyId}`,
    arriveSec: 0,
    leaveSec: 0,
    driveSec: 0,
    distanceM: 0,
    tasks: [],
    otherWays: [],
  };
}

type Load = PlanDay['loads'][number];

export function loadOf(more: Partial<Load>): Load {
  return {
    number: 1,
    compartmentId: 'tank',
    materialId: 'mix',
    kind: 'tank',
    fillPointId: '',
    fromBags: false,
    atPropertyId: '',
    startSec: 0,
    beforeGal: 0,
    beforeLb: 0,
    volumeGal: 0,
    weightLb: 0,
    sumpGal: 0,
    products: [],
    covers: [],
    coversSqFt: 0,
    leftGal: 0,
    leftLb: 0,
    why: '',
    ...more,
  };
}

/** What is done one after the other, in minutes from midnight: kind, minutes and what else belongs to it. */
export function activitiesOf(
  parts: readonly (readonly [kind: PlanDay['activities'][number]['kind'], minutes: number, more?: object])[],
): PlanDay['activities'] {
  let now = 0;
  return parts.map(([kind, minutes, more = {}]) => {
    const startSec = now * 60;
    now += minutes;
    const rest = {
      fills: [],
      stock: [],
      fillPointId: '',
      rinseGal: 0,
      distanceM: 0,
      rinsedCompartmentIds: [],
      ...AT,
      ...more,
    };
    return { kind, startSec, endSec: now * 60, ...rest } as unknown as PlanDay['activities'][number];
  });
}
