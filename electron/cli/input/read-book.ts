import type { Issue, Result } from '../../../core/base/index.ts';
import { ok } from '../../../core/base/index.ts';
import { type Book, readBook } from '../../../core/book/index.ts';
import { checkBook } from '../../../core/checks/index.ts';
import { type Plan, plannedDays } from '../../../core/plan/result/index.ts';
import type { DayWays } from '../../../core/reports/index.ts';
import type { PlannedDays } from '../../../core/round/programme/index.ts';
import type { DriveTable } from '../../../core/travel/index.ts';
import { describePlace, fileFailure, isFileError, readText } from '../../services/files/index.ts';
import { openStore, readHeader } from '../../services/store/index.ts';

/** A book as a command reads it, with what a command may need beside it. */
export type BookInput = {
  readonly book: Book;
  /** The file for messages. */
  readonly where: string;
  /** What is odd about the file, and the invariants that the book breaks. */
  readonly issues: readonly Issue[];
  /** Days of the plans that are kept with it; a JSON form has none. */
  readonly plannedDays: PlannedDays;
  /** Drive times by road, where they were asked for; see `withDrives`. */
  readonly roads?: DriveTable;
  /** Ways of drives along those roads, where they were asked for. */
  readonly ways?: DayWays;
};

/**
 * Reads a book from a book file or from its JSON form, told apart by the first bytes. Errors: those of `openStore` and
 * of `readBook`, and as the file system has it.
 */
export async function readBookFile(file: string): Promise<Result<BookInput>> {
  const where = describePlace(file);
  const stored = await isBookFile(file);
  if (!stored.ok) return stored;
  const read = stored.value ? await fromStore(file) : await fromJson(file, where);
  if (!read.ok) return read;
  const { book, issues, plans = [] } = read.value;
  const broken = checkBook(book).map((each) => ({ ...each, where: `${where}, ${each.where}` }));
  return ok({ book, where, issues: [...issues, ...broken], plannedDays: plannedDays(plans) });
}

/** True where the file is an SQLite file. Errors: as the file system has it. */
export async function isBookFile(file: string): Promise<Result<boolean>> {
  try {
    return ok((await readHeader(file)).kind === 'sqlite');
  } catch (error) {
    if (!isFileError(error)) throw error;
    return fileFailure(error, file);
  }
}

type Read = { readonly book: Book; readonly issues: readonly Issue[]; readonly plans?: readonly Plan[] };

async function fromJson(file: string, where: string): Promise<Result<Read>> {
  const text = await readText(file);
  return text.ok ? readBook(text.value, where) : text;
}

async function fromStore(file: string): Promise<Result<Read>> {
  const store = await openStore(file);
  if (!store.ok) return store;
  const { book, issues, plans } = store.value.stored;
  const closed = await store.value.close();
  return closed.ok ? ok({ book, issues, plans: plans.map((each) => each.plan) }) : closed;
}
