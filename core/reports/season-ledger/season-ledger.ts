import type { Book } from '../../book/index.ts';
import {
  type Application,
  type LawnYear,
  type Limit,
  NUTRIENTS,
  type SeasonLedger,
  type ZoneYear,
} from '../../round/ledger/index.ts';
import {
  formatArea,
  formatNumber,
  formatProductAmount,
  formatProductRate,
  formatWeight,
  type ProductUnit,
} from '../../units/index.ts';
import { type Block, left, right, type Sheet, type TableRow } from '../blocks.ts';
import type { YearInput } from '../input.ts';
import { SEASON } from '../texts/index.ts';
import { materialWord, treatmentWord } from '../words.ts';

/** What went and will go down on every lawn in a year, against the limits that were entered. */
export function seasonLedgerSheet({ book, ledger }: YearInput): Sheet {
  return {
    id: `season-ledger ${ledger.year}`,
    title: SEASON.title(ledger.year),
    subtitle: book.name,
    invented: book.invented,
    blocks: [
      { kind: 'note', text: SEASON.rule },
      ...totalBlocks(book, ledger),
      ...limitBlocks(book, ledger),
      ...applicationBlocks(book, ledger),
      ...(ledger.gaps.length === 0 ? [] : [{ kind: 'cautions' as const, title: SEASON.gaps, items: [...ledger.gaps] }]),
    ],
  };
}

function unitOf(book: Book, productId: string): ProductUnit {
  return book.products.find((each) => each.id === productId)?.unit ?? 'lb';
}

function totalBlocks(book: Book, { total }: SeasonLedger): readonly Block[] {
  const { kinds, printed } = SEASON;
  const rows: readonly TableRow[] = [
    ...[...total.products].map(([id, amount]) => [
      materialWord(book, id),
      kinds.product,
      formatProductAmount(amount, unitOf(book, id), book.units),
    ]),
    ...[...total.actives].map(([name, pounds]) => [name, kinds.active, formatWeight(pounds, book.units)]),
    ...NUTRIENTS.filter((name) => total.nutrients[name] > 0).map((name) => [
      name === 'nitrogen' ? name : printed(name),
      kinds.nutrient,
      formatWeight(total.nutrients[name], book.units),
    ]),
  ];
  const heading: Block = { kind: 'heading', text: SEASON.totals.title };
  if (rows.length === 0) return [heading, { kind: 'note', text: SEASON.applications.none }];
  const columns = [left(SEASON.totals.what), left(SEASON.totals.kind), right(SEASON.totals.amount)];
  return [heading, { kind: 'table', columns, rows }];
}

/** For every lawn the zone that uses most of each limit, the fullest first. */
function limitBlocks(book: Book, { lawns, limits }: SeasonLedger): readonly Block[] {
  const words = SEASON.limits;
  const uses = lawns
    .flatMap((lawn) => lawn.worst.map((use) => ({ lawn, use })))
    .toSorted((one, other) => other.use.share - one.use.share);
  const heading: Block = { kind: 'heading', text: words.title };
  const rows = uses.flatMap(({ lawn, use }) => {
    const limit = limits.find((each) => each.id === use.limitId);
    return limit === undefined ? [] : [limitRow(book, lawn, limit, use)];
  });
  if (rows.length === 0) return [heading, { kind: 'note', text: words.none }];
  return [
    heading,
    {
      kind: 'table',
      columns: [
        left(words.lawn),
        left(words.zone),
        left(words.limit),
        right(words.used),
        right(words.most),
        right(words.share),
      ],
      rows,
    },
  ];
}

function limitRow(book: Book, lawn: LawnYear, limit: Limit, use: LawnYear['worst'][number]): readonly string[] {
  return [
    lawn.name,
    lawn.zones.find((each) => each.zoneId === use.zoneId)?.name ?? use.zoneId,
    limitName(limit),
    formatProductRate(use.used, limit.unit, book.units),
    formatProductRate(limit.most, limit.unit, book.units),
    shareWords(use.share),
  ];
}

function limitName({ kind, name }: Limit): string {
  if (kind === 'product-year') return SEASON.limits.year(name);
  return kind === 'product-application' ? SEASON.limits.once(name) : name;
}

const DUST = 1e-9;

/** Never rounded up to the limit, nor down to it. */
function shareWords(share: number): string {
  const percent = share * 100;
  if (share > 1 + DUST) return `${formatNumber(Math.ceil(percent * 10) / 10, 1)} % ${SEASON.limits.over}`;
  return share < 1 - DUST ? `${Math.min(99, Math.round(percent))} %` : '100 %';
}

function applicationBlocks(book: Book, { lawns }: SeasonLedger): readonly Block[] {
  const words = SEASON.applications;
  const rows = lawns.flatMap((lawn) =>
    lawn.zones.flatMap((zone) => zone.applications.map((each) => applicationRow(book, lawn, zone, each))),
  );
  if (rows.length === 0) return [];
  return [
    { kind: 'heading', text: words.title },
    {
      kind: 'table',
      columns: [
        left(words.lawn),
        left(words.zone),
        left(words.when),
        left(words.what),
        right(words.ground),
        left(words.down),
      ],
      rows,
    },
  ];
}

function applicationRow(book: Book, lawn: LawnYear, zone: ZoneYear, each: Application): readonly string[] {
  const words = SEASON.applications;
  const when = each.first === each.last ? each.first : words.span(each.first, each.last);
  return [
    lawn.name,
    zone.name,
    each.status === 'planned' ? words.planned(when) : when,
    treatmentWord(book, each.treatmentId),
    each.treatedSqFt > 0 ? formatArea(each.treatedSqFt, book.units) : words.notKnown,
    [...each.rates]
      .map(([id, rate]) => `${materialWord(book, id)} ${formatProductRate(rate, unitOf(book, id), book.units)}`)
      .join(', '),
  ];
}
