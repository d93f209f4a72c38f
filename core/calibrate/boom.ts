import {
  FLUID_OUNCES_PER_GALLON,
  type FluidOunces,
  type Gallons,
  type GallonsPer1000SqFt,
  type GallonsPerAcre,
  type GallonsPerMinute,
  GPA_CONSTANT,
  per1000ToPerAcre,
  perAcreToPer1000,
  quantity,
} from '../units/index.ts';

/*
 * Boom formulas. Arguments are plain numbers above zero in the unit of their name; a zero in a divisor gives Infinity, so
 * values typed by a person go through the bench functions, which check them first.
 */

/**
 * Carrier put on an acre: GPA = 5940 x gpm / (mph x in).
 * Source: Cornell Cooperative Extension, Crop and Pest Management Guidelines 7.6; the factor is 43,560 x 12 / 88.
 *
 * @param gpm flow, gal/min: of one tip with its spacing, or of all tips with the whole swath
 * @param mph working speed
 * @param widthIn spacing of the tips, or the swath, in inches
 */
export function gallonsPerAcre(gpm: number, mph: number, widthIn: number): GallonsPerAcre {
  return quantity<'gpa'>((GPA_CONSTANT * gpm) / (mph * widthIn));
}

/** Flow that a rate asks for: gpm = GPA x mph x in / 5940 (the same source turned round). */
export function gallonsPerMinute(gpa: number, mph: number, widthIn: number): GallonsPerMinute {
  return quantity<'gpm'>((gpa * mph * widthIn) / GPA_CONSTANT);
}

/** The same with the swath in feet: GPA = 495 x gpm / (mph x ft). Source: Mesa County, Stationary Calibration Method. */
export function gallonsPerAcreFromSwath(gpm: number, mph: number, swathFt: number): GallonsPerAcre {
  return gallonsPerAcre(gpm, mph, swathFt * 12);
}

/**
 * GPA = 46.4 x (fl oz/min) / (mph x in); the factor is 5940 / 128 = 46.40625.
 * Source: Albany County Weed and Pest, Calibrating Your Sprayer.
 */
export function gallonsPerAcreFromOunces(ouncesPerMinute: number, mph: number, widthIn: number): GallonsPerAcre {
  return gallonsPerAcre(ouncesPerMinute / FLUID_OUNCES_PER_GALLON, mph, widthIn);
}

/** Fluid ounces a tip gives in one minute. */
export function ouncesPerMinute(gpm: number): FluidOunces {
  return quantity<'fl-oz'>(gpm * FLUID_OUNCES_PER_GALLON);
}

/** gal per 1,000 ft2 = GPA / 43.56. Source: D. Gerken, Calibrating Application Equipment, OSU-Oklahoma City. */
export function per1000SqFt(gpa: number): GallonsPer1000SqFt {
  return perAcreToPer1000(quantity<'gpa'>(gpa));
}

/** GPA = 43.56 x gal per 1,000 ft2. */
export function perAcre(galPer1000SqFt: number): GallonsPerAcre {
  return per1000ToPerAcre(quantity<'gal/1000ft2'>(galPer1000SqFt));
}

/**
 * Flow of the same tip at another pressure, gal/min; pressures in psi, above zero: it grows with the square root.
 * Source: notes on the National Pesticide Applicator Certification Core Manual, chapter 11.
 */
export function flowAtPressure(gpm: number, psi: number, newPsi: number): GallonsPerMinute {
  return quantity<'gpm'>(gpm * Math.sqrt(newPsi / psi));
}

/** Pressure, psi, for another flow through the same tip: twice the flow takes four times the pressure (same source). */
export function pressureForFlow(psi: number, gpm: number, newGpm: number): number {
  return psi * (newGpm / gpm) ** 2;
}

/**
 * Rate at another speed with pressure unchanged, in the unit it is given in, speeds in mph: half of it at twice the
 * speed. Source: NC State Extension, Turfgrass Boom Sprayers.
 */
export function rateAtSpeed(rate: number, mph: number, newMph: number): number {
  return (rate * mph) / newMph;
}

/** Gallons that leave the tank on an area: gal per 1,000 ft2 x ft2 / 1,000. */
export function gallonsOnArea(galPer1000SqFt: number, areaSqFt: number): Gallons {
  return quantity<'gal'>((galPer1000SqFt * areaSqFt) / 1000);
}

/** L/ha = 600 x L/min / (km/h x m). Source: AgroTech R package documentation, flowrat. */
export function litresPerHectare(litresPerMinute: number, kmPerHour: number, widthM: number): number {
  return (600 * litresPerMinute) / (kmPerHour * widthM);
}
