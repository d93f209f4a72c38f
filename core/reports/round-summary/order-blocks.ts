import type { Book, Product } from '../../book/index.ts';
import type { Plan } from '../../plan/result/index.ts';
import { type BuyLine, buyingList, usesOfPlan, waterByFillPoint } from '../../round/buying/index.ts';
import { formatMoney, formatNumber, formatProductAmount, formatVolume } from '../../units/index.ts';
import { type Block, left, right, type TableRow } from '../blocks.ts';
import { ROUND_SUMMARY } from '../texts/index.ts';
import { materialWord, placeWord, shortDateWord } from '../words.ts';

/** Before every date: nothing of the plan is past, and no order is late. */
const EVER = '';

/** What the plan of a round takes of each product, and what of it has to be bought by when. */
export function orderBlocks(book: Book, plan: Plan): readonly Block[] {
  const words = ROUND_SUMMARY.orders;
  const { lines, costUsd } = buyingList(book, usesOfPlan(book, plan), EVER);
  const heading: Block = { kind: 'heading', text: words.title };
  if (lines.length === 0) return [heading, { kind: 'note', text: words.none }];
  return [
    heading,
    {
      kind: 'table',
      columns: [
        left(words.orderBy),
        left(words.product),
        left(words.firstUse),
        right(words.need),
        right(words.toBuy),
        right(words.cost),
      ],
      rows: [
        ...lines.flatMap((line) => orderRows(book, line)),
        { look: 'sum', lead: [words.all], text: '', tail: [formatMoney(costUsd)] },
      ],
    },
    { kind: 'note', text: words.rule },
  ];
}

function orderRows(book: Book, line: BuyLine): readonly TableRow[] {
  const words = ROUND_SUMMARY.orders;
  const unit: Product['unit'] = book.products.find((each) => each.id === line.productId)?.unit ?? 'lb';
  const amount = (value: number): string => formatProductAmount(value, unit, book.units);
  const bags = line.bags === null ? null : words.bags(line.bags);
  const buy = bags === null ? amount(line.buy) : words.amountAndBags(amount(line.buy), bags);
  const row = [
    line.buy > 0 ? shortDateWord(book, line.orderBy) : '',
    materialWord(book, line.productId),
    shortDateWord(book, line.firstUse),
    amount(line.need),
    line.buy > 0 ? buy : words.nothing,
    formatMoney(line.costUsd),
  ];
  if (line.fromStock <= 0) return [row];
  return [row, { look: 'detail', lead: [''], text: words.fromStore(amount(line.fromStock)) }];
}

export function waterBlocks(book: Book, plan: Plan): readonly Block[] {
  const words = ROUND_SUMMARY.water;
  const points = waterByFillPoint(book, plan);
  if (points.length === 0) return [];
  const columns = [left(words.point), right(words.morning), right(words.visits), right(words.count)];
  const rows = points.map((each) => [
    placeWord(book, each.fillPointId),
    volumeWord(book, each.morningGal),
    volumeWord(book, each.visitsGal),
    each.visits > 0 ? formatNumber(each.visits) : '',
  ]);
  return [
    {
      kind: 'group',
      blocks: [
        { kind: 'heading', text: words.title },
        { kind: 'table', columns, rows },
      ],
    },
  ];
}

/** Nothing stands for none. */
function volumeWord(book: Book, gal: number): string {
  return gal > 0 ? formatVolume(gal, book.units) : '';
}
