import type { Issue } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import { absurd } from './absurd.ts';
import { alteredRecords } from './altered-records.ts';
import { licences } from './applicators.ts';
import { calibration } from './calibration.ts';
import { calibrationDue } from './calibration-due.ts';
import { idleCaps } from './caps.ts';
import { doubledOutlines } from './doubled-outlines.ts';
import { undrivableHeads, undrivenHeads } from './driven-heads.ts';
import { duplicateIds } from './duplicate-ids.ts';
import { emptyZones } from './empty-zones.ts';
import { fleets } from './fleets.ts';
import { hours } from './hours.ts';
import { idleExclusions } from './idle-exclusions.ts';
import { labelLimits } from './label-limits.ts';
import { labelSense } from './label-sense.ts';
import { listedTwice } from './listed-twice.ts';
import { outsideParcel } from './outside-parcel.ts';
import { overlappingProperties } from './overlapping-properties.ts';
import { parkingOnTurf } from './parking-on-turf.ts';
import { products } from './products.ts';
import { references } from './references.ts';
import { rigs } from './rigs.ts';
import { roundDays } from './round-days.ts';
import { rounds } from './rounds.ts';
import type { Finding, Rule } from './rule.ts';
import { sharedMachines } from './shared-machines.ts';
import { statedAreas } from './stated-areas.ts';
import { strayGates } from './stray-gates.ts';
import { strayZones } from './stray-zones.ts';
import { timings } from './timings.ts';
import { tinyParts } from './tiny-parts.ts';
import { travel } from './travel.ts';
import { twinProperties } from './twin-properties.ts';
import { vessels } from './vessels.ts';
import { workedAreas } from './worked-areas.ts';

export { references } from './references.ts';
export { pastDueDates } from './round-days.ts';
export type { Finding, Fix, Rule } from './rule.ts';

/** Every invariant of a book. A new one is a file beside these and a line here. */
export const RULES: readonly Rule[] = [
  duplicateIds,
  references,
  listedTwice,
  vessels,
  labelLimits,
  labelSense,
  products,
  idleCaps,
  licences,
  fleets,
  calibration,
  calibrationDue,
  undrivenHeads,
  undrivableHeads,
  rounds,
  roundDays,
  timings,
  rigs,
  sharedMachines,
  hours,
  travel,
  absurd,
  emptyZones,
  doubledOutlines,
  strayZones,
  overlappingProperties,
  outsideParcel,
  idleExclusions,
  strayGates,
  parkingOnTurf,
  twinProperties,
  tinyParts,
  statedAreas,
  workedAreas,
  alteredRecords,
];

/**
 * The rules over a book one after the other, with pauses between lawns where a rule has much to find out: for a window that draws meanwhile.
 * @returns what checkBook finds, with the lawns and fixes
 */
export function* checkInSteps(book: Book): Generator<undefined, readonly Finding[], undefined> {
  const found: (readonly Finding[])[] = [];
  for (const rule of RULES) {
    if (rule.prepare !== undefined) yield* rule.prepare(book);
    found.push(rule.find(book));
    yield;
  }
  return found.flat();
}

/** What is wrong or odd in a book, in the order of the rules. Whether lawns can be reached and measured is told elsewhere. */
export function checkBook(book: Book): readonly Issue[] {
  return RULES.flatMap((rule) => rule.find(book)).map(({ code, severity, where, message }) => ({
    code,
    severity,
    where,
    message,
  }));
}
