import type { Book, Property } from '../../book/index.ts';
import type { PlanStop, PlanTask } from '../../plan/result/index.ts';
import {
  formatArea,
  formatDistance,
  formatDuration,
  formatNumber,
  formatShare,
  formatWidth,
} from '../../units/index.ts';
import { CAUTION_WORDS, RUN_ROWS } from '../texts/index.ts';
import { zoneWord } from '../words.ts';

const DRIVE_WORTH_SAYING_SEC = 30;
/** Digits after the point of a degree: about 1 m. */
const PLACE_DECIMALS = 5;

/** Address and way there, parking and gates, cautions, note, what passes cover: a line each, where there is something to say. */
export function stopDetails(
  book: Book,
  propertyId: string,
  stop: PlanStop | undefined,
  oneTreatment: boolean,
): readonly string[] {
  const property = book.properties.find((each) => each.id === propertyId);
  const way =
    stop === undefined || stop.driveSec < DRIVE_WORTH_SAYING_SEC
      ? ''
      : RUN_ROWS.drive(formatDistance(stop.distanceM, book.units), formatDuration(stop.driveSec));
  return [
    joined([
      property?.address || RUN_ROWS.noAddress,
      way,
      ...(property === undefined ? [] : placeWords(book, property)),
    ]),
    ...(property === undefined ? [] : [mindLine(property)]),
    ...coverLines(book, stop?.tasks ?? [], oneTreatment),
  ].filter((each) => each !== '');
}

function placeWords(book: Book, property: Property): readonly string[] {
  const [longitude, latitude] = property.parking;
  const gates = property.gates.map(
    (gate) =>
      `${RUN_ROWS.named(gate.name, formatWidth(gate.clearWidthIn, book.units))}${gate.locked ? RUN_ROWS.locked : ''}`,
  );
  return [
    RUN_ROWS.park(formatNumber(latitude, PLACE_DECIMALS), formatNumber(longitude, PLACE_DECIMALS)),
    property.placedBy === 'address-range' ? RUN_ROWS.parkUnsure : '',
    property.noTrailer ? RUN_ROWS.noTrailer : '',
    gates.join('; '),
  ];
}

function mindLine(property: Property): string {
  const cautions = cautionsOf(property).map((each) => CAUTION_WORDS[each]);
  return [
    cautions.length === 0 ? '' : RUN_ROWS.mind(cautions),
    property.note === '' ? '' : RUN_ROWS.note(property.note),
  ]
    .filter((each) => each !== '')
    .join(' ');
}

/** The cautions that were entered, and those that gates and water on the lawn call for by themselves. */
function cautionsOf(property: Property): Property['cautions'] {
  const water = property.exclusions.some((each) => each.what === 'water') ? ['water' as const] : [];
  const locked = property.gates.some((each) => each.locked) ? ['locked' as const] : [];
  return [...new Set([...property.cautions, ...water, ...locked])];
}

/**
 * What passes cover and do not reach; nothing where that is not reckoned from passes. With several treatments on the same ground
 * only what is not reached, zone by zone.
 */
function coverLines(book: Book, tasks: readonly PlanTask[], oneTreatment: boolean): readonly string[] {
  const area = (sqFt: number): string => formatArea(sqFt, book.units);
  const covered: string[] = [];
  const missedSqFt = new Map<string, number>();
  for (const { propertyId, zoneId, reckoned } of tasks) {
    if (reckoned?.from !== 'passes') continue;
    const zone = zoneWord(book, propertyId, zoneId);
    covered.push(RUN_ROWS.coveredPart(zone, area(reckoned.coveredSqFt), formatShare(reckoned.overlapShare)));
    missedSqFt.set(zone, Math.max(missedSqFt.get(zone) ?? 0, reckoned.notReachedSqFt));
  }
  const missed = [...missedSqFt].filter(([, sqFt]) => sqFt > 0).map(([zone, sqFt]) => RUN_ROWS.named(zone, area(sqFt)));
  return [
    [
      covered.length === 0 || !oneTreatment ? '' : RUN_ROWS.passes(covered),
      missed.length === 0 ? '' : RUN_ROWS.notReached(missed),
    ]
      .filter((each) => each !== '')
      .join(' '),
  ];
}

function joined(parts: readonly string[]): string {
  return parts.filter((each) => each !== '').join(' · ');
}
