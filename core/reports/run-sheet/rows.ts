import type { Book, Property } from '../../book/index.ts';
import type { PlanActivity, PlanDay, PlanStop } from '../../plan/result/index.ts';
import { formatArea, formatDistance, formatDuration, formatWidth } from '../../units/index.ts';
import type { Row, Table } from '../blocks.ts';
import { propertyCautions } from '../cautions.ts';
import type { Names } from '../names.ts';
import { amountWords, clock, loadCounter, stockWords, type UnitSystem } from '../words.ts';

const WAIT_WORTH_SAYING_SEC = 60;
const COLUMNS: Table['columns'] = [
  { label: 'No.', kind: 'text' },
  { label: 'Time', kind: 'figure' },
  { label: 'What', kind: 'text' },
  { label: 'Ground', kind: 'figure' },
  { label: 'Load', kind: 'text' },
  { label: 'Done', kind: 'check' },
  { label: 'Actual', kind: 'write' },
];

type Context = {
  readonly names: Names;
  readonly system: UnitSystem;
  readonly day: PlanDay;
  readonly loads: ReturnType<typeof loadCounter>;
  /** Number of the next stop in the plan's list. */
  nextStop: number;
};

/** The whole day as one table, in the order in which it happens. */
export function runTable(book: Book, names: Names, day: PlanDay): Table {
  const context: Context = { names, system: book.units, day, loads: loadCounter(day.loads), nextStop: 0 };
  return { kind: 'table', columns: COLUMNS, rows: day.activities.flatMap((each) => rowsOf(context, each)) };
}

function rowsOf(context: Context, activity: PlanActivity): readonly Row[] {
  switch (activity.kind) {
    case 'morning':
      return morningRows(context, activity);
    case 'drive':
    case 'pack-up':
      return [];
    case 'wait':
      return activity.endSec - activity.startSec < WAIT_WORTH_SAYING_SEC
        ? []
        : [line(context, activity.startSec, `Wait until ${clock(activity.endSec, context.system)}`)];
    case 'break':
      return [line(context, activity.startSec, `Break, ${formatDuration(activity.endSec - activity.startSec)}`)];
    case 'set-up':
      return stopRows(context, activity.propertyId, activity.startSec);
    case 'swap-head': {
      const head = context.names.headName(activity.machineId, activity.headId);
      return [line(context, activity.startSec, `Fit ${head} on ${context.names.machineName(activity.machineId)}`)];
    }
    case 'treat':
      return [treatRow(context, activity)];
    case 'refill':
      return [refillRow(context, activity)];
    case 'evening':
      return [line(context, activity.startSec, 'Back home: rinse, put away, records')];
  }
}

function line(context: Context, atSec: number, words: string): Row {
  return {
    look: 'plain',
    cells: [{ text: '' }, { text: clock(atSec, context.system) }, { text: words, span: 3 }, { text: '' }, { text: '' }],
  };
}

function morningRows(context: Context, activity: Extract<PlanActivity, { kind: 'morning' }>): readonly Row[] {
  const fills = activity.fills.map((fill) => fillWords(context, fill));
  const stock = activity.stock.map((fill) => stockWords(fill, context.names, context.system));
  const words = ['Checks and loading', ...fills, ...stock].join('; ');
  return [line(context, activity.startSec, words)];
}

function fillWords(context: Context, fill: Extract<PlanActivity, { kind: 'refill' }>['fills'][number]): string {
  const number = context.loads.filled(fill.compartmentId);
  const amount = amountWords(fill, context.system);
  const material = context.names.materialName(fill.materialId);
  return `load ${number}: ${amount} of ${material} into ${context.names.compartmentName(fill.compartmentId)}`;
}

function stopRows(context: Context, propertyId: string, atSec: number): readonly Row[] {
  const stop = context.day.stops[context.nextStop];
  context.nextStop += 1;
  const property = context.names.property(propertyId);
  const name = context.names.propertyName(propertyId);
  const leave = stop === undefined ? '' : `leave ${clock(stop.leaveSec, context.system)}`;
  const head: Row = {
    look: 'strong',
    cells: [
      { text: String(stop?.number ?? context.nextStop) },
      { text: clock(stop?.arriveSec ?? atSec, context.system) },
      { text: name, span: 2 },
      { text: leave, span: 2 },
      { text: '' },
    ],
  };
  const details = property === undefined ? [] : stopDetails(context, property, stop);
  return [
    head,
    ...details.map((text): Row => ({ look: 'detail', cells: [{ text: '' }, { text: '' }, { text, span: 5 }] })),
  ];
}

/** Address and way there, gates and parking, cautions: one line each, only where there is something to say. */
function stopDetails(context: Context, property: Property, stop: PlanStop | undefined): readonly string[] {
  const { system } = context;
  const drive =
    stop === undefined ? '' : `drive ${formatDistance(stop.distanceM, system)}, ${formatDuration(stop.driveSec)}`;
  const address = property.address === property.name ? '' : property.address;
  const used = new Set(
    stop?.tasks.flatMap((task) => context.names.zone(property.id, task.zoneId)?.gateIds ?? []) ?? [],
  );
  const gates = property.gates
    .filter((gate) => used.has(gate.id))
    .map((gate) => `${gate.name} ${formatWidth(gate.clearWidthIn, system)}${gate.locked ? ', locked' : ''}`);
  const access = [...gates, property.noTrailer ? 'no room for a trailer' : ''].filter((each) => each !== '');
  const cautions = propertyCautions(property);
  return [
    [address, drive].filter((each) => each !== '').join(' · '),
    access.length === 0 ? '' : `Access: ${access.join('; ')}`,
    cautions.length === 0 ? '' : `Mind: ${cautions.join(', ')}`,
    property.note === '' ? '' : `Note: ${property.note}`,
  ].filter((each) => each !== '');
}

function treatRow(context: Context, activity: Extract<PlanActivity, { kind: 'treat' }>): Row {
  const { names, system } = context;
  const zone = names.zoneName(activity.propertyId, activity.zoneId);
  const how = `${names.treatmentName(activity.treatmentId)}, ${names.methodName(activity.method)}`;
  const begun = activity.doneSqFt > 0 ? `, from ${formatArea(activity.doneSqFt, system)} on` : '';
  const loads = activity.draws.flatMap((draw) => context.loads.current(draw.compartmentId) ?? []);
  return {
    look: 'plain',
    cells: [
      { text: '' },
      { text: clock(activity.startSec, system) },
      { text: `${zone}${begun}: ${how}` },
      { text: formatArea(activity.areaSqFt, system) },
      { text: loads.join(', ') },
      { text: '' },
      { text: '' },
    ],
  };
}

function refillRow(context: Context, activity: Extract<PlanActivity, { kind: 'refill' }>): Row {
  const { names, system } = context;
  const where = activity.fillPointId === '' ? 'from the rig' : `at ${names.placeName(activity.fillPointId)}`;
  const zone = names.zoneName(activity.propertyId, activity.zoneId);
  const after = activity.afterSqFt > 0 ? ` after ${formatArea(activity.afterSqFt, system)} of ${zone}` : '';
  const rinsed = activity.rinsedCompartmentIds.map((id) => `rinse ${names.compartmentName(id)}`);
  const fills = activity.fills.map((fill) => fillWords(context, fill));
  const stock = activity.stock.map((fill) => stockWords(fill, names, system));
  const words = `Refill ${where}${after}: ${[...rinsed, ...fills, ...stock].join('; ')}`;
  return {
    look: 'refill',
    cells: [
      { text: '' },
      { text: clock(activity.startSec, system) },
      { text: words, span: 3 },
      { text: '' },
      { text: '' },
    ],
  };
}
