import type { ApplicationRecord, Book, Visit } from '../../book/index.ts';
import { differencesOf, draftRecord, missingInRecord, missingOf, visitsWithoutRecord } from '../../records/index.ts';
import { draftBlocks, keptBlocks, missingBlocks } from '../application-records/index.ts';
import { type Block, left, right, type Sheet, type TableRow } from '../blocks.ts';
import type { PropertyInput } from '../input.ts';
import { RECORD_HISTORY, RECORDS } from '../texts/index.ts';
import { dateWord } from '../words.ts';

/** Every application record of one lawn with all of its versions: who wrote it, when, why, and what changed. */
export function recordHistory({ book, property }: PropertyInput): Sheet {
  const own = book.applicationRecords.filter((each) => each.propertyId === property.id);
  const ids = [...new Set(own.toSorted((one, other) => one.on.localeCompare(other.on)).map((each) => each.recordId))];
  const records = ids.map((id) => own.filter((each) => each.recordId === id));
  return {
    id: `record-history ${property.id}`,
    title: RECORD_HISTORY.title(property.name),
    subtitle: property.address,
    invented: book.invented,
    blocks: [
      { kind: 'cautions', title: RECORDS.rules.title, items: RECORDS.rules.items },
      { kind: 'note', text: records.length === 0 ? RECORD_HISTORY.none : RECORD_HISTORY.lasting },
      ...records.flatMap((versions) => recordBlocks(book, versions)),
      ...visitsWithoutRecord(book)
        .filter((each) => each.propertyId === property.id)
        .flatMap((visit) => unkeptBlocks(book, visit)),
    ],
  };
}

/** A visit that was done and has no record yet, drawn up from what was written down. */
function unkeptBlocks(book: Book, visit: Visit): readonly Block[] {
  const draft = draftRecord(book, visit, null);
  if (draft === null) return [];
  const rig = book.rigs.find((each) => each.id === visit.rigId)?.name ?? visit.rigId;
  return [
    { kind: 'heading', text: RECORD_HISTORY.heading(dateWord(book, visit.on), rig) },
    { kind: 'note', text: RECORDS.notKept },
    ...draftBlocks(draft),
    ...missingBlocks(missingOf(draft)),
  ];
}

function recordBlocks(book: Book, versions: readonly ApplicationRecord[]): readonly Block[] {
  const newest = versions.at(-1);
  if (newest === undefined) return [];
  const rig = book.rigs.find((each) => each.id === newest.rigId)?.name ?? newest.rigId;
  return [
    { kind: 'heading', text: RECORD_HISTORY.heading(dateWord(book, newest.on), rig) },
    {
      kind: 'table',
      columns: [
        right(RECORD_HISTORY.version),
        left(RECORD_HISTORY.written),
        left(RECORD_HISTORY.by),
        left(RECORD_HISTORY.why),
      ],
      rows: versions.flatMap((each, index) => versionRows(versions[index - 1], each)),
    },
    { kind: 'note', text: RECORD_HISTORY.said(newest.version) },
    ...keptBlocks(newest),
    ...missingBlocks(missingInRecord(newest)),
  ];
}

/** The version, and what it changed line by line. */
function versionRows(before: ApplicationRecord | undefined, after: ApplicationRecord): readonly TableRow[] {
  const lead = [String(after.version), after.writtenAt.replace('T', ' '), after.writtenBy];
  const changes = before === undefined || after.withdrawn === true ? [] : differencesOf(before, after);
  return [
    { look: 'stop', lead, text: whyWords(before, after, changes.length) },
    ...changes.map((each): TableRow => {
      const what = RECORDS.ofProduct(each.words, each.product);
      const text = RECORD_HISTORY.change(what, each.before || RECORDS.nothing, each.after || RECORDS.nothing);
      return { look: 'detail', lead: [''], text };
    }),
  ];
}

function whyWords(before: ApplicationRecord | undefined, after: ApplicationRecord, changes: number): string {
  if (before === undefined) return RECORD_HISTORY.first;
  if (after.withdrawn === true) return RECORD_HISTORY.withdrawn(after.why);
  return changes === 0 ? RECORD_HISTORY.sameWords(after.why) : after.why;
}
