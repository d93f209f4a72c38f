import { FEET_PER_MILE, METRES_PER_FOOT } from '../../core/units/index.ts';
import { formatNumber } from '../format/index.ts';
import { mapWords } from '../texts/index.ts';

/** Distances that people use on the ground, ft. */
const STEPS_FT = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2640, 5280, 10560, 26400, 52800, 105600, 264000, 528000];
/** The same in metres, for books shown in metric units. */
const STEPS_M = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000, 50000, 100000];
const EQUATOR_M_PER_PX = 156543.03392804097;

/**
 * Ground metres under one pixel of the Web Mercator map: 2 pi 6378137 / 256 / 2^zoom x cos(latitude), the definition of
 * EPSG:3857 with 256-pixel tiles (from memory).
 */
export function metresPerPixel(latitude: number, zoom: number): number {
  return (EQUATOR_M_PER_PX * Math.cos((latitude * Math.PI) / 180)) / 2 ** zoom;
}

export type RoundStep = { readonly words: string; readonly px: number };

/** The shortest usual distance that is at least `leastPx` long on screen. */
export function roundStep(metresPerPx: number, leastPx: number, system: 'us' | 'metric'): RoundStep {
  const steps = system === 'us' ? STEPS_FT : STEPS_M;
  const metresPerUnit = system === 'us' ? METRES_PER_FOOT : 1;
  const step = steps.find((each) => (each * metresPerUnit) / metresPerPx >= leastPx) ?? steps.at(-1) ?? 1;
  return { words: system === 'us' ? feetWords(step) : metreWords(step), px: (step * metresPerUnit) / metresPerPx };
}

function feetWords(feet: number): string {
  if (feet < 2640) return mapWords.layers.ft(formatNumber(feet));
  return feet === 2640 ? '1/2 mi' : mapWords.layers.mi(feet / FEET_PER_MILE);
}

function metreWords(metres: number): string {
  return metres < 1000 ? mapWords.layers.m(metres) : mapWords.layers.km(metres / 1000);
}
