import type { ApplicationRecord, Book } from '../../book/index.ts';
import { missingInRecord, PRODUCT_ELEMENTS, VISIT_ELEMENTS } from '../../records/index.ts';
import { plainFigure, tableText } from './table.ts';

type Product = ApplicationRecord['products'][number];
type Element = ApplicationRecord['elements'][number];

const HEAD = ['record', 'version', 'newest', 'withdrawn', 'written', 'written by', 'why', 'property', 'round', 'rig'];
const FIGURES = ['treatment', 'product id', 'amount', 'unit', 'area (sq ft)', 'zones'];
const AMOUNT_DECIMALS = 6;

/**
 * Versions of application records as a table: one row for every product of every version, and one for a version without a product. Words
 * are those of the record itself; `amount` and `area` are in US units and the product's own unit, whatever the record shows. A text that
 * is only planned ends in "(as planned)"; what was missing is empty and named in the last column.
 */
export function writeRecordsTable(book: Book, records: readonly ApplicationRecord[]): string {
  const newest = new Map(book.applicationRecords.map((each) => [each.recordId, each.id]));
  const columns = [
    ...HEAD,
    ...VISIT_ELEMENTS.map((each) => each.words.toLowerCase()),
    ...FIGURES,
    ...PRODUCT_ELEMENTS.map((each) => each.words.toLowerCase()),
    'missing',
  ];
  const rows = records.flatMap((record) => {
    const head = headCells(record, newest.get(record.recordId) === record.id);
    const missing = missingInRecord(record)
      .map(({ words, product }) => (product === '' ? words : `${words} of ${product}`))
      .join('; ');
    const products = record.products.length === 0 ? [null] : record.products;
    return products.map((product) => [...head, ...productCells(product), missing]);
  });
  return tableText([columns, ...rows]);
}

function headCells(record: ApplicationRecord, isNewest: boolean): readonly string[] {
  return [
    record.recordId,
    String(record.version),
    isNewest ? 'yes' : 'no',
    record.withdrawn === true ? 'yes' : 'no',
    record.writtenAt.replace('T', ' '),
    record.writtenBy,
    record.why,
    record.propertyId,
    record.roundId,
    record.rigId,
    ...VISIT_ELEMENTS.map(({ id }) => textOf(record.elements, id)),
  ];
}

function productCells(product: Product | null): readonly string[] {
  if (product === null) return [...FIGURES, ...PRODUCT_ELEMENTS].map(() => '');
  return [
    product.treatmentId,
    product.productId,
    plainFigure(product.amount, AMOUNT_DECIMALS),
    product.unit ?? '',
    plainFigure(product.areaSqFt),
    product.zoneIds.join(' '),
    ...PRODUCT_ELEMENTS.map(({ id }) => textOf(product.elements, id)),
  ];
}

function textOf(elements: readonly Element[], id: string): string {
  const found = elements.find((each) => each.id === id);
  if (found === undefined) return '';
  return found.from === 'planned' ? `${found.text} (as planned)` : found.text;
}
