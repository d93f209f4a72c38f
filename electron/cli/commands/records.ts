import { err, ok, type Result } from '../../../core/base/index.ts';
import type { ApplicationRecord, Book, Visit } from '../../../core/book/index.ts';
import { writeRecordsTable } from '../../../core/formats/index.ts';
import { missingInRecord, newestVersions, productName, visitsWithoutRecord } from '../../../core/records/index.ts';
import { describePlace, writeWhole } from '../../services/files/index.ts';
import { type Answer, type Command, fileOf, type Typed } from '../command.ts';
import { type BookInput, mayWrite, readBookFile } from '../input/index.ts';
import type { RecordsOutput } from '../output/index.ts';
import { dateOf } from '../parse.ts';
import { counted, issueLines, tableLines } from '../text/index.ts';

export const recordsCommand: Command = {
  name: 'records',
  summary: 'Lists the application records that are kept in a book, and what they lack.',
  details: [
    'A record is kept in versions: it is never changed, and a correction is a version of its own. Without --all the newest version of each is listed. Visits that were done and have no record are named at the end.',
    'With --csv the versions are written as a table (RFC 4180): a row for every product of every version, with the words of the record and with amounts and ground as plain figures. An existing file is overwritten only where it is such a table. Which records have to be kept, and for how long, is for your own state to say.',
  ],
  operands: [{ name: 'BOOK', words: 'book file or its JSON form' }],
  options: [
    { name: 'from', value: 'D', words: 'only work on or after this day, YYYY-MM-DD' },
    { name: 'to', value: 'D', words: 'only work on or before this day' },
    { name: 'property', value: 'ID', words: 'only this lawn' },
    { name: 'all', value: null, words: 'every version, not the newest alone' },
    { name: 'csv', value: 'FILE', words: 'write the versions as a table instead of printing them' },
  ],
  schema: 'records',
  example: 'npx swardway records sample-routes/residential-day.json --from 2027-03-01 --csv records.csv',
  run: async (typed) => {
    const wanted = { from: dateOf(typed, 'from') ?? '', to: dateOf(typed, 'to') ?? '9999-12-31' };
    if (typed.options.csv !== undefined) {
      const free = await mayWrite(fileOf(typed, 'csv'), /^record,version,newest,/, 'table of records');
      if (!free.ok) return free;
    }
    const read = await readBookFile(fileOf(typed, 'BOOK'));
    if (!read.ok) return read;
    const { property } = typed.options;
    if (property !== undefined && !isKnown(read.value.book, property)) return noSuchLawn(read.value, property);
    const isWanted = (each: { readonly on: string; readonly propertyId: string }): boolean =>
      each.on >= wanted.from && each.on <= wanted.to && (property === undefined || each.propertyId === property);
    return finish(read.value, isWanted, typed);
  },
};

/** A lawn that is gone may still have records. */
function isKnown(book: Book, id: string): boolean {
  return (
    book.properties.some((each) => each.id === id) || book.applicationRecords.some((each) => each.propertyId === id)
  );
}

function noSuchLawn({ where }: BookInput, id: string): Result<never> {
  const detail = `The book has neither a property "${id}" nor a record of one.`;
  return err('reference-missing', `${where}, properties`, detail, 'measure BOOK lists the properties with their ids.');
}

type Wanted = (each: { readonly on: string; readonly propertyId: string }) => boolean;

async function finish({ book, issues }: BookInput, isWanted: Wanted, typed: Typed): Promise<Result<Answer>> {
  const newest = new Set(newestVersions(book).map((each) => each.id));
  const records = book.applicationRecords.filter(
    (each) => isWanted(each) && (typed.flags.has('all') || newest.has(each.id)),
  );
  const notKept = visitsWithoutRecord(book).filter(isWanted);
  const json: RecordsOutput = {
    format: 'swardway-records',
    version: 1,
    bookId: book.id,
    records: records.map((each) => recordOutput(each, newest.has(each.id))),
    notKept: notKept.map(({ on, propertyId, roundId, rigId }) => ({ on, propertyId, roundId, rigId })),
    issues,
  };
  const remarks = [...issueLines(issues)];
  if (typed.options.csv === undefined) return ok({ json, text: () => recordsText(book, records, notKept), remarks });
  const file = fileOf(typed, 'csv');
  const written = await writeWhole(file, writeRecordsTable(book, records));
  if (!written.ok) return written;
  remarks.push(`table written: ${describePlace(file)}`);
  return ok({ json, text: () => `${counted(records.length, 'version')} written.`, remarks });
}

function recordOutput(record: ApplicationRecord, newest: boolean): RecordsOutput['records'][number] {
  const { id: _, fingerprint: __, elements, products, withdrawn, ...head } = record;
  return {
    ...head,
    newest,
    withdrawn: withdrawn === true,
    elements: elements.map(elementOutput),
    products: products.map(({ zoneIds: ___, unit, elements: own, ...product }) => ({
      ...product,
      unit: unit ?? null,
      elements: own.map(elementOutput),
    })),
    missing: missingInRecord(record).map(({ elementId, product, askedBy }) => ({
      element: elementId,
      product,
      askedBy,
    })),
  };
}

function elementOutput({ id, text, from }: ApplicationRecord['elements'][number]) {
  return { id, text, from: from ?? ('known' as const) };
}

function recordsText(book: Book, records: readonly ApplicationRecord[], notKept: readonly Visit[]): string {
  const nameOf = (id: string): string => book.properties.find((each) => each.id === id)?.name ?? id;
  const table = tableLines<ApplicationRecord>(
    [
      { title: 'day', cell: (each) => each.on },
      { title: 'lawn', cell: (each) => nameOf(each.propertyId) },
      {
        title: 'version',
        cell: (each) => `${each.version}${each.withdrawn === true ? ', withdrawn' : ''}`,
        right: true,
      },
      { title: 'written', cell: (each) => each.writtenAt.replace('T', ' ') },
      { title: 'by', cell: (each) => each.writtenBy },
      { title: 'products', cell: (each) => each.products.map(productName).join(', ') },
      { title: 'lacks', cell: (each) => lacksWords(each) },
      { title: 'why', cell: (each) => each.why },
    ],
    records,
  );
  const without = notKept.map(({ on, propertyId }) => `  ${on} ${nameOf(propertyId)}`);
  return [
    ...(records.length === 0 ? ['No application record is kept.'] : table),
    ...(without.length === 0 ? [] : ['', 'Done, and no record kept:', ...without]),
  ].join('\n');
}

function lacksWords(record: ApplicationRecord): string {
  const { length } = missingInRecord(record);
  return length === 0 ? '' : counted(length, 'element');
}
