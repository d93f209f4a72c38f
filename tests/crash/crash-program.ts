import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import type { Book } from '../../core/book/index.ts';
import { type Action, applyAction } from '../../core/edit/index.ts';
import { createBackups } from '../../electron/services/backups/index.ts';
import { writeWhole } from '../../electron/services/files/index.ts';
import { startPlanJob } from '../../electron/services/jobs/index.ts';
import { type BookStore, openStore, replaceBook } from '../../electron/services/store/index.ts';
import { numberedEdit } from '../electron/support/numbered-edit.ts';

/**
 * A program that is killed at any moment: PROGRAM WORK FOLDER. It works for ever on FOLDER/book.swardway and prints what it was told is done.
 *   edit      "stored N" after edit N is stored
 *   draft     "stored N" after unfinished outline N is stored
 *   import    "stored N" after N parcels of lawns at once, each of PARCEL lawns, are stored
 *   migrate   "opened" after an old book is brought to the newest version
 *   backup    "stored N" after edit N and a backup of it
 *   export    "stored N" after FOLDER/out.txt holds the text of number N
 *   plan      "stored N" after edit N, which sets the note, and a plan of the book searched for with the seed N in a thread
 *   restore   "stored N" after FOLDER/even.swardway (N even) or odd.swardway took the book's place
 */
export const PARCEL = 200;

/** The text of an export: many more lines than any list of lawns, each with its number, so that a torn one is seen. */
export const exportText = (number: number): string => `${number}\n`.repeat(100_000);

const tell = (words: string): void => {
  process.stdout.write(`${words}\n`);
};

async function mustOpen(file: string): Promise<BookStore> {
  const open = await openStore(file);
  if (!open.ok) throw new Error(open.error.detail);
  return open.value;
}

async function saveAction(store: BookStore, before: Book, revision: number, action: Action): Promise<Book> {
  const applied = applyAction(before, action);
  if (!applied.ok) throw new Error(applied.error.detail);
  const { book: after, inverse, label } = applied.value;
  const at = new Date(0).toISOString();
  const saved = await store.saveEdit({ before, after, revision, at, label, action, inverse });
  if (!saved.ok) throw new Error(saved.error.detail);
  return after;
}

/** One edit that brings many lawns, as an import does. */
function parcel(number: number): Action {
  const lawns = Array.from({ length: PARCEL }, (_, index) => numberedEdit(number * PARCEL + index));
  const puts = lawns.flatMap((each) =>
    each.kind === 'several' ? each.actions.filter(({ kind }) => kind === 'put') : [],
  );
  return {
    kind: 'several',
    label: `Parcel ${number}`,
    actions: [{ kind: 'set', changes: { note: `${number}` } }, ...puts],
  };
}

async function edits(folder: string, actionOf: (number: number) => Action): Promise<void> {
  const store = await mustOpen(path.join(folder, 'book.swardway'));
  let { book, revision } = store.stored;
  for (;;) {
    revision += 1;
    book = await saveAction(store, book, revision, actionOf(revision));
    tell(`stored ${revision}`);
  }
}

async function drafts(folder: string): Promise<void> {
  const store = await mustOpen(path.join(folder, 'book.swardway'));
  let number = store.stored.draft === null ? 0 : Number(store.stored.draft.slice(0, 9));
  for (;;) {
    number += 1;
    // The number at both ends, far apart: a torn one does not agree with itself.
    const text = String(number).padStart(9, '0');
    const saved = await store.saveDraft(`${text}${' '.repeat(30_000)}${text}`, new Date(0).toISOString());
    if (!saved.ok) throw new Error(saved.error.detail);
    tell(`stored ${number}`);
  }
}

async function migrate(folder: string): Promise<void> {
  tell('begins');
  const store = await mustOpen(path.join(folder, 'book.swardway'));
  tell('opened');
  await store.close();
  setInterval(() => undefined, 60_000);
}

async function backUp(folder: string): Promise<void> {
  const store = await mustOpen(path.join(folder, 'book.swardway'));
  let { book, revision } = store.stored;
  let clock = 1_800_000_000_000 + revision * 60_000;
  const backups = createBackups(path.join(folder, 'backups'), () => new Date(clock));
  await mkdir(path.join(folder, 'backups'), { recursive: true });
  for (;;) {
    revision += 1;
    clock += 60_000;
    book = await saveAction(store, book, revision, numberedEdit(revision));
    const taken = await backups.take({ store, revision, properties: book.properties.length });
    if (!taken.ok) throw new Error(taken.error.detail);
    tell(`stored ${revision}`);
  }
}

async function exports(folder: string): Promise<void> {
  for (let number = 1; ; number += 1) {
    const written = await writeWhole(path.join(folder, 'out.txt'), exportText(number));
    if (!written.ok) throw new Error(written.error.detail);
    tell(`stored ${number}`);
  }
}

async function plans(folder: string): Promise<void> {
  const store = await mustOpen(path.join(folder, 'book.swardway'));
  let { book, revision } = store.stored;
  const roundId = book.rounds[0]?.id ?? '';
  for (;;) {
    revision += 1;
    book = await saveAction(store, book, revision, { kind: 'set', changes: { note: `${revision}` } });
    tell(`edited ${revision}`);
    const wish = { book, roundId, dates: null, seed: revision, seconds: null, iterations: 2 };
    const found = await startPlanJob(process.env.PLAN_WORKER ?? '', wish, () => undefined).outcome;
    if (!found.ok) throw new Error(found.error.detail);
    const saved = await store.savePlan({ roundId, savedAt: new Date(0).toISOString(), plan: found.value.plan });
    if (!saved.ok) throw new Error(saved.error.detail);
    tell(`stored ${revision}`);
  }
}

async function restores(folder: string): Promise<void> {
  for (let number = 1; ; number += 1) {
    const copy = path.join(folder, number % 2 === 0 ? 'even.swardway' : 'odd.swardway');
    const replaced = await replaceBook(path.join(folder, 'book.swardway'), copy, null);
    if (!replaced.ok) throw new Error(replaced.error.detail);
    tell(`stored ${number}`);
  }
}

const WORKS: Readonly<Record<string, (folder: string) => Promise<void>>> = {
  edit: (folder) => edits(folder, numberedEdit),
  draft: drafts,
  import: (folder) => edits(folder, parcel),
  migrate,
  backup: backUp,
  export: exports,
  plan: plans,
  restore: restores,
};

const [, , work = '', folder] = process.argv;
if (folder !== undefined) {
  WORKS[work]?.(folder).catch((error: unknown) => {
    console.error(error);
    process.exit(1);
  });
}
