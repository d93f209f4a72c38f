import type {
  Degrees,
  Feet,
  FluidOunces,
  Gallons,
  GallonsPer1000SqFt,
  GallonsPerAcre,
  Inches,
  Metres,
  Miles,
  Minutes,
  Pounds,
  Quantity,
  Seconds,
  SquareFeet,
  SquareMetres,
} from './brand.ts';
import { quantity } from './brand.ts';
import {
  FLUID_OUNCES_PER_GALLON,
  INCHES_PER_FOOT,
  KILOGRAMS_PER_POUND,
  LITRES_PER_GALLON,
  METRES_PER_FOOT,
  METRES_PER_MILE,
  RATE_AREA_SQFT,
  SECONDS_PER_MINUTE,
  SQUARE_FEET_PER_ACRE,
  SQUARE_METRES_PER_SQUARE_FOOT,
  WATER_POUNDS_PER_GALLON,
} from './constants.ts';

/** Area, acres. As the two below, it appears only where people read and type, never in the model. */
export type Acres = Quantity<'ac'>;
/** Volume, litres. */
export type Litres = Quantity<'L'>;
/** Weight, kg. */
export type Kilograms = Quantity<'kg'>;

// Conversions between canonical and other units; one multiplication or division each, so within one ulp.

/** Square feet to acres. */
export const squareFeetToAcres = (area: SquareFeet): Acres => quantity(area / SQUARE_FEET_PER_ACRE);
/** Acres to square feet. */
export const acresToSquareFeet = (area: Acres): SquareFeet => quantity(area * SQUARE_FEET_PER_ACRE);
/** Square feet to square metres. */
export const squareFeetToSquareMetres = (area: SquareFeet): SquareMetres =>
  quantity(area * SQUARE_METRES_PER_SQUARE_FOOT);
/** Square metres to square feet. */
export const squareMetresToSquareFeet = (area: SquareMetres): SquareFeet =>
  quantity(area / SQUARE_METRES_PER_SQUARE_FOOT);
/** Feet to metres. */
export const feetToMetres = (length: Feet): Metres => quantity(length * METRES_PER_FOOT);
/** Metres to feet. */
export const metresToFeet = (length: Metres): Feet => quantity(length / METRES_PER_FOOT);
/** Feet to inches. */
export const feetToInches = (length: Feet): Inches => quantity(length * INCHES_PER_FOOT);
/** Inches to feet. */
export const inchesToFeet = (length: Inches): Feet => quantity(length / INCHES_PER_FOOT);
/** Metres to statute miles. */
export const metresToMiles = (distance: Metres): Miles => quantity(distance / METRES_PER_MILE);
/** Statute miles to metres. */
export const milesToMetres = (distance: Miles): Metres => quantity(distance * METRES_PER_MILE);
/** US gallons to fluid ounces. */
export const gallonsToFluidOunces = (volume: Gallons): FluidOunces => quantity(volume * FLUID_OUNCES_PER_GALLON);
/** Fluid ounces to US gallons. */
export const fluidOuncesToGallons = (volume: FluidOunces): Gallons => quantity(volume / FLUID_OUNCES_PER_GALLON);
/** US gallons to litres. */
export const gallonsToLitres = (volume: Gallons): Litres => quantity(volume * LITRES_PER_GALLON);
/** Litres to US gallons. */
export const litresToGallons = (volume: Litres): Gallons => quantity(volume / LITRES_PER_GALLON);
/** Pounds to kilograms. */
export const poundsToKilograms = (weight: Pounds): Kilograms => quantity(weight * KILOGRAMS_PER_POUND);
/** Kilograms to pounds. */
export const kilogramsToPounds = (weight: Kilograms): Pounds => quantity(weight / KILOGRAMS_PER_POUND);
/** Minutes to seconds. */
export const minutesToSeconds = (time: Minutes): Seconds => quantity(time * SECONDS_PER_MINUTE);
/** Seconds to minutes. */
export const secondsToMinutes = (time: Seconds): Minutes => quantity(time / SECONDS_PER_MINUTE);

/** Carrier per acre to carrier per 1,000 ft2: an acre is 43.56 thousands. */
export const perAcreToPer1000 = (rate: GallonsPerAcre): GallonsPer1000SqFt =>
  quantity((rate * RATE_AREA_SQFT) / SQUARE_FEET_PER_ACRE);
/** Carrier per 1,000 ft2 to carrier per acre. */
export const per1000ToPerAcre = (rate: GallonsPer1000SqFt): GallonsPerAcre =>
  quantity((rate * SQUARE_FEET_PER_ACRE) / RATE_AREA_SQFT);

/** Weight of water by the trade figure of 8.34 lb/gal. */
export const waterWeight = (volume: Gallons): Pounds => quantity(volume * WATER_POUNDS_PER_GALLON);

/** Grade (rise over run) to degrees from level. */
export const gradeToDegrees = (grade: number): Degrees => quantity((Math.atan(grade) * 180) / Math.PI);
/** Degrees from level to grade (rise over run). */
export const degreesToGrade = (slope: Degrees): number => Math.tan((slope * Math.PI) / 180);
