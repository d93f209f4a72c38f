import { ok, type Result } from '../base/index.ts';
import type { Feet, Gallons, GallonsPerMinute, Inches, MilesPerHour, Pounds, Quantity, SquareFeet } from './brand.ts';
import { quantity } from './brand.ts';
import { FEET_PER_MILE, FLUID_OUNCES_PER_GALLON, INCHES_PER_FOOT, OUNCES_PER_POUND } from './constants.ts';
import { type ReadOptions, readQuantity } from './quantity-text.ts';
import { type UnitTable, withBareUnit } from './unit-table.ts';
import { AREA_TABLE, FLOW_TABLE, LENGTH_TABLE, SPEED_TABLE, VOLUME_TABLE, WEIGHT_TABLE } from './unit-tables.ts';

/** The unit that a product is measured in: by volume, or by weight in ounces or pounds. */
export type ProductUnit = 'fl-oz' | 'oz' | 'lb';

/**
 * The readers of this file take what a person types. Errors of all: 'quantity-unreadable' with a hint that shows how to
 * write it, 'quantity-out-of-range' for negative and absurd values. The limits in the options are in the returned unit.
 */
function read<Unit extends string>(
  text: string,
  table: UnitTable,
  options: ReadOptions | undefined,
): Result<Quantity<Unit>> {
  const value = readQuantity(text, table, options);
  return value.ok ? ok(quantity<Unit>(value.value)) : value;
}

/**
 * Area in ft2 from "1/2 ac", "12,500 sq ft", "12500" (ft2), "12.5k", "900 m²", "0.4 ha". Errors: 'quantity-unreadable',
 * 'quantity-out-of-range'.
 */
export function parseArea(text: string, options?: ReadOptions): Result<SquareFeet> {
  return read<'ft2'>(text, AREA_TABLE, options);
}

/**
 * Length in ft from "75 ft", "3 ft 6 in", `3' 6"`, "22.5 m"; a bare number is in feet. Errors: 'quantity-unreadable',
 * 'quantity-out-of-range'.
 */
export function parseLength(text: string, options?: ReadOptions): Result<Feet> {
  return read<'ft'>(text, LENGTH_TABLE, options);
}

const MOST_INCHES = 100 * INCHES_PER_FOOT;
const INCH_TABLE: UnitTable = {
  ...withBareUnit(LENGTH_TABLE, 'in'),
  noun: 'width',
  most: MOST_INCHES / INCHES_PER_FOOT,
  mostInWords: '100 ft',
};

/**
 * Width in inches, for gates and machines, from `34"`, "48in", "3 ft 6 in", "90 cm"; a bare number is in inches.
 * Errors: 'quantity-unreadable', 'quantity-out-of-range' (over 100 ft).
 */
export function parseWidth(text: string, options: ReadOptions = {}): Result<Inches> {
  const feet = readQuantity(text, INCH_TABLE, scaled(options, INCHES_PER_FOOT));
  return feet.ok ? ok(quantity<'in'>(tidyUlp(feet.value * INCHES_PER_FOOT))) : feet;
}

/**
 * Volume in gal from "20 gal", "2 qt", "12 fl oz", "4 L"; "8 oz" means fluid ounces here, a bare number gallons.
 * Errors: 'quantity-unreadable', 'quantity-out-of-range'.
 */
export function parseVolume(text: string, options?: ReadOptions): Result<Gallons> {
  return read<'gal'>(text, VOLUME_TABLE, options);
}

/**
 * Weight in lb from "5 lb", "8 oz" (dry), "5 lb 4 oz", "2.5 kg"; fluid ounces are refused. Errors:
 * 'quantity-unreadable', 'quantity-out-of-range'.
 */
export function parseWeight(text: string, options?: ReadOptions): Result<Pounds> {
  return read<'lb'>(text, WEIGHT_TABLE, options);
}

/** Speed in mph from "5 mph", "5", "8 km/h". Errors: 'quantity-unreadable', 'quantity-out-of-range'. */
export function parseSpeed(text: string, options?: ReadOptions): Result<MilesPerHour> {
  return read<'mph'>(text, SPEED_TABLE, options);
}

/** Flow in gal/min from "0.25 gpm", "32 oz/min", "1 L/min". Errors: 'quantity-unreadable', 'quantity-out-of-range'. */
export function parseFlow(text: string, options?: ReadOptions): Result<GallonsPerMinute> {
  return read<'gpm'>(text, FLOW_TABLE, options);
}

const MOST_MILES = 10000;
const MILE_TABLE: UnitTable = {
  ...withBareUnit(LENGTH_TABLE, 'mi'),
  noun: 'distance',
  most: MOST_MILES * FEET_PER_MILE,
  mostInWords: '10,000 miles',
};

/** Limits given in the returned unit, as limits in feet. */
function scaled(options: ReadOptions, perFoot: number): ReadOptions {
  return {
    ...(options.where === undefined ? {} : { where: options.where }),
    ...(options.least === undefined ? {} : { least: options.least / perFoot }),
    ...(options.most === undefined ? {} : { most: options.most / perFoot }),
  };
}

/**
 * Distance in miles from "3.2 mi", "5 km"; a bare number is in miles. Errors: 'quantity-unreadable',
 * 'quantity-out-of-range' (over 10,000 miles).
 */
export function parseDistance(text: string, options: ReadOptions = {}): Result<Quantity<'mi'>> {
  const feet = readQuantity(text, MILE_TABLE, scaled(options, 1 / FEET_PER_MILE));
  return feet.ok ? ok(quantity<'mi'>(tidyUlp(feet.value / FEET_PER_MILE))) : feet;
}

const PRODUCT_TABLES: Readonly<Record<ProductUnit, { readonly table: UnitTable; readonly perCanonical: number }>> = {
  'fl-oz': { table: withBareUnit(VOLUME_TABLE, 'fl-oz'), perCanonical: FLUID_OUNCES_PER_GALLON },
  oz: { table: withBareUnit(WEIGHT_TABLE, 'oz'), perCanonical: OUNCES_PER_POUND },
  lb: { table: WEIGHT_TABLE, perCanonical: 1 },
};

/** How amounts of a product are read: its table, and how many of its units make one canonical unit. */
export function productTable(unit: ProductUnit): { readonly table: UnitTable; readonly perCanonical: number } {
  return PRODUCT_TABLES[unit];
}

/**
 * Amount of a product in the product's own unit. "8 oz" is read by what the product is measured in: fluid ounces for
 * 'fl-oz', dry ounces for 'oz' and 'lb'. A bare number is in the product's unit. Errors: 'quantity-unreadable',
 * 'quantity-out-of-range'.
 */
export function parseProductAmount(text: string, unit: ProductUnit, where?: string): Result<number> {
  const { table, perCanonical } = productTable(unit);
  const value = readQuantity(text, table, where === undefined ? {} : { where });
  return value.ok ? ok(value.value * perCanonical) : value;
}

/** Takes away the last-digit noise of a division and a multiplication by 12 or 5,280: 34.00000000000001 -> 34. */
function tidyUlp(value: number): number {
  return Number(value.toPrecision(15));
}
