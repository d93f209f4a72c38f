import type { Book } from '../../book/index.ts';
import type { BuyingList, CostPart, RoundCost } from '../../round/buying/index.ts';
import type { Amounts, Limit, Nutrient, SeasonLedger } from '../../round/ledger/index.ts';
import { plainFigure, tableText } from './table.ts';

const NUTRIENTS: readonly Nutrient[] = ['nitrogen', 'phosphate', 'potash'];
const RATE_DECIMALS = 6;

type Substance = {
  readonly kind: 'product' | 'active' | 'nutrient';
  readonly name: string;
  readonly unit: string;
  readonly of: (amounts: Amounts) => number;
  readonly limit: Limit | undefined;
};

const LEDGER_COLUMNS = [
  'year',
  'property',
  'property name',
  'zone',
  'zone name',
  'ground (sq ft)',
  'kind',
  'name',
  'unit',
  'per 1000 sq ft',
  'in all',
  'most per 1000 sq ft',
  'share used',
];

/**
 * The season's ledger as a table: one row for every zone and every product, active ingredient and nutrient on it, with its yearly limit.
 * Of several caps on one thing the lowest is written. US units, whatever the screen shows.
 */
export function writeLedgerTable(book: Book, ledger: SeasonLedger): string {
  const substances = substancesOf(book, ledger);
  const rows = ledger.lawns.flatMap((lawn) =>
    lawn.zones.flatMap((zone) =>
      substances.flatMap(({ kind, name, unit, of, limit }) => {
        const used = of(zone.per1000);
        if (used === 0) return [];
        return [
          [
            ...[ledger.year, lawn.propertyId, lawn.name, zone.zoneId, zone.name, plainFigure(zone.areaSqFt)],
            ...[kind, name, unit, plainFigure(used, RATE_DECIMALS), plainFigure(of(zone.total), RATE_DECIMALS)],
            plainFigure(limit?.most ?? null, RATE_DECIMALS),
            plainFigure(limit === undefined ? null : used / limit.most),
          ],
        ];
      }),
    ),
  );
  return tableText([LEDGER_COLUMNS, ...rows]);
}

function substancesOf(book: Book, { limits, total }: SeasonLedger): readonly Substance[] {
  const lowest = (fits: (limit: Limit) => boolean): Limit | undefined =>
    limits.filter(fits).toSorted((one, other) => one.most - other.most)[0];
  return [
    ...book.products.map(
      ({ id, name, unit }): Substance => ({
        kind: 'product',
        name,
        unit,
        of: ({ products }) => products.get(id) ?? 0,
        limit: lowest((each) => each.kind === 'product-year' && each.per.has(id)),
      }),
    ),
    ...[...total.actives.keys()].map(
      (name): Substance => ({
        kind: 'active',
        name,
        unit: 'lb',
        of: ({ actives }) => actives.get(name) ?? 0,
        limit: lowest((each) => each.kind === 'active' && each.name.trim().toLowerCase() === name.trim().toLowerCase()),
      }),
    ),
    ...NUTRIENTS.map(
      (name): Substance => ({
        kind: 'nutrient',
        name,
        unit: 'lb',
        of: ({ nutrients }) => nutrients[name],
        limit: lowest((each) => each.kind === 'nutrient' && each.name === name),
      }),
    ),
  ];
}

const BUY_COLUMNS = [
  'order by',
  'week',
  'week begins',
  'first use',
  'round',
  'product',
  'unit',
  'need',
  'from the store',
  'to buy',
  'bags',
  'cost (usd)',
  'reckoned from',
];

/** What to buy, one row for every product, round and week. */
export function writeBuyingTable(book: Book, { lines }: BuyingList): string {
  const rows = lines.map((line) => {
    const product = book.products.find((each) => each.id === line.productId);
    return [
      ...[line.orderBy, line.week.label, line.week.monday, line.firstUse, line.roundName],
      ...[product?.name ?? line.productId, product?.unit ?? '', plainFigure(line.need), plainFigure(line.fromStock)],
      ...[plainFigure(line.buy), line.bags === null ? '' : String(line.bags), line.costUsd.toFixed(2), line.from],
    ];
  });
  return tableText([BUY_COLUMNS, ...rows]);
}

const PARTS: readonly CostPart[] = ['wage', 'overtime', 'miles', 'fixed', 'late', 'evenness', 'product'];

/** What a round costs, one row for every lawn and a last one for all of them, in dollars. */
export function writeCostTable(cost: RoundCost): string {
  const usd = (cents: number): string => (cents / 100).toFixed(2);
  const rows = cost.lawns.map((lawn) => [
    lawn.propertyId,
    lawn.name,
    (lawn.paidSec / 60).toFixed(1),
    ...PARTS.map((part) => usd(lawn.cents[part])),
    usd(lawn.totalCents),
  ]);
  const minutes = cost.lawns.reduce((sum, each) => sum + each.paidSec, 0) / 60;
  const all = [
    '',
    'all lawns',
    minutes.toFixed(1),
    ...PARTS.map((part) => usd(cost.cents[part])),
    usd(cost.totalCents),
  ];
  return tableText([['property', 'property name', 'paid minutes', ...PARTS, 'in all'], ...rows, all]);
}
