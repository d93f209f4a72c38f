declare const unitMark: unique symbol;

/** A number that carries its unit in its type. Canonical units: ft2, gal, lb, s, m, degrees, inches for gates, dollars. */
export type Quantity<Unit extends string> = number & { readonly [unitMark]: Unit };

/** Area, ft2. */
export type SquareFeet = Quantity<'ft2'>;
/** Area, m2. */
export type SquareMetres = Quantity<'m2'>;
/** Length, ft. */
export type Feet = Quantity<'ft'>;
/** Width or length, in. */
export type Inches = Quantity<'in'>;
/** Length or distance, m. */
export type Metres = Quantity<'m'>;
/** Distance, statute miles. */
export type Miles = Quantity<'mi'>;
/** Volume, US gallons. */
export type Gallons = Quantity<'gal'>;
/** Volume, US fluid ounces. */
export type FluidOunces = Quantity<'fl-oz'>;
/** Weight, avoirdupois pounds. */
export type Pounds = Quantity<'lb'>;
/** Time, s. */
export type Seconds = Quantity<'s'>;
/** Time, min. */
export type Minutes = Quantity<'min'>;
/** Speed, miles an hour. */
export type MilesPerHour = Quantity<'mph'>;
/** Angle, degrees. */
export type Degrees = Quantity<'deg'>;
/** Money, US dollars. */
export type Dollars = Quantity<'usd'>;
/** Flow, gallons a minute. */
export type GallonsPerMinute = Quantity<'gpm'>;
/** Carrier or spray, gallons an acre. */
export type GallonsPerAcre = Quantity<'gpa'>;
/** Carrier or spray, gallons for 1,000 square feet. */
export type GallonsPer1000SqFt = Quantity<'gal/1000ft2'>;

/**
 * Marks a plain number with a unit. Use where a figure enters typed code. The number stays as it is, and nothing is
 * checked.
 */
export function quantity<Unit extends string>(value: number): Quantity<Unit> {
  return value as Quantity<Unit>;
}
