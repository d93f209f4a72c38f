import type { Property, Zone } from '../../book/index.ts';
import { slopeWorkingWords, workingWords } from '../../field-work/index.ts';
import type { MeasureChange, PropertyMeasure } from '../../measure/index.ts';
import { formatArea, formatLargeArea, formatShare, formatSlope, type UnitSystem } from '../../units/index.ts';
import { FOUND, MEASURE_SHEET } from '../texts/index.ts';

/** How the area of a zone was found: "outline over aerial picture", "offsets, Simpson's rule", "stated: old card". */
export function foundBy({ shape }: Zone): string {
  if (shape.kind === 'drawn') return shape.drawnOver === undefined ? FOUND.outline : FOUND.outlineOver(shape.drawnOver);
  if (shape.working !== undefined) return workingWords(shape.working);
  return shape.method === '' ? FOUND.stated : FOUND.statedBy(shape.method);
}

/** "15°, rise over run"; a slope of 0 that nobody worked out is one that nobody measured. */
export function slopeWords({ slopeDeg, slopeWorking }: Zone): string {
  if (slopeDeg === 0 && slopeWorking === undefined) return MEASURE_SHEET.notMeasured;
  return `${formatSlope(slopeDeg)}, ${slopeWorkingWords(slopeWorking)}`;
}

/** "12,950 ± 300 ft² (0.297 ac)"; where only some zones have a known error it is told for these. */
export function totalWords({ treatableSqFt, errorSqFt, zones }: PropertyMeasure, units: UnitSystem): string {
  if (treatableSqFt === null) return MEASURE_SHEET.notMeasured;
  const whole = `${plusMinus(treatableSqFt, errorSqFt, units)} (${formatLargeArea(treatableSqFt, units)})`;
  const known = zones.flatMap((each) => each.errorSqFt ?? []);
  if (errorSqFt !== null || known.length === 0) return whole;
  const sum = known.reduce((total, each) => total + each, 0);
  return FOUND.knownError(whole, formatArea(sum, units));
}

/** "12,950 ± 300 ft²". */
export function plusMinus(areaSqFt: number, errorSqFt: number | null, units: UnitSystem): string {
  const area = formatArea(areaSqFt, units);
  if (errorSqFt === null) return area;
  const [figure = '', unit = ''] = area.split(' ');
  return `${figure} ± ${formatArea(errorSqFt, units).split(' ')[0] ?? ''} ${unit}`;
}

/** "12,400 ft² on 2025-03-02; now +4.4 %, more than the likely error". */
export function changeWords({ past, changeShare, verdict }: MeasureChange, units: UnitSystem): string {
  const when = past.on === undefined ? FOUND.noDate : FOUND.on(past.on);
  const sign = changeShare < 0 ? '-' : '+';
  const before = plusMinus(past.treatableSqFt, past.errorSqFt ?? null, units);
  return FOUND.change(before, when, `${sign}${formatShare(Math.abs(changeShare))}`, verdict);
}

/** Where the parking point comes from, where that calls for a look. */
export function parkingWords({ placedBy }: Property): string {
  return placedBy === undefined ? FOUND.parkingUnknown : FOUND.parking[placedBy];
}
