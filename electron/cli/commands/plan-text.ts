import type { Book } from '../../../core/book/index.ts';
import {
  type GroundSums,
  groundWords,
  type Plan,
  type PlanActivity,
  type PlanDay,
  type PlanLoad,
  type PlanStop,
  type PlanTask,
} from '../../../core/plan/result/index.ts';
import {
  formatArea,
  formatClock,
  formatDistance,
  formatDuration,
  formatLargeArea,
  formatMoney,
  formatProductAmount,
  formatShare,
  formatVolume,
  formatWeight,
} from '../../../core/units/index.ts';
import { type Column, counted, rigDays, tableLines } from '../text/index.ts';

/** A plan for people: every day with its stops, loads, refills and what to carry, then what could not be placed. */
export function planText(book: Book, plan: Plan): string {
  return [
    `${plan.bookName}: ${plan.roundName}`,
    ...(plan.invented ? ['Invented data, not for use.'] : []),
    '',
    ...plan.days.flatMap((day) => dayLines(book, day)),
    ...unplacedLines(book, plan),
    ...totalLines(book, plan),
  ].join('\n');
}

function dayLines(book: Book, day: PlanDay): readonly string[] {
  const clock = `${formatClock(day.startSec)} to ${formatClock(day.endSec)}`;
  const overtime = day.overtimeSec > 0 ? `, ${formatDuration(day.overtimeSec)} of it overtime` : '';
  return [
    `${day.date}, ${day.rigName}: ${clock}, ${formatDuration(day.paidSec)}${overtime}`,
    `  treating ${formatDuration(day.treatSec)}, driving ${formatDuration(day.driveSec)} (${formatDistance(day.distanceM)}), refilling ${formatDuration(day.refillSec)}; ${formatLargeArea(day.treatedSqFt)}; ${formatMoney(day.costUsd)}`,
    ...indent(groundLines(day)),
    '',
    ...indent(stopLines(book, day)),
    '',
    ...indent(loadLines(book, day)),
    '',
    ...indent(refillLines(book, day)),
    ...indent(carryLines(day)),
    ...indent(leftLines(book, day)),
    ...indent(day.whatIf.map((each) => `${each.words}.`)),
    '',
  ];
}

function groundLines(sums: GroundSums): readonly string[] {
  const words = groundWords(sums, (sqFt) => formatArea(sqFt));
  return words === '' ? [] : [`ground: ${formatArea(sums.treatedSqFt)} treated, ${words}`];
}

const indent = (lines: readonly string[]): readonly string[] => lines.map((each) => (each === '' ? '' : `  ${each}`));

type StopRow = { readonly stop: PlanStop; readonly task: PlanTask; readonly first: boolean };

function stopLines(book: Book, day: PlanDay): readonly string[] {
  const rows = day.stops.flatMap((stop) =>
    stop.tasks.map((task, index): StopRow => ({ stop, task, first: index === 0 })),
  );
  const several = new Set(rows.map(({ task }) => task.treatmentId)).size > 1;
  const shared = rows.some(({ task }) => task.person === 2);
  const driven = rows.some(({ task }) => task.reckoned?.from === 'passes');
  const onFirst = (text: (stop: PlanStop) => string) => (row: StopRow) => (row.first ? text(row.stop) : '');
  const columns: readonly Column<StopRow>[] = [
    { title: 'stop', cell: onFirst((stop) => String(stop.number)), right: true },
    { title: 'arrive', cell: onFirst((stop) => formatClock(stop.arriveSec)), right: true },
    { title: 'leave', cell: onFirst((stop) => formatClock(stop.leaveSec)), right: true },
    { title: 'property', cell: onFirst((stop) => stop.name) },
    { title: 'zone', cell: ({ task }) => zoneWords(book, task) },
    ...(several ? [{ title: 'treatment', cell: ({ task }: StopRow) => treatmentName(book, task.treatmentId) }] : []),
    { title: 'with', cell: ({ task }) => methodName(book, task.method) },
    ...(shared ? [{ title: 'person', cell: ({ task }: StopRow) => String(task.person), right: true }] : []),
    { title: 'start', cell: ({ task }) => formatClock(task.startSec), right: true },
    { title: 'ground', cell: ({ task }) => formatArea(task.areaSqFt), right: true },
    ...(driven ? COVER_COLUMNS : []),
    { title: 'amount', cell: ({ task }) => amount(task.volumeGal, task.weightLb), right: true },
    { title: 'load', cell: ({ task }) => task.loadNumbers.join(', ') },
  ];
  return tableLines(columns, rows);
}

function zoneWords(book: Book, { propertyId, zoneId, handTrim }: PlanTask): string {
  return `${zoneName(book, propertyId, zoneId)}${handTrim === true ? ', hand trim' : ''}`;
}

/** What a machine covers for the ground that it treats, the most passes over one place, and what it leaves. */
const COVER_COLUMNS: readonly Column<StopRow>[] = [
  { title: 'covered', cell: ({ task }) => passesOf(task, ({ coveredSqFt }) => formatArea(coveredSqFt)), right: true },
  { title: 'overlap', cell: ({ task }) => passesOf(task, (each) => formatShare(each.overlapShare)), right: true },
  { title: 'worst', cell: ({ task }) => passesOf(task, ({ worstRate }) => `${worstRate} x`), right: true },
  {
    title: 'not reached',
    cell: ({ task }) => passesOf(task, (each) => (each.notReachedSqFt > 0 ? formatArea(each.notReachedSqFt) : '')),
    right: true,
  },
];

type Passes = Extract<PlanTask['reckoned'], { readonly from: 'passes' }>;

/** A figure of the passes; '' for what is not reckoned from them. */
function passesOf({ reckoned }: PlanTask, words: (passes: Passes) => string): string {
  return reckoned?.from === 'passes' ? words(reckoned) : '';
}

function loadLines(book: Book, day: PlanDay): readonly string[] {
  const columns: readonly Column<PlanLoad>[] = [
    { title: 'load', cell: (load) => String(load.number), right: true },
    { title: 'at', cell: (load) => formatClock(load.startSec), right: true },
    { title: 'where', cell: (load) => placeOf(book, load) },
    { title: 'into', cell: (load) => compartmentName(book, load.compartmentId) },
    { title: 'before', cell: (load) => amount(load.beforeGal, load.beforeLb, load.kind), right: true },
    { title: 'goes in', cell: (load) => amount(load.volumeGal, load.weightLb, load.kind), right: true },
    { title: 'products', cell: (load) => productList(book, load.products) },
    { title: 'covers', cell: (load) => formatArea(load.coversSqFt), right: true },
    { title: 'left', cell: (load) => amount(load.leftGal, load.leftLb, load.kind), right: true },
  ];
  return tableLines(columns, day.loads);
}

type Refill = Extract<PlanActivity, { readonly kind: 'refill' | 'pour' }>;

function refillLines(book: Book, day: PlanDay): readonly string[] {
  const refills = day.activities.filter((each): each is Refill => each.kind === 'refill' || each.kind === 'pour');
  if (refills.length === 0) return ['No refill on the way.', ''];
  const lines = refills.map((each) => {
    if (each.kind === 'pour') {
      const poured = each.fills.map((fill) => amount(fill.volumeGal, fill.weightLb)).join(', ');
      return `${formatClock(each.startSec)} ${poured} from ${compartmentName(book, each.fromCompartmentId)}`;
    }
    const from = each.fillPointId === '' ? 'from the rig' : `at ${fillPointName(book, each.fillPointId)}`;
    return `${formatClock(each.startSec)} refill ${from}: ${each.reason}`;
  });
  return [...lines, ''];
}

function carryLines(day: PlanDay): readonly string[] {
  const items = day.carry.map((each) => `${each.label} ${carried(each.amount, each.unit)}`.trim());
  const weight = `${formatWeight(day.carryWeightLb)} of ${formatWeight(day.payloadLb)} payload`;
  return [`In the morning (${weight}): ${items.join('; ')}`];
}

function carried(value: number, unit: string): string {
  if (unit === 'gal') return formatVolume(value);
  if (unit === 'lb') return formatWeight(value);
  if (unit === 'fl-oz' || unit === 'oz') return formatProductAmount(value, unit);
  return unit === '' ? '' : `${value} ${unit}`;
}

function leftLines(book: Book, day: PlanDay): readonly string[] {
  return day.leftOver.map(
    (each) =>
      `Left in ${compartmentName(book, each.compartmentId)}: ${amount(each.volumeGal, each.weightLb)}. ${each.advice}`,
  );
}

function unplacedLines(book: Book, plan: Plan): readonly string[] {
  if (plan.unplaced.length === 0) return [];
  const lines = plan.unplaced.flatMap((each) => [
    `  ${each.propertyName}, ${each.zoneName}: ${treatmentName(book, each.treatmentId)}`,
    ...each.reasons.map((reason) => `    ${reason.rigId}: ${reason.words} [${reason.code}]`),
  ]);
  return [`Not placed: ${plan.unplaced.length}`, ...lines, ''];
}

function totalLines(book: Book, plan: Plan): readonly string[] {
  const { totals } = plan;
  const products = totals.products.length === 0 ? '' : `; to buy: ${toBuy(book, plan)}`;
  return [
    `${rigDays(plan.days.map((day) => day.date))}, ${counted(totals.stops, 'stop')}, ${formatLargeArea(totals.treatedSqFt)}, ${counted(totals.loads, 'load')}, ${counted(totals.refills, 'refill')} (${totals.fillPointVisits} at fill points)`,
    ...groundLines(totals),
    `${formatDuration(totals.paidSec)} paid, ${formatDuration(totals.driveSec)} driving (${formatDistance(totals.distanceM)}, ${travelWords(plan)}), ${formatMoney(totals.costUsd)}`,
    ...(plan.evenDays === undefined ? [] : [`of this for days of unlike length: ${plan.evenDays.words}`]),
    `${formatVolume(totals.waterGal)} of water${products}`,
    `seed ${plan.seed}, ${plan.iterations} iterations`,
  ];
}

const toBuy = (book: Book, plan: Plan): string => productList(book, plan.totals.products);

function travelWords({ travel, travelCredit }: Plan): string {
  if (travel === 'estimate') return 'an estimate from straight lines';
  if (travel === 'matrix') return 'from the imported matrix';
  const roads = travelCredit === undefined ? '' : `by road: ${travelCredit}`;
  if (travel === 'roads') return roads === '' ? 'by road' : roads;
  const partly = 'partly an estimate from straight lines';
  return roads === '' ? partly : `${partly}, else ${roads}`;
}

function amount(volumeGal: number, weightLb: number, kind: 'tank' | 'dry' = weightLb > 0 ? 'dry' : 'tank'): string {
  if (volumeGal === 0 && weightLb === 0) return '0';
  return kind === 'dry' ? formatWeight(weightLb) : formatVolume(volumeGal);
}

function productList(book: Book, products: PlanLoad['products']): string {
  return products
    .map((each) => {
      const name = book.products.find(({ id }) => id === each.productId)?.name ?? each.productId;
      return `${name} ${formatProductAmount(each.amount, each.unit)}`;
    })
    .join('; ');
}

function zoneName(book: Book, propertyId: string, zoneId: string): string {
  const property = book.properties.find((each) => each.id === propertyId);
  return property?.zones.find((each) => each.id === zoneId)?.name ?? zoneId;
}

function treatmentName(book: Book, id: string): string {
  return book.treatments.find((each) => each.id === id)?.name ?? id;
}

function methodName(book: Book, method: PlanTask['method']): string {
  if (method.kind === 'hand') {
    return book.handMethods.find((each) => each.id === method.handMethodId)?.name ?? method.handMethodId;
  }
  const machine = book.machines.find((each) => each.id === method.machineId);
  const head = machine?.heads.find((each) => each.id === method.headId);
  return `${machine?.name ?? method.machineId}, ${head?.name ?? method.headId}`;
}

function fillPointName(book: Book, id: string): string {
  return book.fillPoints.find((each) => each.id === id)?.name ?? id;
}

function placeOf(book: Book, load: PlanLoad): string {
  if (load.fillPointId !== '') return fillPointName(book, load.fillPointId);
  const property = book.properties.find((each) => each.id === load.atPropertyId);
  if (property === undefined) return 'home, in the morning';
  return load.fromBags ? `machine at ${property.name}` : `rig at ${property.name}`;
}

/** "Machine, tank" for "machineId/compartmentId"; joined tanks are told together. */
function compartmentName(book: Book, id: string): string {
  const [machineId = '', parts = ''] = id.split('/');
  const machine = book.machines.find((each) => each.id === machineId);
  if (machine === undefined) return book.handMethods.find((each) => each.id === id)?.name ?? id;
  const names = parts.split('+').map((part) => machine.compartments.find((each) => each.id === part)?.name ?? part);
  return `${machine.name}, ${names.join(' and ')}`;
}
