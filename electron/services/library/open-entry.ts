import * as v from 'valibot';
import { err, type Issue, ok, type Result } from '../../../core/base/index.ts';
import { type Book, bookSchema } from '../../../core/book/index.ts';
import type { Saved, StoredPlan } from '../../../core/contract/index.ts';
import { type Action, applyAction } from '../../../core/edit/index.ts';
import { createTurn, describePlace } from '../files/index.ts';
import { type BookStore, COLLECTIONS } from '../store/index.ts';

/** One open book with all its stored state. Edits are taken one after the other. */
export type OpenEntry = {
  readonly store: BookStore;
  readonly book: () => Book;
  readonly issues: readonly Issue[];
  readonly revision: () => number;
  readonly savedAt: () => string | null;
  readonly plans: () => readonly StoredPlan[];
  /** Stores one edit; the book in memory changes only when it is on the disk. */
  readonly apply: (action: Action, baseRevision: number) => Promise<Result<Saved>>;
  readonly keepPlan: (plan: StoredPlan) => Promise<Result<Saved>>;
  readonly draft: () => string | null;
  /** Stores the unfinished outline, or its end; the book's revision stays. */
  readonly keepDraft: (draft: string | null) => Promise<Result<Saved>>;
  /** Closes the file when what was asked for before is stored; later edits are refused. */
  readonly close: () => Promise<void>;
};

export function createEntry(store: BookStore, now: () => Date): OpenEntry {
  let { book, revision, savedAt, draft } = store.stored;
  const plans = new Map(store.stored.plans.map((plan) => [plan.roundId, plan]));
  let closed = false;
  const turn = createTurn();
  const inTurn = <T>(work: () => Promise<Result<T>>): Promise<Result<T>> =>
    turn(async () => (closed ? isClosed(store.file) : work()));

  const applyNow = async (action: Action, baseRevision: number): Promise<Result<Saved>> => {
    if (baseRevision !== revision) return changedMeanwhile(store.file);
    const applied = applyAction(book, action);
    if (!applied.ok) return applied;
    const sound = checkChanged(book, applied.value.book, describePlace(store.file));
    if (!sound.ok) return sound;
    const at = now().toISOString();
    const { book: after, inverse, label } = applied.value;
    const stored = await store.saveEdit({ before: book, after, revision: revision + 1, at, label, action, inverse });
    if (!stored.ok) return stored;
    book = after;
    revision += 1;
    savedAt = at;
    return ok({ revision, savedAt: at });
  };

  return {
    store,
    book: () => book,
    issues: store.stored.issues,
    revision: () => revision,
    savedAt: () => savedAt,
    plans: () => [...plans.values()],
    apply: (action, baseRevision) => inTurn(() => applyNow(action, baseRevision)),
    keepPlan: (plan) =>
      inTurn(async () => {
        const stored = await store.savePlan(plan);
        if (!stored.ok) return stored;
        plans.set(plan.roundId, plan);
        return ok({ revision, savedAt: plan.savedAt });
      }),
    draft: () => draft,
    keepDraft: (next) =>
      inTurn(async () => {
        const at = now().toISOString();
        const stored = await store.saveDraft(next, at);
        if (!stored.ok) return stored;
        draft = next;
        return ok({ revision, savedAt: at });
      }),
    close: async () => {
      await inTurn(async () => {
        closed = true;
        return store.close();
      });
    },
  };
}

function isClosed(file: string): Result<never> {
  return err(
    'not-allowed',
    describePlace(file),
    'The book was closed, so this was not stored.',
    'Open the book again.',
  );
}

function changedMeanwhile(file: string): Result<never> {
  return err(
    'book-changed',
    describePlace(file),
    'The book was edited from another window meanwhile, so this edit was not stored.',
    'Look at the book as it is now and make the edit again.',
  );
}

/** Checks the parts that an edit changed against the schema of the book, so that nothing unreadable is ever stored. */
export function checkChanged(before: Book, after: Book, where: string): Result<true> {
  const old: Readonly<Record<string, unknown>> = before;
  const schemas: Readonly<Record<string, v.GenericSchema>> = bookSchema.entries;
  for (const [name, value] of Object.entries(after)) {
    const schema = schemas[name];
    if (schema === undefined || old[name] === value) continue;
    const known = COLLECTIONS.some((each) => each === name) ? new Set(old[name] as readonly unknown[]) : null;
    const fresh = known === null ? value : (value as readonly unknown[]).filter((item) => !known.has(item));
    const parsed = v.safeParse(schema, fresh);
    if (!parsed.success) return invalidEdit(where, name, parsed.issues[0]);
  }
  return ok(true);
}

function invalidEdit(where: string, member: string, issue: v.BaseIssue<unknown>): Result<never> {
  const place = [member, v.getDotPath(issue) ?? ''].filter((part) => part !== '').join('.');
  return err(
    'book-invalid',
    `${where}, ${place}`,
    `The edit would leave a value that a book cannot have (${issue.message}); it was not stored.`,
    'Enter a value within the limits of this field.',
  );
}
