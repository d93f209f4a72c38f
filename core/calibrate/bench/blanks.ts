import type { Blank, Reading } from './sheet.ts';

/** Unit and largest sensible value of each way of reading. The limits are ours: well beyond any lawn machine. */
const READINGS: Readonly<Record<Reading, { readonly unit: string; readonly most: number }>> = {
  length: { unit: 'ft', most: 26_400 },
  width: { unit: 'in', most: 1200 },
  area: { unit: 'ft2', most: 1e9 },
  volume: { unit: 'gal', most: 100_000 },
  weight: { unit: 'lb', most: 200_000 },
  fluid: { unit: 'fl-oz', most: 1e6 },
  flow: { unit: 'gal/min', most: 500 },
  speed: { unit: 'mph', most: 40 },
  seconds: { unit: 's', most: 36_000 },
  minutes: { unit: 'min', most: 60_000 },
  'gal-per-1000': { unit: 'gal/1000ft2', most: 100 },
  'gal-per-acre': { unit: 'gal/acre', most: 4356 },
  'lb-per-1000': { unit: 'lb/1000ft2', most: 1000 },
  'lb-per-acre': { unit: 'lb/acre', most: 43_560 },
  product: { unit: 'product', most: 1e7 },
  share: { unit: 'share', most: 1 },
  number: { unit: '', most: 1e6 },
};

type Extra = Partial<Pick<Blank, 'unit' | 'most' | 'many' | 'onlyFound' | 'mayBeZero'>>;

/** A blank; unit and largest value come from how it is read unless they are said. */
export function blank(name: string, reading: Reading, words: string, extra: Extra = {}): Blank {
  return {
    name,
    words,
    reading,
    many: false,
    onlyFound: false,
    mayBeZero: extra.onlyFound === true,
    ...READINGS[reading],
    ...extra,
  };
}

const PSI = { unit: 'psi', most: 1000 };

/** Blanks that several sheets share. */
export const BLANKS = {
  gpm: blank('gpm', 'flow', 'flow of one tip or of the gun, gal/min'),
  totalGpm: blank('total-gpm', 'flow', 'flow of all tips together, gal/min'),
  newGpm: blank('new-gpm', 'flow', 'flow at the other pressure, gal/min'),
  ouncesPerMinute: blank('oz-per-min', 'fluid', 'flow of one tip, fl oz in a minute', { unit: 'fl-oz/min' }),
  tips: blank('tips', 'number', 'number of tips', { unit: 'tips', most: 500 }),
  spacingIn: blank('spacing-in', 'width', 'spacing of the tips, in'),
  swathFt: blank('swath-ft', 'length', 'width gained with each pass, ft', { most: 300 }),
  mph: blank('mph', 'speed', 'working speed, mph'),
  newMph: blank('new-mph', 'speed', 'another speed, mph'),
  psi: blank('psi', 'number', 'pressure, psi', PSI),
  newPsi: blank('new-psi', 'number', 'another pressure, psi', PSI),
  gpa: blank('gpa', 'gal-per-acre', 'carrier rate, gal per acre'),
  newGpa: blank('new-gpa', 'gal-per-acre', 'carrier rate at the other speed or pressure, gal per acre'),
  galPer1000: blank('gal-per-1000', 'gal-per-1000', 'carrier rate, gal per 1,000 ft²'),
  newGalPer1000: blank(
    'new-gal-per-1000',
    'gal-per-1000',
    'carrier rate at the other speed or pressure, gal per 1,000 ft²',
  ),
  courseFt: blank('course-ft', 'length', 'length of the measured course, ft'),
  seconds: blank('seconds', 'seconds', 'time for the course, s; several with commas between', { many: true }),
  areaSqFt: blank('area-ft2', 'area', 'area, ft²'),
  usedGal: blank('used-gal', 'volume', 'gallons that the measured run used'),
  minutes: blank('minutes', 'minutes', 'minutes for the area'),
  minutesPer1000: blank('minutes-per-1000', 'minutes', 'minutes for 1,000 ft²', { unit: 'min/1000ft2' }),
  lbPer1000: blank('lb-per-1000', 'lb-per-1000', 'product, lb per 1,000 ft²'),
  lbPerAcre: blank('lb-per-acre', 'lb-per-acre', 'product, lb per acre'),
  passes: blank('passes', 'number', 'number of passes over the same ground', { unit: 'passes', most: 20 }),
  lbPerPass: blank('lb-per-1000-per-pass', 'lb-per-1000', 'product of one pass, lb per 1,000 ft²'),
} as const satisfies Readonly<Record<string, Blank>>;
