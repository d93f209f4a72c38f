import { stat } from 'node:fs/promises';
import path from 'node:path';
import { err, fingerprint, ok, type Result } from '../../../core/base/index.ts';
import { type Book, readBook } from '../../../core/book/index.ts';
import type { OpenBook } from '../../../core/contract/index.ts';
import { describePlace, fileNameFrom, readText } from '../files/index.ts';
import type { Client } from '../host-port.ts';
import { BOOK_ENDING, describeSession, storeNewBook } from '../library/index.ts';
import { roadFilesOf } from '../roads/index.ts';
import { createStoreFile, openStore, readHeader } from '../store/index.ts';
import type { Context } from './context.ts';
import { bookNow } from './keep-backup.ts';

/** Opens a book file for a client and puts it at the head of the recent list. */
export async function openBookFile(context: Context, file: string, client: Client): Promise<Result<OpenBook>> {
  const opened = await context.library.open(file, client.id);
  if (!opened.ok) return opened;
  const { entry } = opened.value;
  await context.backups.watch(bookNow(entry));
  await context.recent.remember({
    file: entry.store.file,
    name: entry.book().name,
    openedAt: context.now().toISOString(),
  });
  context.log('info', 'book', 'opened', { properties: entry.book().properties.length, revision: entry.revision() });
  return ok(describeSession(opened.value, context.tokens));
}

/** A book file is opened as it is; the JSON form of a book becomes a new book file in the program's own folder. */
export async function openAnyFile(context: Context, file: string, client: Client): Promise<Result<OpenBook>> {
  const form = await formOf(file);
  if (form === 'missing') return missing(file);
  if (form === 'store') return openBookFile(context, file, client);
  const text = await readText(file);
  if (!text.ok) return text;
  return importJson(context, text.value, path.basename(file), client);
}

async function formOf(file: string): Promise<'missing' | 'store' | 'text'> {
  const status = await stat(file).catch(() => null);
  if (status === null) return 'missing';
  if (!status.isFile()) return 'text';
  const header = await readHeader(file).catch(() => null);
  return header?.kind === 'sqlite' || file.endsWith(BOOK_ENDING) ? 'store' : 'text';
}

function missing(file: string): Result<never> {
  return err(
    'book-vanished',
    describePlace(file),
    'The book file is not there any more.',
    'Connect the disk or folder it was on, or choose the file where it is now.',
  );
}

/** A new file for a book in the program's own folder. */
export function newBookFile(context: Context, title: string, book: Book): Promise<Result<string>> {
  return context.makingTurn(() => storeNewBook(context.booksFolder, title, book));
}

/** The JSON form of a book as a new book file. */
export async function importJson(
  context: Context,
  text: string,
  where: string,
  client: Client,
): Promise<Result<OpenBook>> {
  const read = readBook(text, where);
  if (!read.ok) return read;
  const file = await newBookFile(context, read.value.book.name, read.value.book);
  return file.ok ? openBookFile(context, file.value, client) : file;
}

/**
 * The user's own copy of a sample: made at first use, kept with its edits afterwards. A copy that was never edited is made
 * again when the program's sample has changed.
 */
export function openSample(context: Context, sampleId: string, client: Client): Promise<Result<OpenBook>> {
  return context.makingTurn(async () => {
    const sample = await context.samples.read(sampleId);
    if (!sample.ok) return sample;
    const file = path.join(context.dataFolder, 'samples', `${fileNameFrom(sampleId)}${BOOK_ENDING}`);
    const made = await refreshCopy(context, file, sample.value);
    if (!made.ok) return made;
    await layRoads(context, sampleId, file);
    return openBookFile(context, file, client);
  });
}

/** The roads of a sample, made from its extract where they are missing or older. Without them its travel is an estimate. */
async function layRoads({ samples, roads, log }: Context, sampleId: string, bookFile: string): Promise<void> {
  const extract = await samples.extractOf(sampleId);
  if (extract === null || (await isNewer(roadFilesOf(bookFile).roads, extract))) return;
  const made = await roads.importFrom(bookFile, extract, () => undefined);
  if (!made.ok) log('warn', 'roads', 'sample not read', { code: made.error.code });
}

async function isNewer(file: string, other: string): Promise<boolean> {
  const [one, two] = await Promise.all([file, other].map((each) => stat(each).catch(() => null)));
  return one !== null && two !== null && one !== undefined && two !== undefined && one.mtimeMs >= two.mtimeMs;
}

/** Makes the copy where there is none, or an outdated one that nobody has edited or opened. */
async function refreshCopy(context: Context, file: string, sample: Book): Promise<Result<true>> {
  if (await context.library.isOpen(file)) return ok(true);
  const there = await stat(file).catch(() => null);
  if (there !== null && !(await isOutdated(file, fingerprint(sample)))) return ok(true);
  return createStoreFile(file, sample, true);
}

/** True for a copy without any edit or unfinished outline whose book is not the sample's any more. */
async function isOutdated(file: string, sampleFingerprint: string): Promise<boolean> {
  const store = await openStore(file);
  if (!store.ok) return false;
  const { stored } = store.value;
  await store.value.close();
  return stored.revision === 0 && stored.draft === null && fingerprint(stored.book) !== sampleFingerprint;
}
