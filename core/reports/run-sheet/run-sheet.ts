import { formatArea, formatDistance, formatDuration } from '../../units/index.ts';
import { type Block, type Fact, left, pen, right, type Sheet } from '../blocks.ts';
import { USUAL_CAUTIONS } from '../cautions.ts';
import type { DayInput } from '../input.ts';
import { RUN_SHEET } from '../texts/index.ts';
import { amountWord, clockWord, compartmentWord, dateWord, treatmentWord } from '../words.ts';
import { dayRows, type RowGroup, treatmentsOf } from './day-rows.ts';
import { turfSqFt } from './ground.ts';
import { dayMap, stopsMap } from './maps.ts';
import { pagesOf } from './pages.ts';

/** The day in order: stops with times, gates, zones and loads, and each refill where it falls; a small map on every page. */
export function runSheet(input: DayInput): Sheet {
  const { book, plan, day } = input;
  const none: readonly Block[] = day.stops.length === 0 ? [{ kind: 'note', text: RUN_SHEET.noStops }] : [];
  return {
    id: `run-sheet ${day.date} ${day.rigId}`,
    title: RUN_SHEET.title(day.rigName),
    subtitle: dateWord(book, day.date),
    invented: book.invented || plan.invented,
    blocks: [
      { kind: 'facts', facts: summary(input) },
      ...none,
      USUAL_CAUTIONS,
      dayMap(input),
      ...pagesOf(dayRows(book, day)).map((groups) => pageBlock(input, groups)),
      ending(input),
      weather(),
    ],
  };
}

/** One page: which stops are on it, where they are, and what is done there. */
function pageBlock(input: DayInput, groups: readonly RowGroup[]): Block {
  const { day } = input;
  const stops = groups.flatMap((each) => each.stop ?? []);
  const [first, last] = [stops[0], stops.at(-1)];
  const { columns } = RUN_SHEET;
  const heading =
    first === undefined || last === undefined
      ? RUN_SHEET.noStopHere
      : RUN_SHEET.stopsTo(first.number, last.number, day.stops.length);
  return {
    kind: 'page',
    runsOn: true,
    blocks: [
      { kind: 'heading', text: heading },
      ...(stops.length === 0 ? [] : [stopsMap(input, stops)]),
      {
        kind: 'table',
        columns: [
          left('', 5),
          right(columns.time, 12),
          left(columns.zone, 27),
          left(columns.with, 24),
          right(columns.ground, 12),
          left(columns.load, 8),
          pen(columns.done, 12),
        ],
        rows: groups.flatMap((each) => each.rows),
      },
    ],
  };
}

/** Whose roads the figures come from has to stand beside them. */
function drivingSource({ travel, travelCredit }: DayInput['plan']): string {
  if (travel === 'estimate') return RUN_SHEET.source([RUN_SHEET.estimate]);
  const roads = travelCredit === undefined ? [] : [RUN_SHEET.roads(travelCredit)];
  return RUN_SHEET.source([...(travel === 'mixed' ? [RUN_SHEET.inPart] : []), ...roads]);
}

function summary(input: DayInput): readonly Fact[] {
  const { book, plan, day } = input;
  const { facts } = RUN_SHEET;
  const driveOff = day.activities.find((each) => each.kind === 'drive')?.startSec ?? day.startSec;
  const overtime = day.overtimeSec > 0 ? RUN_SHEET.overtime(formatDuration(day.overtimeSec)) : '';
  const treatments = treatmentsOf(day).map((id) => treatmentWord(book, id));
  const drive = RUN_SHEET.drive(formatDistance(day.distanceM, book.units), formatDuration(day.driveSec));
  const refills = day.activities.filter((each) => each.kind === 'refill').length;
  return [
    { label: facts.round, value: plan.roundName },
    { label: facts.treatment, value: treatments.join('; ') },
    { label: facts.leave, value: clockWord(book, driveOff) },
    { label: facts.home, value: clockWord(book, day.endSec) },
    { label: facts.day, value: `${formatDuration(day.paidSec)}${overtime}` },
    { label: facts.stops, value: String(day.stops.length) },
    { label: facts.loads, value: String(day.loads.length) },
    { label: facts.refills, value: String(refills) },
    ...groundFacts(input),
    { label: facts.driving, value: `${drive}${drivingSource(plan)}` },
  ];
}

/**
 * Turf with every zone once; beside it, where it is another figure, what is treated by all treatments together, what is covered with
 * overlap, what is trimmed by hand and what nobody reaches.
 */
function groundFacts({ book, day }: DayInput): readonly Fact[] {
  const { facts } = RUN_SHEET;
  const turf = Math.round(turfSqFt(day));
  const treated = Math.round(day.treatedSqFt);
  const sums = [
    { label: facts.turf, sqFt: turf, told: true },
    { label: facts.treated, sqFt: treated, told: treated !== turf },
    { label: facts.covered, sqFt: day.coveredSqFt, told: Math.round(day.coveredSqFt) !== treated },
    { label: facts.handTrim, sqFt: day.handTrimSqFt, told: day.handTrimSqFt > 0 },
    { label: facts.notReached, sqFt: day.notReachedSqFt, told: day.notReachedSqFt > 0 },
  ];
  return sums.filter((each) => each.told).map(({ label, sqFt }) => ({ label, value: formatArea(sqFt, book.units) }));
}

function ending({ book, day }: DayInput): Block {
  const left = day.leftOver.map((each) =>
    RUN_SHEET.left(compartmentWord(book, each.compartmentId), amountWord(each, book.units), each.advice),
  );
  return {
    kind: 'group',
    blocks: [
      { kind: 'heading', text: RUN_SHEET.home(clockWord(book, day.endSec)) },
      { kind: 'checklist', items: left.length === 0 ? [RUN_SHEET.nothingLeft] : left },
    ],
  };
}

function weather(): Block {
  const { title, crew, reading, remarks } = RUN_SHEET.weather;
  return {
    kind: 'group',
    blocks: [
      { kind: 'heading', text: title },
      { kind: 'blanks', labels: crew },
      { kind: 'blanks', labels: reading },
      { kind: 'blanks', labels: reading },
      { kind: 'blanks', labels: remarks },
    ],
  };
}
