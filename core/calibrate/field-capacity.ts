import {
  FIELD_CAPACITY_CONSTANT,
  type MilesPerHour,
  type Minutes,
  quantity,
  SQUARE_FEET_PER_ACRE,
} from '../units/index.ts';

/**
 * Field capacity in acres per hour: C = S x W x E / 8.25.
 * Source: Iowa State University Extension A3-24, Estimating the Field Capacity of Farm Machines; University of Kentucky AEN-73.
 *
 * @param mph working speed
 * @param swathFt width gained with each pass
 * @param efficiency share left after turning, overlap and minor stops, 0 to 1
 */
export function acresPerHour(mph: number, swathFt: number, efficiency: number): number {
  return (mph * swathFt * efficiency) / FIELD_CAPACITY_CONSTANT;
}

/** The same in metric: C (ha/h) = S (km/h) x W (m) x E / 10 (ASAE EP496, from memory; exact, since 1 km x 1 m is 0.1 ha). */
export function hectaresPerHour(kmPerHour: number, swathM: number, efficiency: number): number {
  return (kmPerHour * swathM * efficiency) / 10;
}

/** Minutes for an area at a capacity in acres per hour. */
export function minutesForArea(areaSqFt: number, capacityAcresPerHour: number): Minutes {
  return quantity<'min'>((areaSqFt / SQUARE_FEET_PER_ACRE / capacityAcresPerHour) * 60);
}

/**
 * The efficiency that a timed job shows: capacity found over the theoretical one, a share that is above 1 where a
 * figure is off.
 */
export function efficiencyFromJob(areaSqFt: number, minutes: number, mph: number, swathFt: number): number {
  return areaSqFt / SQUARE_FEET_PER_ACRE / (minutes / 60) / acresPerHour(mph, swathFt, 1);
}

/**
 * Speed, mph, at which a capacity in acres per hour is reached: `acresPerHour` turned round; efficiency from 0 to 1.
 */
export function speedForCapacity(wantedAcresPerHour: number, swathFt: number, efficiency: number): MilesPerHour {
  return quantity<'mph'>((wantedAcresPerHour * FIELD_CAPACITY_CONSTANT) / (swathFt * efficiency));
}
