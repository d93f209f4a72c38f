import type { Book, Property } from '../../book/index.ts';
import type { PlanActivity, PlanDay, PlanLoad, PlanStop, PlanTask } from '../../plan/result/index.ts';
import { formatArea, formatDistance, formatDuration, formatShare, formatWidth } from '../../units/index.ts';
import { type Block, BOX, left, pen, right, type TableRow } from '../blocks.ts';
import { CAUTION_WORDS } from '../texts/index.ts';
import {
  amountWord,
  clockWord,
  compartmentWord,
  materialWord,
  methodWord,
  placeWord,
  stockWord,
  treatmentWord,
  zoneWord,
} from '../words.ts';

type OfKind<Kind extends PlanActivity['kind']> = Extract<PlanActivity, { readonly kind: Kind }>;
type Fill = OfKind<'refill'>['fills'][number];

const WAIT_WORTH_SAYING_SEC = 60;
const DRIVE_WORTH_SAYING_SEC = 30;

/** A walk through the day: which stop comes next, and which load each compartment works from. */
type Walk = {
  readonly book: Book;
  readonly day: PlanDay;
  /** True where the day has one treatment only, named at the head of the sheet. */
  readonly oneTreatment: boolean;
  nextStop: number;
  readonly loads: PlanLoad[];
  readonly inUse: Map<string, number>;
};

/** The whole day as one table: stops, zones and refills in the order in which they happen. */
export function dayTable(book: Book, day: PlanDay): Block {
  const oneTreatment = treatmentsOf(day).length === 1;
  const walk: Walk = { book, day, oneTreatment, nextStop: 0, loads: [...day.loads], inUse: new Map() };
  return {
    kind: 'table',
    columns: [left(''), right('Time'), left('Zone'), left('With'), right('Ground'), left('Load'), pen('Really done')],
    // Two persons at a stop begin side by side; what begins at the same time stays in the order of the plan.
    rows: day.activities.toSorted((one, other) => one.startSec - other.startSec).flatMap((each) => rowsOf(walk, each)),
  };
}

/** Ids of the treatments that a day applies. */
export function treatmentsOf(day: PlanDay): readonly string[] {
  return [...new Set(day.stops.flatMap((stop) => stop.tasks.map((task) => task.treatmentId)))];
}

function rowsOf(walk: Walk, activity: PlanActivity): readonly TableRow[] {
  switch (activity.kind) {
    case 'morning':
      return [eventRow(walk, activity.startSec, 'stop', morningWords(walk, activity))];
    case 'drive':
    case 'pack-up':
      return [];
    case 'wait': {
      if (activity.endSec - activity.startSec < WAIT_WORTH_SAYING_SEC) return [];
      return [eventRow(walk, activity.startSec, 'plain', `Wait until ${clockWord(walk.book, activity.endSec)}`)];
    }
    case 'break':
      return [
        eventRow(walk, activity.startSec, 'plain', `Break, ${formatDuration(activity.endSec - activity.startSec)}`),
      ];
    case 'set-up':
      return stopRows(walk, activity);
    case 'swap-head':
      return [
        eventRow(walk, activity.startSec, 'plain', `Fit ${methodWord(walk.book, { ...activity, kind: 'machine' })}`),
      ];
    case 'treat':
      return [treatRow(walk, activity)];
    case 'pour':
      return [eventRow(walk, activity.startSec, 'refill', pourWords(walk, activity))];
    case 'refill':
      return [eventRow(walk, activity.startSec, 'refill', refillWords(walk, activity))];
    case 'evening':
      return [eventRow(walk, activity.startSec, 'stop', `${endWord(walk)}: rinse, put away, write up the records`)];
  }
}

/** Where the day ends: home, or the fill point that the rig's day ends at. */
function endWord({ book, day }: Walk): string {
  const endId = book.rigs.find((each) => each.id === day.rigId)?.endId;
  return endId === undefined ? 'Home' : placeWord(book, endId);
}

function eventRow(walk: Walk, atSec: number, look: 'stop' | 'refill' | 'plain', text: string): TableRow {
  return { look, lead: [BOX, clockWord(walk.book, atSec)], text };
}

function morningWords(walk: Walk, morning: OfKind<'morning'>): string {
  const loads = morning.fills.map((fill) => fillWord(walk, fill));
  const stock = morning.stock.map((fill) => stockWord(walk.book, fill));
  return `Start: ${['checks and loading', ...loads, ...stock].join('; ')}`;
}

/** The number of the load that a fill begins; loads are listed in the order of the fills. Bags put on a machine begin none. */
function fillWord(walk: Walk, fill: Fill): string {
  const index = walk.loads.findIndex((load) => load.compartmentId === fill.compartmentId);
  const what = `${amountWord(fill, walk.book.units)} ${materialWord(walk.book, fill.materialId)}`;
  const vessel = compartmentWord(walk.book, fill.compartmentId);
  if (index < 0) return `${what} for ${vessel}`;
  const number = walk.loads[index]?.number ?? 0;
  walk.loads.splice(index, 1);
  walk.inUse.set(fill.compartmentId, number);
  return `load ${number}, ${what} into ${vessel}`;
}

function stopRows(walk: Walk, setUp: OfKind<'set-up'>): readonly TableRow[] {
  const { book } = walk;
  const stop = walk.day.stops[walk.nextStop];
  walk.nextStop += 1;
  const property = book.properties.find((each) => each.id === setUp.propertyId);
  const until = stop === undefined ? '' : ` · until ${clockWord(book, stop.leaveSec)}`;
  const head: TableRow = {
    look: 'stop',
    lead: [String(stop?.number ?? walk.nextStop), clockWord(book, stop?.arriveSec ?? setUp.startSec)],
    text: `${placeWord(book, setUp.propertyId)}${until}`,
  };
  const details = property === undefined ? [] : detailsOf(book, property, stop);
  return [head, ...details.map((text): TableRow => ({ look: 'detail', lead: ['', ''], text }))];
}

/** Address and way there, access, cautions, note: a line each, where there is something to say. */
function detailsOf(book: Book, property: Property, stop: PlanStop | undefined): readonly string[] {
  const way =
    stop === undefined || stop.driveSec < DRIVE_WORTH_SAYING_SEC
      ? ''
      : `drive ${formatDistance(stop.distanceM, book.units)}, ${formatDuration(stop.driveSec)}`;
  const gates = property.gates.map(
    (gate) => `${gate.name} ${formatWidth(gate.clearWidthIn, book.units)}${gate.locked ? ', locked' : ''}`,
  );
  const parking = property.noTrailer ? ['no room for a trailer'] : [];
  const access = [...gates, ...parking];
  const cautions = property.cautions.map((each) => CAUTION_WORDS[each]);
  return [
    joined([property.address, access.join('; '), way]),
    cautions.length === 0 ? '' : `Mind: ${cautions.join(', ')}.`,
    property.note === '' ? '' : `Note: ${property.note}`,
    ...(stop?.tasks ?? []).map((task) => coverWords(book, task)),
  ].filter((each) => each !== '');
}

/** What a machine covers beside what it treats, and what it does not reach; '' where that is not reckoned from passes. */
function coverWords(book: Book, { propertyId, zoneId, treatmentId, areaSqFt, reckoned }: PlanTask): string {
  if (reckoned?.from !== 'passes') return '';
  const { coveredSqFt, overlapShare, worstRate, notReachedSqFt } = reckoned;
  const area = (sqFt: number): string => formatArea(sqFt, book.units);
  const left = notReachedSqFt === 0 ? '' : `; ${area(notReachedSqFt)} not reached, left untreated`;
  const what = `${zoneWord(book, propertyId, zoneId)}, ${treatmentWord(book, treatmentId)}`;
  const treated = area(areaSqFt - notReachedSqFt);
  return `${what}: ${area(coveredSqFt)} covered for ${treated}, ${formatShare(overlapShare)} overlap, ${worstRate} passes at most${left}`;
}

function joined(parts: readonly string[]): string {
  return parts.filter((each) => each !== '').join(' · ');
}

function treatRow(walk: Walk, treat: OfKind<'treat'>): TableRow {
  const { book } = walk;
  const zone = zoneWord(book, treat.propertyId, treat.zoneId);
  const treatment = walk.oneTreatment ? '' : `: ${treatmentWord(book, treat.treatmentId)}`;
  const rest = treat.doneSqFt > 0 ? `, from ${formatArea(treat.doneSqFt, book.units)} on` : '';
  const loads = treat.draws.flatMap((draw) => walk.inUse.get(draw.compartmentId) ?? []);
  return [
    BOX,
    clockWord(book, treat.startSec),
    `${zone}${treatment}${treat.handTrim === true ? ', hand trim' : ''}${rest}`,
    treat.person === 2 ? `${methodWord(book, treat.method)}, second person` : methodWord(book, treat.method),
    formatArea(treat.areaSqFt, book.units),
    loads.join(', '),
    '',
  ];
}

function pourWords(walk: Walk, pour: OfKind<'pour'>): string {
  const fills = pour.fills.map((fill) => fillWord(walk, fill));
  return `Pour from the bags on the machine${afterWord(walk, pour)}: ${fills.join('; ')}`;
}

function afterWord({ book }: Walk, { afterSqFt, propertyId, zoneId }: OfKind<'refill' | 'pour'>): string {
  return afterSqFt > 0 ? ` after ${formatArea(afterSqFt, book.units)} of ${zoneWord(book, propertyId, zoneId)}` : '';
}

function refillWords(walk: Walk, refill: OfKind<'refill'>): string {
  const { book } = walk;
  const where = refill.fillPointId === '' ? 'from the rig' : `at ${placeWord(book, refill.fillPointId)}`;
  const after = afterWord(walk, refill);
  const rinse = refill.rinsedCompartmentIds.map((id) => `rinse ${compartmentWord(book, id)}`);
  const fills = refill.fills.map((fill) => fillWord(walk, fill));
  const stock = refill.stock.map((fill) => stockWord(book, fill));
  return `Refill ${where}${after}: ${[...rinse, ...fills, ...stock].join('; ')}. ${refill.reason}`;
}
