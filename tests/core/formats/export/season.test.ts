import { expect, test } from 'vitest';
import type { Book } from '../../../../core/book/index.ts';
import { readTable } from '../../../../core/formats/csv/table.ts';
import { writeBuyingTable, writeCostTable, writeLedgerTable } from '../../../../core/formats/index.ts';
import { buyingList } from '../../../../core/round/buying/index.ts';
import { seasonLedger } from '../../../../core/round/ledger/index.ts';
import { BASE, GROUND, roundOf } from '../../round/ledger/season-book.ts';

/** Rows of a table by the names of their columns, as the program's own reader has them. */
function rowsOf(text: string): readonly Record<string, string>[] {
  expect(text.endsWith('\r\n')).toBe(true);
  const read = readTable(text, 'table');
  if (!read.ok) throw new Error(read.error.detail);
  const { columns, rows } = read.value;
  expect(rows.map((each) => each.fault)).toEqual(rows.map(() => null));
  return rows.map(({ cells }) => Object.fromEntries(columns.map((name, index) => [name, cells[index] ?? ''])));
}

const book: Book = {
  ...BASE,
  properties: BASE.properties.map((each) => (each.id === 'two' ? { ...each, name: 'Oak, "Old" House' } : each)),
  rounds: [roundOf('spring', ['2027-04-01'], ['meal', 'spray'])],
  caps: [
    { id: 'n', what: 'nitrogen', mostLbPer1000SqFt: 2, source: '' },
    { id: 'm', what: 'nitrogen', mostLbPer1000SqFt: 4, source: '' },
  ],
};

test('the ledger is written with a row for every zone and everything on it', () => {
  const rows = rowsOf(writeLedgerTable(book, seasonLedger(book, '2027', { ground: GROUND })));
  // Two lawns of two zones: two products, an active ingredient and three nutrients each.
  expect(rows).toHaveLength(4 * 6);
  const back = rows.filter((each) => each.property === 'two' && each.zone === 'back');
  expect(back.find((each) => each.name === 'nitrogen')).toMatchObject({
    'property name': 'Oak, "Old" House',
    'ground (sq ft)': '6000',
    kind: 'nutrient',
    unit: 'lb',
    'per 1000 sq ft': '1',
    'in all': '6',
    'most per 1000 sq ft': '2',
    'share used': '0.5',
  });
  expect(back.find((each) => each.name === 'Early')).toMatchObject({ 'in all': '2.4', 'share used': '0.4' });
  expect(back.find((each) => each.name === 'Holdanil')).toMatchObject({ kind: 'active', 'most per 1000 sq ft': '' });
});

test('what to buy is written with its day to order', () => {
  const uses = [
    {
      roundId: 'spring',
      roundName: 'Spring',
      date: '2027-04-01',
      productId: 'meal',
      amount: 70.5,
      from: 'rates',
    } as const,
  ];
  const products = book.products.map((each) => (each.id === 'meal' ? { ...each, bagLb: 50, pricePerUnit: 0.5 } : each));
  expect(rowsOf(writeBuyingTable(book, buyingList({ ...book, products }, uses, '2027-01-01')))).toEqual([
    {
      'order by': '2027-03-25',
      week: '2027-W13',
      'week begins': '2027-03-29',
      'first use': '2027-04-01',
      round: 'Spring',
      product: 'Meal',
      unit: 'lb',
      need: '70.5',
      'from the store': '0',
      'to buy': '100',
      bags: '2',
      'cost (usd)': '50.00',
      'reckoned from': 'rates',
    },
  ]);
});

test('costs are written by lawn, with the sum last', () => {
  const cents = { wage: 1050, overtime: 0, miles: 5, fixed: 0, late: 0, evenness: 0, product: 100 };
  const lawn = { propertyId: 'one', name: 'Lawn one', cents, totalCents: 1155, paidSec: 90 };
  const rows = rowsOf(writeCostTable({ cents, totalCents: 1155, planCents: 1055, lawns: [lawn] }));
  expect(rows).toMatchObject([
    { property: 'one', wage: '10.50', miles: '0.05', 'paid minutes': '1.5', 'in all': '11.55' },
    { property: '', 'property name': 'all lawns', product: '1.00', 'in all': '11.55' },
  ]);
});
