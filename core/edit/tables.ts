import type { Book } from '../book/index.ts';

/** The tables of a book: lists of records that carry an id. */
export const TABLES = [
  'properties',
  'machines',
  'handMethods',
  'rigs',
  'fillPoints',
  'products',
  'mixes',
  'treatments',
  'rounds',
  'programmes',
  'timings',
  'temperatures',
  'weather',
  'caps',
  'applicators',
  'fleets',
  'visits',
  'gauges',
  'templates',
  'applicationRecords',
] as const;

/** The name of a table. */
export type TableName = (typeof TABLES)[number];
/** A record of a table. */
export type RecordOf<Table extends TableName> = Book[Table][number];
/** A record of any table. */
export type AnyRecord = RecordOf<TableName>;

/** What one record of each table is called in labels. */
export const RECORD_NAMES: Readonly<Record<TableName, string>> = {
  properties: 'property',
  machines: 'machine',
  handMethods: 'hand method',
  rigs: 'rig',
  fillPoints: 'fill point',
  products: 'product',
  mixes: 'mix',
  treatments: 'treatment',
  rounds: 'round',
  programmes: 'programme',
  timings: 'timing',
  temperatures: 'year of temperatures',
  weather: 'day of weather',
  caps: 'yearly cap',
  applicators: 'applicator',
  fleets: 'fleet',
  visits: 'visit',
  gauges: 'reading of levels',
  templates: 'text with fields',
  applicationRecords: 'application record',
};

/** The records of a table, whatever their kind. */
export function recordsOf(book: Book, table: TableName): readonly AnyRecord[] {
  return book[table];
}

/** The book with one table replaced; every other part is shared with the old book. */
export function withRecords(book: Book, table: TableName, records: readonly AnyRecord[]): Book {
  return { ...book, [table]: records };
}

/** "machine Stand-on 35", for labels. */
export function recordLabel(table: TableName, record: AnyRecord): string {
  const name = 'name' in record ? record.name : '';
  return `${RECORD_NAMES[table]} ${name === '' ? record.id : name}`;
}
