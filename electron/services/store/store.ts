import { mkdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { err, type Issue, ok, type Result } from '../../../core/base/index.ts';
import { type Book, readBook } from '../../../core/book/index.ts';
import type { StoredPlan } from '../../../core/contract/index.ts';
import type { Action } from '../../../core/edit/index.ts';
import { type Plan, readPlan } from '../../../core/plan/result/index.ts';
import { describePlace, flushFile, freshBeside, takePlace } from '../files/index.ts';
import { clearTheWay } from './clear-the-way.ts';
import type { Connection } from './connection.ts';
import { copyWhole, removeFile } from './copy.ts';
import { readDraft, writeDraft } from './draft.ts';
import { damaged, guardStore } from './failures.ts';
import { createEmptyFile, type OpenedFile, openBookFile } from './open.ts';
import { readPicture, type StoredPicture, writePicture } from './picture.ts';
import { changesBetween, readBookText, writeChanges } from './records.ts';
import { takeSnapshot } from './snapshot.ts';

/** Everything that a book file holds, as read when it was opened. */
export type StoredBook = {
  readonly book: Book;
  readonly issues: readonly Issue[];
  readonly revision: number;
  readonly savedAt: string | null;
  readonly plans: readonly StoredPlan[];
  /** The unfinished outline as JSON text; null where nothing is being drawn. */
  readonly draft: string | null;
};

/** One edit as it goes into the file: the book on both sides of it, and how to do it again and back. */
export type StoredEdit = {
  readonly before: Book;
  readonly after: Book;
  readonly revision: number;
  /** ISO 8601 date and time. */
  readonly at: string;
  readonly label: string;
  readonly action: Action;
  readonly inverse: Action;
};

/** One open book file. Only this store writes to it; what it says is stored is on the disk. */
export type BookStore = {
  readonly file: string;
  readonly readOnlyBecause: string | null;
  /** What a user should know of how the file was found, in whole sentences; null where all is as usual. */
  readonly remark: string | null;
  readonly stored: StoredBook;
  readonly saveEdit: (edit: StoredEdit) => Promise<Result<true>>;
  readonly savePlan: (plan: StoredPlan) => Promise<Result<true>>;
  /** Keeps the unfinished outline, or takes it away. */
  readonly saveDraft: (draft: string | null, at: string) => Promise<Result<true>>;
  readonly savePicture: (picture: StoredPicture) => Promise<Result<true>>;
  readonly readPicture: (name: string) => Promise<Result<StoredPicture | null>>;
  /** A whole, checked copy in a new file. */
  readonly copyTo: (file: string) => Promise<Result<true>>;
  readonly close: () => Promise<Result<true>>;
};

/**
 * Opens a book file for this process alone; one that another program has open is shown as it is stored now, and takes no edits. Fails with a
 * code of core/base; the file is then as it was.
 */
export async function openStore(file: string): Promise<Result<BookStore>> {
  const opened = await openBookFile(file);
  if (opened.ok) return readStore(file, opened.value, async () => undefined);
  if (opened.error.code !== 'book-locked') return opened;
  const taken = await guardStore(file, () => takeSnapshot(file));
  if (!taken.ok) return taken;
  if (taken.value === null) return opened;
  const { file: copy, remove } = taken.value;
  const read = await openBookFile(copy);
  if (!read.ok) {
    await remove();
    return read;
  }
  return readStore(file, { ...read.value, readOnlyBecause: IN_USE, remark: null }, remove);
}

const IN_USE =
  'Somebody else has this book open. It is shown as it was stored when you opened it, and cannot be changed here; close it there, then open it again.';

/** @param leave what is to be done once the book is closed */
async function readStore(file: string, opened: OpenedFile, leave: () => Promise<void>): Promise<Result<BookStore>> {
  const { connection, readOnlyBecause, remark } = opened;
  const stored = await guardStore(file, () => readStored(connection, file));
  if (!stored.ok) {
    await connection.close();
    await leave();
    return stored;
  }
  const { ino, dev } = await stat(file);
  const parts = { file, connection, readOnlyBecause, remark, stored: stored.value, inode: `${dev}:${ino}`, leave };
  return ok(createStore(parts));
}

/**
 * Writes a book into a new file: complete under another name first, so that a crash leaves no half book. With `overwrite` it takes the place of
 * what stands there, unless that is a book that somebody has open ('book-locked').
 */
export async function createStoreFile(file: string, book: Book, overwrite = false): Promise<Result<true>> {
  const fresh = freshBeside(file);
  return guardStore<true>(file, async () => {
    if (!overwrite && (await stat(file).catch(() => null)) !== null) return nameTaken(file);
    await mkdir(path.dirname(file), { recursive: true });
    const isClear = await clearTheWay(file);
    if (!isClear.ok) return isClear;
    try {
      const connection = await createEmptyFile(fresh);
      try {
        await connection.transaction(() => writeChanges(connection, changesBetween(null, book)));
        await connection.exec('PRAGMA wal_checkpoint(TRUNCATE)');
      } finally {
        await connection.close();
      }
      await flushFile(fresh);
      await takePlace(fresh, file);
      return ok(true);
    } finally {
      await removeFile(fresh);
    }
  });
}

function nameTaken(file: string): Result<never> {
  const detail = 'There is a file of this name already; it was left as it is.';
  return err('not-allowed', describePlace(file), detail, 'Choose another name.');
}

async function readStored(connection: Connection, file: string): Promise<Result<StoredBook>> {
  const text = await readBookText(connection);
  if (text.kind === 'damaged') return damaged(file, text.detail);
  const read = readBook(text.text, describePlace(file));
  // What lies in a book was written by the program: where it is no JSON any more the disk has changed it.
  if (!read.ok) return read.error.code === 'not-json' ? damaged(file, 'one of its records cannot be read') : read;
  const edits = await connection.all('SELECT revision, at FROM edit ORDER BY revision DESC LIMIT 1');
  const plans = await connection.all('SELECT round_id, saved_at, json FROM plan ORDER BY round_id');
  return ok({
    ...read.value,
    revision: Number(edits[0]?.revision ?? 0),
    savedAt: edits[0] === undefined ? null : String(edits[0].at),
    draft: await readDraft(connection),
    plans: plans.flatMap((row) => {
      // A plan that this version cannot read is left in the file and not shown: it can be made again.
      const plan = readPlan(String(row.json), describePlace(file));
      return plan.ok ? [{ roundId: String(row.round_id), savedAt: String(row.saved_at), plan: plan.value }] : [];
    }),
  });
}

type StoreParts = {
  readonly file: string;
  readonly connection: Connection;
  readonly readOnlyBecause: string | null;
  readonly remark: string | null;
  readonly stored: StoredBook;
  readonly inode: string;
  readonly leave: () => Promise<void>;
};

function createStore({ file, connection, readOnlyBecause, remark, stored, inode, leave }: StoreParts): BookStore {
  const write = (work: () => Promise<void>): Promise<Result<true>> =>
    guardStore<true>(file, async () => {
      if (readOnlyBecause !== null) return readOnly(file, readOnlyBecause);
      if (!(await isSameFile(file, inode))) return vanished(file);
      await connection.transaction(work);
      return ok(true);
    });
  return {
    file,
    readOnlyBecause,
    remark,
    stored,
    saveEdit: (edit) => write(() => writeEdit(connection, edit)),
    savePlan: ({ roundId, savedAt, plan }) => write(() => writePlan(connection, roundId, savedAt, plan)),
    saveDraft: (draft, at) => write(() => writeDraft(connection, draft, at)),
    savePicture: (picture) => write(() => writePicture(connection, picture)),
    readPicture: (name) => guardStore(file, async () => ok(await readPicture(connection, name))),
    copyTo: (target) => copyWhole(connection, target),
    close: () =>
      guardStore<true>(file, async () => {
        await connection.close();
        await leave();
        return ok(true);
      }),
  };
}

/** So many of the newest edits stay in the file, for whoever looks into a fault; older ones would only make it larger. */
const EDITS_KEPT = 500;

async function writeEdit(connection: Connection, edit: StoredEdit): Promise<void> {
  await writeChanges(connection, changesBetween(edit.before, edit.after));
  await connection.run('INSERT INTO edit (revision, at, label, action, inverse) VALUES (?, ?, ?, ?, ?)', [
    edit.revision,
    edit.at,
    edit.label,
    JSON.stringify(edit.action),
    JSON.stringify(edit.inverse),
  ]);
  await connection.run('DELETE FROM edit WHERE revision <= ?', [edit.revision - EDITS_KEPT]);
}

function writePlan(connection: Connection, roundId: string, savedAt: string, plan: Plan): Promise<void> {
  return connection.run('INSERT OR REPLACE INTO plan (round_id, saved_at, problem_hash, json) VALUES (?, ?, ?, ?)', [
    roundId,
    savedAt,
    plan.problemHash,
    JSON.stringify(plan),
  ]);
}

/** False where the file was deleted, moved or replaced while the book was open: a write would go to nowhere. */
async function isSameFile(file: string, inode: string): Promise<boolean> {
  const now = await stat(file).catch(() => null);
  return now !== null && `${now.dev}:${now.ino}` === inode;
}

function vanished(file: string): Result<never> {
  return err(
    'book-vanished',
    describePlace(file),
    'The book file was moved, deleted or replaced while it was open, so the edit was not stored.',
    'Put the file back, or save a copy: all that was stored before is still held by the program.',
  );
}

function readOnly(file: string, because: string): Result<never> {
  return err(
    'book-read-only',
    describePlace(file),
    `${because} The edit was not stored.`,
    'Save a copy of the book in a folder of your own and go on with the copy.',
  );
}
