import { ok, type Result } from '../../../core/base/index.ts';
import type { ApplicationRecord, Book } from '../../../core/book/index.ts';
import { type Action, applyAction } from '../../../core/edit/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import {
  type Draft,
  differences,
  draftRecord,
  entriesOfDay,
  keepRecord,
  type Missing,
  missingOf,
  type RecordSubject,
  type Signed,
  typedIn,
  versionsOf,
  visitsWithoutRecord,
  withTyped,
} from '../../../core/records/index.ts';
import { paperWords } from '../../texts/index.ts';

/** How the record of one stop stands. */
export type StopRecord = {
  readonly subject: RecordSubject;
  readonly name: string;
  readonly number: number | null;
  /** Null where the lawn was left out. */
  readonly draft: Draft | null;
  readonly last: ApplicationRecord | null;
  readonly missing: readonly Missing[];
  /** How many things are otherwise by now than in the version that is kept. */
  readonly changes: number;
  readonly state: 'kept' | 'otherwise' | 'withdrawn' | 'to keep' | 'to do' | 'left out';
};

/** The records of a rig's day, stop by stop. */
export function recordsOfDay(book: Book, roundId: string, day: PlanDay): readonly StopRecord[] {
  return entriesOfDay(book, roundId, day).map(({ subject, name, number }) => {
    const last = versionsOf(book, subject).at(-1) ?? null;
    const found = draftRecord(book, subject, day);
    const draft = found === null || last === null ? found : withTyped(found, typedIn(last));
    const changes = draft === null || last === null || last.withdrawn === true ? 0 : differences(last, draft).length;
    const missing = draft === null ? [] : missingOf(draft);
    return { subject, name, number, draft, last, missing, changes, state: stateOf(draft, last, changes) };
  });
}

function stateOf(draft: Draft | null, last: ApplicationRecord | null, changes: number): StopRecord['state'] {
  if (last !== null && last.withdrawn !== true) return changes > 0 ? 'otherwise' : 'kept';
  if (draft === null) return 'left out';
  if (last?.withdrawn === true) return 'withdrawn';
  return draft.isWritten ? 'to keep' : 'to do';
}

/** Drafts of visits of other days that were done and have no record; without a plan at hand. */
export function draftsOfOtherDays(book: Book, day: PlanDay): readonly Draft[] {
  return visitsWithoutRecord(book)
    .filter((each) => each.on !== day.date || each.rigId !== day.rigId)
    .flatMap((visit) => draftRecord(book, visit, null) ?? []);
}

/** One edit that keeps all these drafts, each under a number of its own. Fails as `keepRecord` does. */
export function keepAll(book: Book, drafts: readonly Draft[], signed: Signed): Result<Action> {
  let next = book;
  const actions: Action[] = [];
  for (const draft of drafts) {
    const kept = keepRecord(next, draft, signed);
    if (!kept.ok) return kept;
    const applied = applyAction(next, kept.value.action);
    if (!applied.ok) return applied;
    next = applied.value.book;
    actions.push(kept.value.action);
  }
  const label = actions.length === 1 ? paperWords.records.keepOneStep : paperWords.records.keepStep(actions.length);
  return ok({ kind: 'several', label, actions });
}
