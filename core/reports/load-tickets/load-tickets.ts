import type { Book, Mix } from '../../book/index.ts';
import type { PlanDay, PlanLoad } from '../../plan/result/index.ts';
import {
  formatArea,
  formatProductAmount,
  formatProductRate,
  formatRate,
  formatVolume,
  formatWeight,
} from '../../units/index.ts';
import { type Block, left, right, type Sheet, type TableRow } from '../blocks.ts';
import { USUAL_CAUTIONS } from '../cautions.ts';
import type { DayInput } from '../input.ts';
import { CAUTIONS, dateWord } from '../texts/index.ts';
import { amountWord, clockWord, compartmentWord, materialWord, placeWord, zoneWord } from '../words.ts';
import { mixingOrder } from './mixing-order.ts';

const FLUID_OUNCES_PER_GALLON = 128;

/** One ticket per load: what goes in, in which order, which ground it covers, what to do with what is left. */
export function loadTickets({ book, plan, day }: DayInput): Sheet {
  return {
    id: `load-tickets ${day.date} ${day.rigId}`,
    title: `Load tickets: ${day.rigName}`,
    subtitle: dateWord(day.date),
    invented: book.invented || plan.invented,
    blocks: [USUAL_CAUTIONS, ...day.loads.map((load) => ticket(book, day, load))],
  };
}

function ticket(book: Book, day: PlanDay, load: PlanLoad): Block {
  const mix = book.mixes.find((each) => each.id === load.materialId);
  return {
    kind: 'group',
    blocks: [
      {
        kind: 'heading',
        text: `Load ${load.number} of ${day.loads.length}: ${materialWord(book, load.materialId)}`,
      },
      { kind: 'facts', facts: facts(book, load, mix) },
      contents(book, load, mix),
      ...(mix === undefined ? [] : [mixingOrder(book, mix)]),
      covers(book, load),
      { kind: 'note', text: leftWords(book, day, load) },
      { kind: 'note', text: CAUTIONS.short },
      { kind: 'blanks', labels: ['Mixed by', 'Time', 'Really put in', 'Left at the end'] },
    ],
  };
}

function whereWord(book: Book, load: PlanLoad): string {
  if (load.fillPointId !== '') return placeWord(book, load.fillPointId);
  if (load.atPropertyId === '') return 'the yard, before leaving';
  const property = placeWord(book, load.atPropertyId);
  return load.fromBags ? `${property}, from the bags on the machine` : `the rig, at ${property}`;
}

function facts(book: Book, load: PlanLoad, mix: Mix | undefined) {
  const { units } = book;
  return [
    { label: 'Into', value: compartmentWord(book, load.compartmentId) },
    { label: 'Fill at', value: `${clockWord(book, load.startSec)}, ${whereWord(book, load)}` },
    { label: 'Covers', value: formatArea(load.coversSqFt, units) },
    ...(mix === undefined ? [] : [{ label: 'Carrier rate', value: formatRate(mix.carrierGalPer1000SqFt, units) }]),
  ];
}

function contents(book: Book, load: PlanLoad, mix: Mix | undefined): Block {
  return {
    kind: 'table',
    columns: [left('What goes in'), right('Rate'), right('Amount')],
    rows: mix === undefined ? dryRows(book, load) : mixRows(book, load, mix),
  };
}

/** Water is what is missing to the volume once the liquid products are in; dry products take up no room worth counting. */
function mixRows(book: Book, load: PlanLoad, mix: Mix): readonly TableRow[] {
  const { units } = book;
  // What lies below the reach of the pump is mixed like the rest.
  const share = load.volumeGal > 0 ? 1 + load.sumpGal / load.volumeGal : 1;
  const products = load.products.map((each) => ({ ...each, amount: each.amount * share }));
  const liquidGal = products.reduce(
    (sum, each) => sum + (each.unit === 'fl-oz' ? each.amount / FLUID_OUNCES_PER_GALLON : 0),
    0,
  );
  const before: readonly TableRow[] =
    load.beforeGal > 0 ? [['Still in the tank', '', formatVolume(load.beforeGal, units)]] : [];
  return [
    ...before,
    ['Water', '', formatVolume(Math.max(0, load.volumeGal + load.sumpGal - liquidGal), units)],
    ...products.map((each) => {
      const rate = mix.parts.find((part) => part.productId === each.productId)?.amountPer1000SqFt;
      return [
        materialWord(book, each.productId),
        rate === undefined ? '' : formatProductRate(rate, each.unit, units),
        formatProductAmount(each.amount, each.unit, units),
      ];
    }),
    ...(load.sumpGal > 0 ? [['Of it below the reach of the pump', '', formatVolume(load.sumpGal, units)]] : []),
    sumRow('In the tank when filled', formatVolume(load.beforeGal + load.volumeGal + sumpInTank(book, load), units)),
  ];
}

/** What lies below the reach of the pump in the tanks of a load, filled with its first one. */
function sumpInTank(book: Book, load: PlanLoad): number {
  const [ownerId, parts = ''] = load.compartmentId.split('/');
  const tanks = book.machines.find((each) => each.id === ownerId)?.compartments ?? [];
  const own = tanks.filter((each) => parts.split('+').includes(each.id));
  const from = book.handMethods.find((each) => each.id === load.compartmentId)?.drawsFrom;
  const byHand = from !== undefined && 'sumpGal' in from ? from.sumpGal : 0;
  return own.reduce((sum, each) => sum + (each.kind === 'tank' ? each.sumpGal : 0), byHand);
}

function dryRows(book: Book, load: PlanLoad): readonly TableRow[] {
  const { units } = book;
  const product = book.products.find((each) => each.id === load.materialId);
  const bagLb = product?.bagLb;
  const rows: TableRow[] = [];
  if (load.beforeLb > 0) rows.push(['Still in the hopper', '', formatWeight(load.beforeLb, units)]);
  for (const each of load.products) {
    const rate = each.productId === load.materialId ? spreadRate(book, load) : '';
    rows.push([materialWord(book, each.productId), rate, formatProductAmount(each.amount, each.unit, units)]);
  }
  if (bagLb !== undefined) rows.push(['That is, in bags', '', bagWords(load.weightLb, bagLb, units)]);
  rows.push(sumRow('In the hopper when filled', formatWeight(load.beforeLb + load.weightLb, units)));
  return rows;
}

/** What the load comes to on the ground that it covers, for setting the spreader. */
function spreadRate(book: Book, load: PlanLoad): string {
  if (load.coversSqFt <= 0) return '';
  const spreadLb = load.beforeLb + load.weightLb - load.leftLb;
  return formatProductRate((spreadLb / load.coversSqFt) * 1000, 'lb', book.units);
}

function sumRow(label: string, amount: string): TableRow {
  return { look: 'sum', lead: [label], text: '', tail: [amount] };
}

/** "3 bags of 50 lb and 12.5 lb". */
function bagWords(weightLb: number, bagLb: number, units: Book['units']): string {
  const whole = Math.floor(weightLb / bagLb + 1e-9);
  const rest = weightLb - whole * bagLb;
  const bags = whole === 0 ? '' : `${whole} ${whole === 1 ? 'bag' : 'bags'} of ${formatWeight(bagLb, units)}`;
  const loose = rest > 0.05 ? formatWeight(rest, units) : '';
  return [bags, loose].filter((each) => each !== '').join(' and ');
}

/** One row per property; a zone that is not begun here says from where on. */
function covers(book: Book, load: PlanLoad): Block {
  const { units } = book;
  const properties = [...new Set(load.covers.map((each) => each.propertyId))];
  return {
    kind: 'table',
    columns: [left('Ground it covers'), left('Zones'), right('Area')],
    rows: properties.map((id) => {
      const here = load.covers.filter((each) => each.propertyId === id);
      const zones = here.map((each) => {
        const from = each.fromSqFt > 0 ? ` from ${formatArea(each.fromSqFt, units)} on` : '';
        return `${zoneWord(book, id, each.zoneId)}${from}`;
      });
      const area = here.reduce((sum, each) => sum + each.areaSqFt, 0);
      return [placeWord(book, id), zones.join(', '), formatArea(area, units)];
    }),
  };
}

function leftWords(book: Book, day: PlanDay, load: PlanLoad): string {
  const left = load.kind === 'tank' ? load.leftGal : load.leftLb;
  if (left <= 0) {
    return `${load.why} What is left all the same goes onto ground that the label names, never above its rate.`.trim();
  }
  const amount = amountWord({ volumeGal: load.leftGal, weightLb: load.leftLb }, book.units);
  const next = day.loads.find((each) => each.number > load.number && each.compartmentId === load.compartmentId);
  if (next !== undefined && next.materialId === load.materialId) {
    return `${amount} is planned to be still in it when load ${next.number} goes on top.`;
  }
  const advice = day.leftOver.find((each) => each.compartmentId === load.compartmentId)?.advice ?? '';
  return `${amount} is planned to be left. ${advice}`.trim();
}
