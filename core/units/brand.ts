declare const unitMark: unique symbol;

/** A number that carries its unit in its type. Canonical units: ft2, gal, lb, s, m, degrees, inches for gates, dollars. */
export type Quantity<Unit extends string> = number & { readonly [unitMark]: Unit };

export type SquareFeet = Quantity<'ft2'>;
export type SquareMetres = Quantity<'m2'>;
export type Feet = Quantity<'ft'>;
export type Inches = Quantity<'in'>;
export type Metres = Quantity<'m'>;
export type Miles = Quantity<'mi'>;
export type Gallons = Quantity<'gal'>;
export type FluidOunces = Quantity<'fl-oz'>;
export type Pounds = Quantity<'lb'>;
export type Seconds = Quantity<'s'>;
export type Minutes = Quantity<'min'>;
export type MilesPerHour = Quantity<'mph'>;
export type Degrees = Quantity<'deg'>;
export type Dollars = Quantity<'usd'>;
export type GallonsPerMinute = Quantity<'gpm'>;
export type GallonsPerAcre = Quantity<'gpa'>;
export type GallonsPer1000SqFt = Quantity<'gal/1000ft2'>;

/** Marks a plain number with a unit. Use where a figure enters typed code. */
export function quantity<Unit extends string>(value: number): Quantity<Unit> {
  return value as Quantity<Unit>;
}
