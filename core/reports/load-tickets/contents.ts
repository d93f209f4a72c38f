import type { Book, Mix } from '../../book/index.ts';
import type { PlanLoad } from '../../plan/result/index.ts';
import {
  formatMeasured,
  formatProductRate,
  formatVolume,
  formatWeight,
  formatWithSmaller,
  type MeasuredUnit,
} from '../../units/index.ts';
import { type Block, left, right, type TableRow } from '../blocks.ts';
import { LOAD_TICKETS } from '../texts/index.ts';
import { materialWord } from '../words.ts';
import { mixAmounts } from './amounts.ts';
import { dryRate } from './dry-rate.ts';

type Units = Book['units'];

/** What goes into the compartment: each in the unit it is measured in, and with the next smaller one beside it. */
export function contents(book: Book, load: PlanLoad, mix: Mix | undefined): Block {
  const { what, rate, amount, smaller } = LOAD_TICKETS.contents;
  return {
    kind: 'table',
    columns: [left(what), right(rate), right(amount), left(smaller)],
    rows: load.kind === 'tank' ? mixRows(book, load, mix) : dryRows(book, load),
  };
}

function mixRows(book: Book, load: PlanLoad, mix: Mix | undefined): readonly TableRow[] {
  const { units } = book;
  const { waterGal, products } = mixAmounts(load);
  const sumpGal = sumpInTank(book, load);
  // The first load fills what lies below the pump as well; at every later one it is still there.
  const stillGal = load.beforeGal + sumpGal - load.sumpGal;
  const before = stillGal > 0 ? [amountRow(LOAD_TICKETS.stillInTank, '', stillGal, 'gal', units)] : [];
  const sump = sumpGal > 0 ? [amountRow(LOAD_TICKETS.belowPump, '', sumpGal, 'gal', units)] : [];
  return [
    ...before,
    amountRow(LOAD_TICKETS.water, '', waterGal, 'gal', units),
    ...products.map((each) => {
      const rate = mix?.parts.find((part) => part.productId === each.productId)?.amountPer1000SqFt;
      const words = rate === undefined ? '' : formatProductRate(rate, each.unit, units);
      return amountRow(materialWord(book, each.productId), words, each.amount, each.unit, units);
    }),
    sumRow(LOAD_TICKETS.tankSum, formatVolume(load.beforeGal + load.volumeGal + sumpGal, units)),
    ...sump,
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
  const before = load.beforeLb > 0 ? [amountRow(LOAD_TICKETS.stillInHopper, '', load.beforeLb, 'lb', units)] : [];
  return [
    ...before,
    ...load.products.map((each) => {
      const lbPer1000SqFt = each.productId === load.materialId ? dryRate(book, load) : null;
      const rate = lbPer1000SqFt === null ? '' : formatProductRate(lbPer1000SqFt, 'lb', units);
      const bagLb = book.products.find((product) => product.id === each.productId)?.bagLb;
      const [name, ...rest] = amountRow(materialWord(book, each.productId), rate, each.amount, each.unit, units);
      const isInBags = bagLb !== undefined && each.unit === 'lb' && each.amount >= bagLb;
      return [name ?? '', ...rest.slice(0, 2), isInBags ? bagWords(each.amount, bagLb, units) : (rest[2] ?? '')];
    }),
    sumRow(LOAD_TICKETS.hopperSum, formatWeight(load.beforeLb + load.weightLb, units)),
  ];
}

function amountRow(what: string, rate: string, amount: number, unit: MeasuredUnit, units: Units): readonly string[] {
  return [what, rate, formatMeasured(amount, unit, units), formatWithSmaller(amount, unit, units)];
}

function sumRow(label: string, amount: string): TableRow {
  return { look: 'sum', lead: [label], text: '', tail: [amount, ''] };
}

/** "3 bags of 50 lb and 12 lb 8 oz". */
function bagWords(weightLb: number, bagLb: number, units: Units): string {
  const whole = Math.floor(weightLb / bagLb + 1e-9);
  const restLb = weightLb - whole * bagLb;
  const bags = LOAD_TICKETS.bags(whole, formatMeasured(bagLb, 'lb', units));
  if (restLb <= 0.05) return bags;
  const loose = formatWithSmaller(restLb, 'lb', units) || formatMeasured(restLb, 'lb', units);
  return `${bags}${LOAD_TICKETS.and}${loose}`;
}
