import type { Book } from '../../book/index.ts';
import type { PlanLoad } from '../../plan/result/index.ts';
import {
  formatArea,
  formatClock,
  formatProductAmount,
  formatRate,
  formatVolume,
  formatWeight,
} from '../../units/index.ts';
import { type Block, left, right, type Sheet } from '../blocks.ts';
import { USUAL_CAUTIONS } from '../cautions.ts';
import type { DayInput } from '../input.ts';
import { amountWord, compartmentWord, materialWord, placeWord, zoneWord } from '../words.ts';

/** One ticket per load: what goes in, which ground it covers, what to do with what is left. */
export function loadTickets({ book, day }: DayInput): Sheet {
  return {
    id: 'load-tickets',
    title: `Load tickets: ${day.rigName}`,
    subtitle: day.date,
    invented: book.invented,
    blocks: day.loads.flatMap((load, index) => [
      ...(index === 0 ? [] : [{ kind: 'page-break' as const }]),
      ...ticket(book, load),
    ]),
  };
}

function ticket(book: Book, load: PlanLoad): readonly Block[] {
  return [
    { kind: 'heading', text: `Load ${load.number}: ${materialWord(book, load.materialId)}` },
    { kind: 'facts', facts: facts(book, load) },
    contents(book, load),
    covers(book, load),
    ...(load.kind === 'tank' ? [MIXING] : []),
    { kind: 'note', text: leftWords(book, load) },
    { kind: 'blanks', labels: ['Mixed by', 'Time', 'Really put in', 'Left in the end'] },
    USUAL_CAUTIONS,
  ];
}

function facts(book: Book, load: PlanLoad) {
  const mix = book.mixes.find((each) => each.id === load.materialId);
  const where =
    load.fillPointId !== ''
      ? placeWord(book, load.fillPointId)
      : load.atPropertyId === ''
        ? 'the yard, before leaving'
        : `the rig, at ${placeWord(book, load.atPropertyId)}`;
  return [
    { label: 'Into', value: compartmentWord(book, load.compartmentId) },
    { label: 'When and where', value: `${formatClock(load.startSec)}, ${where}` },
    { label: 'Covers', value: formatArea(load.coversSqFt, book.units) },
    ...(mix === undefined
      ? []
      : [{ label: 'Carrier the mix counts on', value: formatRate(mix.carrierGalPer1000SqFt, book.units) }]),
  ];
}

function contents(book: Book, load: PlanLoad): Block {
  const { units } = book;
  const before = load.kind === 'tank' ? load.beforeGal : load.beforeLb;
  const rows: (readonly string[])[] = [];
  if (before > 0)
    rows.push(['Still in it', load.kind === 'tank' ? formatVolume(before, units) : formatWeight(before, units)]);
  rows.push([
    load.kind === 'tank' ? 'Fill up with this much in all (water and products)' : 'Pour in',
    amountWord(load, units),
  ]);
  for (const product of load.products)
    rows.push([materialWord(book, product.productId), formatProductAmount(product.amount, product.unit, units)]);
  const bagLb = book.products.find((each) => each.id === load.materialId)?.bagLb;
  if (load.kind === 'dry' && bagLb !== undefined)
    rows.push(['In bags', `${(load.weightLb / bagLb).toFixed(1)} of ${bagLb} lb`]);
  return { kind: 'table', columns: [left('What goes in'), right('Amount')], rows };
}

function covers(book: Book, load: PlanLoad): Block {
  return {
    kind: 'table',
    columns: [left('Ground'), left('Zone'), right('From'), right('Area')],
    rows: load.covers.map((each) => [
      placeWord(book, each.propertyId),
      zoneWord(book, each.propertyId, each.zoneId),
      each.fromSqFt > 0 ? `after ${formatArea(each.fromSqFt, book.units)}` : 'its start',
      formatArea(each.areaSqFt, book.units),
    ]),
  };
}

const MIXING: Block = {
  kind: 'checklist',
  items: [
    'The order on the label stands above any other.',
    'Where the label is silent: half the water first, agitation on, dry products, then liquid suspensions, then concentrates, the rest of the water last (common practice, no source).',
    'Let each product disperse before the next one; keep agitating until the tank is empty.',
  ],
};

function leftWords(book: Book, load: PlanLoad): string {
  const left = load.kind === 'tank' ? load.leftGal : load.leftLb;
  if (left <= 0)
    return 'Made to measure: nothing is planned to be left. What is left all the same goes onto ground that the label names, never above its rate.';
  const amount = load.kind === 'tank' ? formatVolume(left, book.units) : formatWeight(left, book.units);
  return `${amount} is planned to be still in it when it is filled again or the day ends.`;
}
