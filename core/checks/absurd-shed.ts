import type { Issue } from '../base/index.ts';
import type { Compartment, FillPoint, HandMethod, Head, Machine, Rig } from '../book/index.ts';
import { carrier, type Figure, outOfBounds, pause, wage } from './bounds.ts';
import { named } from './rule.ts';

/*
 * Machines, hand methods, rigs and fill points. The bounds are our own and have no source: each lies far beyond what a crew
 * that treats lawns works with, so that a figure past it is a unit mixed up or a slip of the pen.
 */

const TANK_GAL = 2000;
const HOPPER_LB = 5000;
const SPEED_MPH = 20;
const SWATH_FT = 60;
const LEAST_SWATH_FT = 0.5;
const FLOW_GPM = 1000;
const BAGS = 2000;
const MINUTES_PER_BAG = 60;

export function machineFigures(machine: Machine): readonly Issue[] {
  const where = named('machine', machine);
  return [
    ...outOfBounds(where, [
      { what: 'Width in transit', value: machine.transitWidthIn, unit: ' in', most: 120 },
      { what: 'Weight without material', value: machine.emptyWeightLb, unit: ' lb', most: 20_000 },
      { what: 'Places for bags', value: machine.bagPlaces, unit: '', most: BAGS },
      { what: 'Time for one bag', value: machine.minutesPerBag ?? 0, unit: ' min', most: MINUTES_PER_BAG },
    ]),
    ...machine.compartments.flatMap((each) => outOfBounds(`${where}, ${each.name}`, [holding(each)])),
    ...machine.heads.flatMap((each) => outOfBounds(`${where}, head ${each.name}`, headFigures(each))),
  ];
}

function holding(vessel: Compartment): Figure {
  return vessel.kind === 'tank' ? tank('Capacity', vessel.capacityGal) : hopper(vessel.capacityLb, HOPPER_LB);
}

function tank(what: string, value: number, most = TANK_GAL): Figure {
  return { what, value, unit: ' gal', most };
}

function hopper(value: number, most: number): Figure {
  return { what: 'Capacity', value, unit: ' lb', most };
}

function headFigures(head: Head): readonly Figure[] {
  return [
    { what: 'Swath', value: head.swathFt, unit: ' ft', most: SWATH_FT, least: LEAST_SWATH_FT },
    { what: 'Working speed', value: head.speedMph, unit: ' mph', most: SPEED_MPH, least: 0.1 },
    pause('Time to fit it', head.swapMin),
    carrier('Delivered carrier', head.deliveredGalPer1000SqFt),
  ];
}

export function handFigures(hand: HandMethod): readonly Issue[] {
  return outOfBounds(named('hand method', hand), [
    ...handVessel(hand),
    { what: 'Reach', value: hand.reachFt, unit: ' ft', most: 2000 },
    { what: 'Time', value: hand.minutesPer1000SqFt, unit: ' min per 1,000 ft²', most: 60, least: 0.1 },
    pause('Time to set up', hand.setUpMin),
    tank('Least volume', hand.leastVolumeGal),
    carrier('Delivered carrier', hand.deliveredGalPer1000SqFt),
  ]);
}

/** What is carried or pushed on foot is far smaller than a tank fixed on a rig. */
function handVessel({ drawsFrom }: HandMethod): readonly Figure[] {
  switch (drawsFrom.kind) {
    case 'machine':
      return [];
    case 'rig':
      return [tank('Capacity', drawsFrom.capacityGal)];
    case 'own-tank':
      return [tank('Capacity', drawsFrom.capacityGal, 200)];
    case 'own-hopper':
      return [hopper(drawsFrom.capacityLb, 1000)];
  }
}

export function rigFigures(rig: Rig): readonly Issue[] {
  return outOfBounds(named('rig', rig), [
    { what: 'Crew', value: rig.crew, unit: ' people', most: 50 },
    wage('Wage', rig.wagePerHour),
    { what: 'Shift', value: rig.shiftMin / 60, unit: ' h', most: 18 },
    { what: 'Overtime', value: rig.overtimeMin / 60, unit: ' h', most: 12 },
    { what: 'Nurse tank', value: rig.nurseTankGal, unit: ' gal', most: 5000 },
    { what: 'Flow of the nurse tank', value: rig.nurseFlowGpm, unit: ' gal per minute', most: FLOW_GPM },
    { what: 'Places for bags', value: rig.bagPlaces, unit: '', most: BAGS },
    { what: 'Time for one bag', value: rig.minutesPerBag, unit: ' min', most: MINUTES_PER_BAG },
    { what: 'Payload', value: rig.payloadLb, unit: ' lb', most: 60_000 },
    pause('Break', rig.breakMin),
    pause('Time before driving off', rig.morningMin),
    pause('Time at the shop in the evening', rig.eveningMin),
    pause('Time for a refill', rig.refillMin),
    pause('More time for a refill inside a zone', rig.midZoneMin),
    pause('Time at every stop', rig.stopMin),
    ...rig.machines.flatMap((each) => [
      pause(`Time to unload ${each.machineId}`, each.unloadMin),
      pause(`Time to load ${each.machineId}`, each.loadMin),
    ]),
  ]);
}

export function fillPointFigures(point: FillPoint): readonly Issue[] {
  return outOfBounds(named('fill point', point), [
    { what: 'Water', value: point.waterGpm, unit: ' gal per minute', most: FLOW_GPM },
    pause('Time for one visit', point.visitMin),
    { what: 'Time for one bag', value: point.minutesPerBag, unit: ' min', most: MINUTES_PER_BAG },
  ]);
}
