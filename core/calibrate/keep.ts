import type { Calibration, HandMethod, Head } from '../book/index.ts';

/** A head or a hand method: what keeps calibrations. */
export type Calibrated = Head | HandMethod;

/** Calculations whose carrier rate is what the applicator delivers. */
const DELIVERING: ReadonlySet<string> = new Set(['boom', 'tip', 'speed', 'catch', 'gun']);

/**
 * The owner with a calibration added, its count of uses begun anew, and what plans reckon with set where the calibration tells
 * it: the delivered carrier rate, gal per 1,000 ft2, and the working speed of a head, mph.
 *
 * @param figures every figure of the sheet, given and found, by its name
 */
export function keepCalibration<Owner extends Calibrated>(
  owner: Owner,
  calibration: Calibration,
  figures: Readonly<Record<string, number>>,
): Owner {
  const delivered = DELIVERING.has(calibration.what) ? figures['gal-per-1000'] : undefined;
  const speed = 'speedMph' in owner ? figures.mph : undefined;
  return {
    ...owner,
    calibrations: [...(owner.calibrations ?? []), calibration],
    usesSince: 0,
    ...(delivered === undefined ? {} : { deliveredGalPer1000SqFt: delivered }),
    ...(speed === undefined ? {} : { speedMph: speed }),
  };
}

/** Days of use by which a new calibration is overdue: 0 on the day it falls due; negative before; null where it never does. */
export function overdueUses({
  dueAfterUses,
  usesSince,
}: Pick<Calibrated, 'dueAfterUses' | 'usesSince'>): number | null {
  return dueAfterUses === undefined ? null : (usesSince ?? 0) - dueAfterUses;
}

/** One figure of several calibrations over time, oldest first: for a plot. */
export type Trace = {
  readonly name: string;
  readonly unit: string;
  readonly points: readonly { readonly on: string; readonly value: number }[];
};

/** The figures that were found at least twice, those found most often first. */
export function tracesOf(calibrations: readonly Calibration[]): readonly Trace[] {
  const sorted = calibrations.toSorted((left, right) => left.on.localeCompare(right.on));
  const traces = new Map<string, { name: string; unit: string; points: { on: string; value: number }[] }>();
  for (const { on, found } of sorted) {
    for (const { name, unit, value } of found) {
      const key = `${name} ${unit}`;
      const trace = traces.get(key) ?? { name, unit, points: [] };
      trace.points.push({ on, value });
      traces.set(key, trace);
    }
  }
  return [...traces.values()]
    .filter((each) => each.points.length > 1)
    .sort((left, right) => right.points.length - left.points.length);
}
