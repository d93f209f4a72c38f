import type { Book, Position, Property } from '../../book/index.ts';
import { formatArea, formatDistance, formatDuration } from '../../units/index.ts';
import type { Block, Sheet } from '../blocks.ts';
import { USUAL_CAUTIONS } from '../cautions.ts';
import type { DayInput } from '../input.ts';
import { dateWord } from '../texts/index.ts';
import { amountWord, clockWord, compartmentWord, treatmentWord } from '../words.ts';
import { dayTable, treatmentsOf } from './day-table.ts';
import { turfSqFt } from './ground.ts';

/** The day in order: stops with times, gates, zones and loads, and each refill where it falls. */
export function runSheet(input: DayInput): Sheet {
  const { book, plan, day } = input;
  return {
    id: `run-sheet ${day.date} ${day.rigId}`,
    title: `Run sheet: ${day.rigName}`,
    subtitle: dateWord(day.date),
    invented: book.invented || plan.invented,
    blocks: [
      summary(input),
      USUAL_CAUTIONS,
      dayMap(input),
      dayTable(book, day),
      ending(input),
      {
        kind: 'group',
        blocks: [
          { kind: 'heading', text: 'Weather and crew' },
          { kind: 'blanks', labels: ['Applicator', 'License', 'Helper'] },
          { kind: 'blanks', labels: ['Time', 'Wind from, speed', 'Temperature'] },
          { kind: 'blanks', labels: ['Time', 'Wind from, speed', 'Temperature'] },
          { kind: 'blanks', labels: ['Remarks'] },
        ],
      },
    ],
  };
}

/** Whose roads the figures come from has to stand beside them. */
function drivingSource({ travel, travelCredit }: DayInput['plan']): string {
  const roads = travelCredit === undefined ? '' : `roads: ${travelCredit}`;
  if (travel === 'estimate') return ' (estimate from straight lines, not roads)';
  const words = [...(travel === 'mixed' ? ['in part an estimate from straight lines'] : []), roads];
  const told = words.filter((each) => each !== '').join('; ');
  return told === '' ? '' : ` (${told})`;
}

function summary(input: DayInput): Block {
  const { book, plan, day } = input;
  const { units } = book;
  const driveOff = day.activities.find((each) => each.kind === 'drive')?.startSec ?? day.startSec;
  const overtime = day.overtimeSec > 0 ? `, ${formatDuration(day.overtimeSec)} of it overtime` : '';
  return {
    kind: 'facts',
    facts: [
      { label: 'Round', value: plan.roundName },
      {
        label: 'Treatment',
        value: treatmentsOf(day)
          .map((id) => treatmentWord(book, id))
          .join('; '),
      },
      { label: 'Leave the yard', value: clockWord(book, driveOff) },
      { label: 'Home, all done', value: clockWord(book, day.endSec) },
      { label: 'Day', value: `${formatDuration(day.paidSec)}${overtime}` },
      { label: 'Stops', value: String(day.stops.length) },
      ...groundFacts(input),
      { label: 'Loads', value: String(day.loads.length) },
      {
        label: 'Driving',
        value: `${formatDistance(day.distanceM, units)}, ${formatDuration(day.driveSec)}${drivingSource(plan)}`,
      },
    ],
  };
}

/**
 * Turf with every zone once; beside it, where it is another figure, what is treated by all treatments together, what is covered with
 * overlap, what is trimmed by hand and what nobody reaches.
 */
function groundFacts({ book, day }: DayInput) {
  const turf = Math.round(turfSqFt(day));
  const treated = Math.round(day.treatedSqFt);
  const sums = [
    { label: 'Turf', sqFt: turf, told: true },
    { label: 'Ground treated, all treatments', sqFt: treated, told: treated !== turf },
    { label: 'Ground covered, overlap included', sqFt: day.coveredSqFt, told: Math.round(day.coveredSqFt) !== treated },
    { label: 'Trimmed by hand', sqFt: day.handTrimSqFt, told: day.handTrimSqFt > 0 },
    { label: 'Not reached, left untreated', sqFt: day.notReachedSqFt, told: day.notReachedSqFt > 0 },
  ];
  return sums.filter((each) => each.told).map(({ label, sqFt }) => ({ label, value: formatArea(sqFt, book.units) }));
}

function dayMap({ book, day }: DayInput): Block {
  const properties = day.stops.flatMap((stop) => book.properties.filter((each) => each.id === stop.propertyId));
  const route: Position[] = day.activities.flatMap((each) =>
    each.kind === 'drive' ? placeAt(book, each.toPlaceId) : [],
  );
  return {
    kind: 'map',
    areas: properties.flatMap(areasOf),
    points: day.stops.flatMap((stop) =>
      placeAt(book, stop.propertyId).map((at) => ({ look: 'stop' as const, at, label: String(stop.number) })),
    ),
    // Only from stop to stop: the way from and to the shop would shrink the lawns to dots.
    route,
    units: book.units,
  };
}

function placeAt(book: Book, id: string): readonly Position[] {
  const at = book.properties.find((each) => each.id === id)?.parking;
  return at === undefined ? [] : [at];
}

export function areasOf(property: Property) {
  return [
    ...property.zones.flatMap((zone) =>
      zone.shape.kind === 'drawn' ? [{ look: 'turf' as const, geometry: zone.shape.geometry }] : [],
    ),
    ...property.exclusions.map((each) => ({
      look: each.what === 'water' ? ('water' as const) : ('exclusion' as const),
      geometry: each.geometry,
    })),
  ];
}

const NOTHING_LEFT =
  'All tanks and hoppers are planned to be empty; if something is left, use it up only on ground that its label names.';

function ending({ book, day }: DayInput): Block {
  const left = day.leftOver.map(
    (each) => `${compartmentWord(book, each.compartmentId)}: ${amountWord(each, book.units)} left. ${each.advice}`,
  );
  return {
    kind: 'group',
    blocks: [
      { kind: 'heading', text: `Home ${clockWord(book, day.endSec)}` },
      { kind: 'checklist', items: left.length === 0 ? [NOTHING_LEFT] : left },
    ],
  };
}
