import {
  FEET_PER_MILE,
  FEET_PER_YARD,
  FLUID_OUNCES_PER_GALLON,
  INCHES_PER_FOOT,
  KILOGRAMS_PER_POUND,
  LITRES_PER_GALLON,
  METRES_PER_FOOT,
  METRES_PER_MILE,
  OUNCES_PER_POUND,
  PINTS_PER_GALLON,
  POUNDS_PER_TON,
  QUARTS_PER_GALLON,
  SECONDS_PER_HOUR,
  SECONDS_PER_MINUTE,
  SQUARE_FEET_PER_ACRE,
  SQUARE_METRES_PER_HECTARE,
  SQUARE_METRES_PER_SQUARE_FOOT,
} from './constants.ts';
import { unitTable } from './unit-table.ts';

/** What may be written for areas; canonical unit ft2. The top is a square of 10 km. */
export const AREA_TABLE = unitTable({
  noun: 'area',
  examples: '12,500 sq ft, 0.25 ac, 1/2 acre, 900 m²',
  bare: 'ft2',
  most: 1e8 / SQUARE_METRES_PER_SQUARE_FOOT,
  mostInWords: '24,710 acres',
  units: [
    {
      name: 'ft2',
      factor: 1,
      spellings: [
        'sq ft',
        'sqft',
        'ft2',
        'ft^2',
        'sf',
        'square feet',
        'square foot',
        'square ft',
        'sq feet',
        'sq foot',
      ],
    },
    {
      name: 'thousand-ft2',
      factor: 1000,
      spellings: ['k', 'k sq ft', 'k ft2', 'k ft^2', 'k square feet', 'thousand sq ft', 'thousand square feet'],
    },
    { name: 'ac', factor: SQUARE_FEET_PER_ACRE, spellings: ['ac', 'acs', 'acre', 'acres'] },
    {
      name: 'yd2',
      factor: FEET_PER_YARD ** 2,
      spellings: ['sq yd', 'sq yds', 'yd2', 'yd^2', 'square yards', 'square yard'],
    },
    {
      name: 'm2',
      factor: 1 / SQUARE_METRES_PER_SQUARE_FOOT,
      spellings: ['m2', 'm^2', 'sq m', 'sqm', 'square metres', 'square meters', 'square metre', 'square meter'],
    },
    {
      name: 'ha',
      factor: SQUARE_METRES_PER_HECTARE / SQUARE_METRES_PER_SQUARE_FOOT,
      spellings: ['ha', 'hectare', 'hectares'],
    },
  ],
});

/** What may be written for lengths; canonical unit ft. */
export const LENGTH_TABLE = unitTable({
  noun: 'length',
  examples: '75 ft, 3 ft 6 in, 34", 48 in, 22.5 m',
  bare: 'ft',
  follower: { ft: 'in' },
  most: 100 * FEET_PER_MILE,
  mostInWords: '100 miles',
  units: [
    { name: 'ft', factor: 1, spellings: ['ft', 'feet', 'foot', "'"] },
    { name: 'in', factor: 1 / INCHES_PER_FOOT, spellings: ['in', 'ins', 'inch', 'inches', '"', "''"] },
    { name: 'yd', factor: FEET_PER_YARD, spellings: ['yd', 'yds', 'yard', 'yards'] },
    { name: 'mi', factor: FEET_PER_MILE, spellings: ['mi', 'mile', 'miles'] },
    { name: 'm', factor: 1 / METRES_PER_FOOT, spellings: ['m', 'metre', 'metres', 'meter', 'meters'] },
    { name: 'cm', factor: 0.01 / METRES_PER_FOOT, spellings: ['cm'] },
    { name: 'mm', factor: 0.001 / METRES_PER_FOOT, spellings: ['mm'] },
    { name: 'km', factor: 1000 / METRES_PER_FOOT, spellings: ['km'] },
  ],
});

/** What may be written for volumes; canonical unit gal. Here "oz" is a fluid ounce. */
export const VOLUME_TABLE = unitTable({
  noun: 'volume',
  examples: '20 gal, 2 qt, 12 fl oz, 4 L',
  bare: 'gal',
  most: 100000,
  mostInWords: '100,000 gal',
  units: [
    { name: 'gal', factor: 1, spellings: ['gal', 'gals', 'gallon', 'gallons'] },
    { name: 'qt', factor: 1 / QUARTS_PER_GALLON, spellings: ['qt', 'qts', 'quart', 'quarts'] },
    { name: 'pt', factor: 1 / PINTS_PER_GALLON, spellings: ['pt', 'pts', 'pint', 'pints'] },
    {
      name: 'fl-oz',
      factor: 1 / FLUID_OUNCES_PER_GALLON,
      spellings: ['fl oz', 'fl-oz', 'oz', 'ozs', 'fluid ounce', 'fluid ounces', 'ounce', 'ounces'],
    },
    { name: 'L', factor: 1 / LITRES_PER_GALLON, spellings: ['l', 'litre', 'litres', 'liter', 'liters'] },
    { name: 'mL', factor: 0.001 / LITRES_PER_GALLON, spellings: ['ml', 'cc'] },
  ],
});

/** What may be written for weights; canonical unit lb. Here "oz" is a dry ounce, and "fl oz" is refused. */
export const WEIGHT_TABLE = unitTable({
  noun: 'weight',
  examples: '50 lb, 8 oz, 5 lb 4 oz, 2.5 kg',
  bare: 'lb',
  most: 200000,
  mostInWords: '200,000 lb',
  units: [
    { name: 'lb', factor: 1, spellings: ['lb', 'lbs', '#', 'pound', 'pounds'] },
    { name: 'oz', factor: 1 / OUNCES_PER_POUND, spellings: ['oz', 'ozs', 'ounce', 'ounces', 'oz wt', 'dry oz'] },
    { name: 'ton', factor: POUNDS_PER_TON, spellings: ['ton', 'tons'] },
    { name: 'kg', factor: 1 / KILOGRAMS_PER_POUND, spellings: ['kg', 'kilogram', 'kilograms'] },
    { name: 'g', factor: 0.001 / KILOGRAMS_PER_POUND, spellings: ['g', 'gram', 'grams'] },
  ],
});

/** What may be written for speeds; canonical unit mph. */
export const SPEED_TABLE = unitTable({
  noun: 'speed',
  examples: '5 mph, 8 km/h',
  bare: 'mph',
  most: 100,
  mostInWords: '100 mph',
  units: [
    { name: 'mph', factor: 1, spellings: ['mph', 'mi/h', 'miles per hour', 'miles/h', 'miles an hour'] },
    { name: 'km/h', factor: 1000 / METRES_PER_MILE, spellings: ['km/h', 'kmh', 'kph', 'kilometres per hour'] },
    { name: 'ft/s', factor: SECONDS_PER_HOUR / FEET_PER_MILE, spellings: ['ft/s', 'fps', 'feet per second'] },
    { name: 'ft/min', factor: SECONDS_PER_MINUTE / FEET_PER_MILE, spellings: ['ft/min', 'feet per minute'] },
    { name: 'm/s', factor: SECONDS_PER_HOUR / METRES_PER_MILE, spellings: ['m/s'] },
  ],
});

/** What may be written for flows; canonical unit gal per minute. */
export const FLOW_TABLE = unitTable({
  noun: 'flow',
  examples: '0.25 gpm, 32 fl oz/min, 1 L/min',
  bare: 'gpm',
  most: 2000,
  mostInWords: '2,000 gal/min',
  units: [
    { name: 'gpm', factor: 1, spellings: ['gpm', 'gal/min', 'gallons per minute', 'gal per min', 'gal per minute'] },
    {
      name: 'fl-oz/min',
      factor: 1 / FLUID_OUNCES_PER_GALLON,
      spellings: ['fl oz/min', 'oz/min', 'fl oz per minute', 'oz per minute', 'fl oz per min'],
    },
    { name: 'L/min', factor: 1 / LITRES_PER_GALLON, spellings: ['l/min', 'lpm', 'litres per minute'] },
  ],
});

/** What may be written for spans of time; canonical unit s. A bare number is minutes. */
export const DURATION_TABLE = unitTable({
  noun: 'length of time',
  examples: '7 h 30, 45 min, 1:15, 90 s',
  bare: 'min',
  follower: { h: 'min', min: 's' },
  most: 100 * SECONDS_PER_HOUR,
  mostInWords: '100 h',
  units: [
    { name: 'h', factor: SECONDS_PER_HOUR, spellings: ['h', 'hr', 'hrs', 'hour', 'hours'] },
    { name: 'min', factor: SECONDS_PER_MINUTE, spellings: ['min', 'mins', 'm', 'minute', 'minutes'] },
    { name: 's', factor: 1, spellings: ['s', 'sec', 'secs', 'second', 'seconds'] },
  ],
});
