import type { ApplicationRecord } from '../../book/index.ts';
import {
  type DayEntry,
  type Draft,
  draftRecord,
  entriesOfDay,
  missingInRecord,
  missingOf,
  RECORD_RULES,
  type RecordSubject,
  typedIn,
  versionsOf,
  visitOf,
  withTyped,
} from '../../records/index.ts';
import { type Block, left, type Sheet } from '../blocks.ts';
import type { DayInput } from '../input.ts';
import { PAGE, RECORDS } from '../texts/index.ts';
import { dateWord } from '../words.ts';
import { draftBlocks, keptBlocks, keptWords, missingBlocks, missingInBook } from './record-blocks.ts';
import { differencesWords } from './words.ts';

/**
 * A page for each stop: its application record as it is kept in the book, or drawn up from what was written down, or to be filled in.
 * What is missing stands below it with who asks for it.
 */
export function applicationRecords(input: DayInput): Sheet {
  const { book, plan, day } = input;
  const entries = entriesOfDay(book, plan.roundId, day);
  return {
    id: `application-records ${day.date} ${day.rigId}`,
    title: RECORDS.title(day.rigName),
    subtitle: dateWord(book, day.date),
    invented: book.invented || plan.invented,
    blocks: [
      { kind: 'cautions', title: RECORDS.rules.title, items: RECORDS.rules.items },
      ...(entries.length === 0 ? [{ kind: 'note' as const, text: RECORDS.noStops }] : []),
      ...entries.map((entry, index): Block => {
        const blocks = entryBlocks(input, entry);
        return { kind: index === 0 ? 'group' : 'page', blocks };
      }),
      rulesBlock(),
    ],
  };
}

function entryBlocks({ book, day }: DayInput, { subject, name, number }: DayEntry): readonly Block[] {
  const heading: Block = { kind: 'heading', text: number === null ? name : PAGE.stop(number, name) };
  const kept = versionsOf(book, subject).at(-1);
  const draft = draftRecord(book, subject, day);
  if (kept !== undefined) return [heading, ...keptRecordBlocks(book, kept, draft)];
  if (draft === null) return [heading, { kind: 'note', text: skippedWords(book, subject) }];
  return [
    heading,
    { kind: 'note', text: draft.isWritten ? RECORDS.notKept : RECORDS.planned },
    ...draftBlocks(draft),
    ...missingBlocks(draft.isWritten ? missingOf(draft) : missingInBook(draft)),
    ...(draft.isWritten ? [] : RECORDS.blanks.map((labels): Block => ({ kind: 'blanks', labels }))),
    { kind: 'blanks', labels: RECORDS.signature },
  ];
}

function skippedWords(book: DayInput['book'], subject: RecordSubject): string {
  const outcome = visitOf(book, subject)?.outcome;
  const reason = outcome?.kind === 'skipped' ? outcome.reason.trim() : '';
  return RECORDS.skipped(reason === '' ? RECORDS.skippedWithoutReason : reason);
}

function keptRecordBlocks(book: DayInput['book'], kept: ApplicationRecord, draft: Draft | null): readonly Block[] {
  const differs =
    draft === null || kept.withdrawn === true ? '' : differencesWords(kept, withTyped(draft, typedIn(kept)));
  return [
    { kind: 'note', text: keptWords(book, kept) },
    ...keptBlocks(kept),
    ...missingBlocks(missingInRecord(kept)),
    ...(differs === '' ? [] : [{ kind: 'note' as const, text: RECORDS.differs(differs) }]),
  ];
}

/** The rules by whose names elements are asked for, and where their words were read. */
function rulesBlock(): Block {
  const { heading, rule, about, source } = RECORDS.rules;
  return {
    kind: 'group',
    blocks: [
      { kind: 'heading', text: heading },
      {
        kind: 'table',
        columns: [left(rule), left(about), left(source)],
        rows: RECORD_RULES.map((each) => [each.name, each.about, each.source]),
      },
    ],
  };
}
