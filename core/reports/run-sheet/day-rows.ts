import type { Book } from '../../book/index.ts';
import type { PlanActivity, PlanDay, PlanFill, PlanStop } from '../../plan/result/index.ts';
import { formatArea, formatDuration, formatSlope } from '../../units/index.ts';
import { BOX, type TableRow } from '../blocks.ts';
import { loadsOfFills } from '../fills.ts';
import { RUN_ROWS } from '../texts/index.ts';
import {
  amountWord,
  clockWord,
  compartmentWord,
  loadWord,
  materialWord,
  methodWord,
  placeWord,
  stockWord,
  treatmentWord,
  zoneWord,
} from '../words.ts';
import { stopDetails } from './stop-details.ts';

type OfKind<Kind extends PlanActivity['kind']> = Extract<PlanActivity, { readonly kind: Kind }>;

const WAIT_WORTH_SAYING_SEC = 60;
const SLOPE_WORTH_SAYING_DEG = 1;

/** A walk through the day: which stop comes next, and which load each compartment works from. */
type Walk = {
  readonly book: Book;
  readonly day: PlanDay;
  /** True where the day has one treatment only, named at the head of the sheet. */
  readonly oneTreatment: boolean;
  nextStop: number;
  readonly loads: ReturnType<typeof loadsOfFills>;
  readonly inUse: Map<string, number>;
};

/** Rows that belong together: the start of the day, one stop with what follows it, or the way home. */
export type RowGroup = { readonly stop: PlanStop | null; readonly rows: readonly TableRow[] };

/** The whole day in groups of rows: stops, zones and refills in the order in which they happen. */
export function dayRows(book: Book, day: PlanDay): readonly RowGroup[] {
  const oneTreatment = treatmentsOf(day).length === 1;
  const walk: Walk = { book, day, oneTreatment, nextStop: 0, loads: loadsOfFills(day), inUse: new Map() };
  const groups: { stop: PlanStop | null; rows: TableRow[] }[] = [];
  // Two persons at a stop begin side by side; what begins at the same time stays in the order of the plan.
  for (const activity of day.activities.toSorted((one, other) => one.startSec - other.startSec)) {
    const stop = activity.kind === 'set-up' ? (day.stops[walk.nextStop] ?? null) : null;
    const rows = rowsOf(walk, activity);
    const last = groups.at(-1);
    if (last === undefined || BEGINNINGS.has(activity.kind)) groups.push({ stop, rows: [...rows] });
    else last.rows.push(...rows);
  }
  return groups;
}

const BEGINNINGS: ReadonlySet<PlanActivity['kind']> = new Set(['morning', 'set-up', 'evening']);

/** Ids of the treatments that a day applies. */
export function treatmentsOf(day: PlanDay): readonly string[] {
  return [...new Set(day.stops.flatMap((stop) => stop.tasks.map((task) => task.treatmentId)))];
}

function rowsOf(walk: Walk, activity: PlanActivity): readonly TableRow[] {
  const { book } = walk;
  const { startSec, endSec } = activity;
  switch (activity.kind) {
    case 'morning':
      return [eventRow(walk, startSec, 'stop', morningWords(walk, activity))];
    case 'drive':
    case 'pack-up':
      return [];
    case 'wait':
      if (endSec - startSec < WAIT_WORTH_SAYING_SEC) return [];
      return [eventRow(walk, startSec, 'plain', RUN_ROWS.wait(clockWord(book, endSec)))];
    case 'break':
      return [eventRow(walk, startSec, 'plain', RUN_ROWS.break(formatDuration(endSec - startSec)))];
    case 'set-up':
      return stopRows(walk, activity);
    case 'swap-head':
      return [eventRow(walk, startSec, 'plain', RUN_ROWS.fit(methodWord(book, { ...activity, kind: 'machine' })))];
    case 'treat':
      return [treatRow(walk, activity)];
    case 'pour':
      return [eventRow(walk, startSec, 'refill', pourWords(walk, activity))];
    case 'refill':
      return [eventRow(walk, startSec, 'refill', refillWords(walk, activity))];
    case 'evening':
      return [eventRow(walk, startSec, 'stop', RUN_ROWS.end(endWord(walk)))];
  }
}

/** Where the day ends: home, or the fill point that the rig's day ends at. */
function endWord({ book, day }: Walk): string {
  const endId = book.rigs.find((each) => each.id === day.rigId)?.endId;
  return endId === undefined ? RUN_ROWS.endHome : placeWord(book, endId);
}

function eventRow(walk: Walk, atSec: number, look: 'stop' | 'refill' | 'plain', text: string): TableRow {
  return { look, lead: [BOX, clockWord(walk.book, atSec)], text };
}

function morningWords(walk: Walk, morning: OfKind<'morning'>): string {
  const loads = morning.fills.map((fill) => fillWord(walk, fill));
  const stock = morning.stock.map((fill) => stockWord(walk.book, fill));
  return RUN_ROWS.start([...loads, ...stock]);
}

/** What is filled in, with the number of its load; bags put on a machine are none. */
function fillWord(walk: Walk, fill: PlanFill): string {
  const load = walk.loads.get(fill);
  const material = materialWord(walk.book, fill.materialId);
  const vessel = compartmentWord(walk.book, fill.compartmentId);
  if (load === undefined) return RUN_ROWS.bags(`${amountWord(fill, walk.book.units)} ${material}`, vessel);
  walk.inUse.set(fill.compartmentId, load.number);
  return RUN_ROWS.load(load.number, `${loadWord(load, walk.book.units)} ${material}`, vessel);
}

function stopRows(walk: Walk, setUp: OfKind<'set-up'>): readonly TableRow[] {
  const { book, oneTreatment } = walk;
  const stop = walk.day.stops[walk.nextStop];
  walk.nextStop += 1;
  const name = placeWord(book, setUp.propertyId);
  const words = stop === undefined ? name : RUN_ROWS.stop(name, clockWord(book, stop.leaveSec));
  const head: TableRow = {
    look: 'stop',
    lead: [String(stop?.number ?? walk.nextStop), clockWord(book, stop?.arriveSec ?? setUp.startSec)],
    text: RUN_ROWS.actuals(words, BOX),
  };
  const details = stopDetails(book, setUp.propertyId, stop, oneTreatment);
  return [head, ...details.map((text): TableRow => ({ look: 'detail', lead: [''], text }))];
}

function treatRow(walk: Walk, treat: OfKind<'treat'>): TableRow {
  const { book } = walk;
  const loads = treat.draws.flatMap((draw) => walk.inUse.get(draw.compartmentId) ?? []);
  const method = methodWord(book, treat.method);
  return [
    BOX,
    clockWord(book, treat.startSec),
    zoneWords(walk, treat),
    treat.person === 2 ? RUN_ROWS.second(method) : method,
    formatArea(treat.areaSqFt, book.units),
    loads.join(', '),
    '',
  ];
}

function zoneWords({ book, oneTreatment }: Walk, treat: OfKind<'treat'>): string {
  const name = zoneWord(book, treat.propertyId, treat.zoneId);
  const zone = oneTreatment ? name : RUN_ROWS.zoneOf(name, treatmentWord(book, treat.treatmentId));
  const property = book.properties.find((each) => each.id === treat.propertyId);
  const slopeDeg = property?.zones.find((each) => each.id === treat.zoneId)?.slopeDeg ?? 0;
  const slope = slopeDeg >= SLOPE_WORTH_SAYING_DEG ? RUN_ROWS.slope(formatSlope(slopeDeg)) : '';
  const trim = treat.handTrim === true ? RUN_ROWS.handTrim : '';
  const rest = treat.doneSqFt > 0 ? RUN_ROWS.from(formatArea(treat.doneSqFt, book.units)) : '';
  return `${zone}${slope}${trim}${rest}`;
}

function pourWords(walk: Walk, pour: OfKind<'pour'>): string {
  return RUN_ROWS.pour(
    afterWord(walk, pour),
    pour.fills.map((fill) => fillWord(walk, fill)),
  );
}

function afterWord({ book }: Walk, { afterSqFt, propertyId, zoneId }: OfKind<'refill' | 'pour'>): string {
  if (afterSqFt <= 0) return '';
  return RUN_ROWS.after(formatArea(afterSqFt, book.units), zoneWord(book, propertyId, zoneId));
}

function refillWords(walk: Walk, refill: OfKind<'refill'>): string {
  const { book } = walk;
  const where = refill.fillPointId === '' ? RUN_ROWS.fromRig : RUN_ROWS.at(placeWord(book, refill.fillPointId));
  const rinse = refill.rinsedCompartmentIds.map((id) => RUN_ROWS.rinse(compartmentWord(book, id)));
  const fills = refill.fills.map((fill) => fillWord(walk, fill));
  const stock = refill.stock.map((fill) => stockWord(book, fill));
  return RUN_ROWS.refill(where, afterWord(walk, refill), [...rinse, ...fills, ...stock]);
}
