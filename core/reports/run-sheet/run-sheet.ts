import type { Book, Position, Property } from '../../book/index.ts';
import type { PlanActivity, PlanStop } from '../../plan/result/index.ts';
import { formatArea, formatClock, formatDistance, formatDuration, formatWidth } from '../../units/index.ts';
import { type Block, left, right, type Sheet } from '../blocks.ts';
import { CAUTION_WORDS, USUAL_CAUTIONS } from '../cautions.ts';
import type { DayInput } from '../input.ts';
import { amountWord, compartmentWord, materialWord, methodWord, placeWord, treatmentWord, zoneWord } from '../words.ts';

type Refill = Extract<PlanActivity, { readonly kind: 'refill' }>;

/** The day in order: stops with times, gates, zones and loads, and each refill where it falls. */
export function runSheet(input: DayInput): Sheet {
  const { book, day } = input;
  const refills = day.activities.filter((each): each is Refill => each.kind === 'refill');
  return {
    id: 'run-sheet',
    title: `Run sheet: ${day.rigName}`,
    subtitle: day.date,
    invented: book.invented,
    blocks: [
      summary(input),
      dayMap(input),
      USUAL_CAUTIONS,
      { kind: 'page-break' },
      ...day.stops.flatMap((stop) => stopBlocks(book, stop, refills)),
      ...ending(input),
    ],
  };
}

function summary({ book, plan, day }: DayInput): Block {
  const { units } = book;
  return {
    kind: 'facts',
    facts: [
      { label: 'Round', value: plan.roundName },
      {
        label: 'Leave the yard',
        value: formatClock(day.activities.find((each) => each.kind === 'drive')?.startSec ?? day.startSec),
      },
      { label: 'Home, all done', value: formatClock(day.endSec) },
      { label: 'Day', value: formatDuration(day.paidSec) },
      { label: 'Stops', value: String(day.stops.length) },
      { label: 'Turf', value: formatArea(day.treatedSqFt, units) },
      { label: 'Loads', value: String(day.loads.length) },
      {
        label: 'Driving',
        value: `${formatDistance(day.distanceM, units)}, ${formatDuration(day.driveSec)}${plan.travel === 'matrix' ? '' : ' (estimate)'}`,
      },
    ],
  };
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
    // The way from and to the shop would shrink the lawns to dots.
    route: route.slice(0, -1),
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

function stopBlocks(book: Book, stop: PlanStop, refills: readonly Refill[]): readonly Block[] {
  const property = book.properties.find((each) => each.id === stop.propertyId);
  const here = refills.filter(
    (each) =>
      each.startSec < stop.leaveSec &&
      each.startSec >= stop.arriveSec - stop.driveSec &&
      each.propertyId === stop.propertyId,
  );
  const before = here.filter((each) => each.endSec <= stop.arriveSec);
  const during = here.filter((each) => each.endSec > stop.arriveSec);
  return [
    ...before.map((each) => refillNote(book, each)),
    {
      kind: 'heading',
      text: `${stop.number}  ${stop.name}   ${formatClock(stop.arriveSec)} to ${formatClock(stop.leaveSec)}`,
    },
    ...(property === undefined ? [] : [stopFacts(book, property)]),
    {
      kind: 'table',
      columns: [
        left('Done'),
        left('Zone'),
        left('Treatment'),
        left('With'),
        right('Area'),
        right('Start'),
        right('Load'),
      ],
      rows: stop.tasks.map((task) => [
        '[  ]',
        zoneWord(book, task.propertyId, task.zoneId),
        treatmentWord(book, task.treatmentId),
        methodWord(book, task.method),
        formatArea(task.areaSqFt, book.units),
        formatClock(task.startSec),
        task.loadNumbers.join(', '),
      ]),
    },
    ...during.map((each) => refillNote(book, each)),
    { kind: 'blanks', labels: ['Started', 'Finished', 'Used', 'Wind and temperature', 'Remarks'] },
  ];
}

function stopFacts(book: Book, property: Property): Block {
  const gates = property.gates.map(
    (gate) => `${gate.name} ${formatWidth(gate.clearWidthIn, book.units)}${gate.locked ? ', locked' : ''}`,
  );
  const cautions = property.cautions.map((each) => CAUTION_WORDS[each]);
  const facts = [
    { label: 'Address', value: property.address },
    { label: 'Gates', value: gates.join('; ') },
    { label: 'Mind', value: cautions.join(', ') },
    { label: 'Note', value: property.note },
  ];
  return { kind: 'facts', facts: facts.filter((each) => each.value !== '') };
}

function refillNote(book: Book, refill: Refill): Block {
  const where = refill.fillPointId === '' ? 'from the rig' : `at ${placeWord(book, refill.fillPointId)}`;
  const fills = refill.fills.map(
    (fill) =>
      `${amountWord(fill, book.units)} ${materialWord(book, fill.materialId)} into ${compartmentWord(book, fill.compartmentId)}`,
  );
  const stock = refill.stock.map((fill) =>
    fill.stock === 'water'
      ? `${amountWord(fill, book.units)} water into the nurse tank`
      : `${fill.bags} bags ${materialWord(book, fill.productId)} onto the rig`,
  );
  const rinse =
    refill.rinsedCompartmentIds.length === 0
      ? ''
      : ` Rinse ${refill.rinsedCompartmentIds.map((id) => compartmentWord(book, id)).join(', ')} first.`;
  return {
    kind: 'note',
    text: `[  ] ${formatClock(refill.startSec)}  Refill ${where}: ${[...fills, ...stock].join('; ')}.${rinse} ${refill.reason}`,
  };
}

function ending({ book, day }: DayInput): readonly Block[] {
  const left = day.leftOver.map(
    (each) => `${compartmentWord(book, each.compartmentId)}: ${amountWord(each, book.units)} left. ${each.advice}`,
  );
  return [
    { kind: 'heading', text: `Home ${formatClock(day.endSec)}` },
    {
      kind: 'checklist',
      items:
        left.length === 0
          ? [
              'All tanks and hoppers are planned to be empty; if something is left, use it up only on ground that its label names.',
            ]
          : left,
    },
  ];
}
