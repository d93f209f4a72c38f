import { KILOGRAMS_PER_POUND, METRES_PER_FOOT, METRES_PER_MILE, POUNDS_PER_TON } from '../../units/index.ts';

/** Exact by definition. */
const METRES_PER_INCH = 0.0254;
const KM_PER_MILE = METRES_PER_MILE / 1000;

/** Speed by a tag ("50", "35 mph"), km/h in whole numbers of 5 to 250; 0 for everything else, such as "none" and "signals". */
export function readSpeed(text: string | undefined): number {
  const [, figure, unit] = /^(\d+(?:\.\d+)?)\s*(mph|km\/h|kmh|kph)?$/.exec(text?.trim() ?? '') ?? [];
  if (figure === undefined) return 0;
  const kmh = Math.round(Number(figure) * (unit === 'mph' ? KM_PER_MILE : 1));
  return kmh >= 5 && kmh <= 250 ? kmh : 0;
}

/** Length by a tag ("3.8", "3.8 m", "12 ft", 12'6"), cm rounded down; 0 for everything else and above 655 m. */
export function readLengthCm(text: string | undefined): number {
  const told = text?.trim() ?? '';
  const [, metres] = /^(\d+(?:\.\d+)?)\s*m?$/.exec(told) ?? [];
  if (metres !== undefined) return inCentimetres(Number(metres));
  const [, feet, inches] = /^(\d+(?:\.\d+)?)\s*(?:'|ft|feet)\s*(?:(\d+(?:\.\d+)?)\s*(?:"|''|in)?)?$/.exec(told) ?? [];
  return feet === undefined ? 0 : inCentimetres(Number(feet) * METRES_PER_FOOT + Number(inches ?? 0) * METRES_PER_INCH);
}

function inCentimetres(metres: number): number {
  const cm = Math.floor(metres * 100 + 1e-6);
  return cm <= 65_535 ? cm : 0;
}

/** Weight by a tag ("7.5" tonnes, "8 st", "6000 lbs", "3500 kg") in units of 100 kg, rounded down; 0 for everything else. */
export function readWeight(text: string | undefined): number {
  const [, figure, unit = 't'] = /^(\d+(?:\.\d+)?)\s*(t|st|lbs|lb|kg)?$/.exec(text?.trim() ?? '') ?? [];
  if (figure === undefined) return 0;
  const kg = Number(figure) * (KG_PER_UNIT[unit] ?? 0);
  const weight = Math.floor(kg / 100 + 1e-6);
  return weight <= 65_535 ? Math.max(weight, kg > 0 ? 1 : 0) : 0;
}

const KG_PER_UNIT: Readonly<Record<string, number>> = {
  t: 1000,
  st: POUNDS_PER_TON * KILOGRAMS_PER_POUND,
  lbs: KILOGRAMS_PER_POUND,
  lb: KILOGRAMS_PER_POUND,
  kg: 1,
};
