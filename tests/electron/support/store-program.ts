import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { type Book, emptyBook } from '../../../core/book/index.ts';
import { applyAction } from '../../../core/edit/index.ts';
import { writeWhole } from '../../../electron/services/files/index.ts';
import { type BookStore, createStoreFile, openStore, replaceBook } from '../../../electron/services/store/index.ts';
import { numberedEdit } from './numbered-edit.ts';

/**
 * A program for tests that need a second process: PROGRAM COMMAND FILE.
 *   open    opens the book once and prints the outcome
 *   hold    opens the book and keeps it until the process is ended
 *   write   stores three edits, prints "stored 3", and keeps the book until the process is ended
 *   fill    makes a book on a small disk and stores large edits until one is refused, reads the book again, and writes all else there is
 */
const print = (value: unknown): void => {
  process.stdout.write(`${JSON.stringify(value)}\n`);
};

async function store(open: BookStore, book: Book, number: number, ballast = '') {
  const action = numberedEdit(number, ballast);
  const applied = applyAction(book, action);
  if (!applied.ok) throw new Error(applied.error.detail);
  const { book: after, inverse, label } = applied.value;
  const at = new Date(0).toISOString();
  const saved = await open.saveEdit({ before: book, after, revision: number, at, label, action, inverse });
  return { saved, after };
}

async function mustOpen(file: string): Promise<BookStore> {
  const open = await openStore(file);
  if (!open.ok) throw new Error(open.error.detail);
  return open.value;
}

async function fill(file: string): Promise<void> {
  const made = await createStoreFile(file, emptyBook('small', 'Small disk'));
  if (!made.ok) throw new Error(made.error.detail);
  const open = await mustOpen(file);
  let book = open.stored.book;
  print((await store(open, book, 1, ' '.repeat(1_000_000))).saved);
  let number = 0;
  for (;;) {
    number += 1;
    const { saved, after } = await store(open, book, number, ' '.repeat(3000));
    if (!saved.ok) {
      print({ refused: saved.error, stored: number - 1 });
      break;
    }
    book = after;
  }
  await open.close();
  const again = await mustOpen(file);
  print({ revision: again.stored.revision, properties: again.stored.book.properties.length });
  await writeEverythingElse(again, path.dirname(file));
}

/** On the full disk: a copy of the book, a new book, a restored one, a file for other programs. Then what lies on the disk. */
async function writeEverythingElse(open: BookStore, folder: string): Promise<void> {
  print(await open.copyTo(path.join(folder, 'copy.swardway')));
  await open.close();
  print(await createStoreFile(path.join(folder, 'other.swardway'), emptyBook('other', 'Other')));
  print(await replaceBook(open.file, open.file, null));
  print(await writeWhole(path.join(folder, 'out.csv'), 'x'.repeat(500_000)));
  print({ left: await readdir(folder) });
}

async function writeThree(open: BookStore): Promise<void> {
  let { book } = open.stored;
  for (const number of [1, 2, 3]) {
    book = (await store(open, book, open.stored.revision + number)).after;
  }
  process.stdout.write('stored 3\n');
}

async function run(command: string | undefined, file: string): Promise<void> {
  if (command === 'fill') await fill(file);
  else {
    const open = await openStore(file);
    print(open.ok ? { ok: true, readOnlyBecause: open.value.readOnlyBecause } : open);
    // The timer keeps the store itself as well: a connection that nothing refers to is closed when memory is tidied up.
    if (command === 'write' && open.ok) await writeThree(open.value);
    if ((command === 'hold' || command === 'write') && open.ok) setInterval(() => open.value.file, 60_000);
    else if (open.ok && process.env.TRY_EDIT !== undefined) {
      print((await store(open.value, open.value.stored.book, open.value.stored.revision + 1)).saved);
    }
  }
}

if (process.argv[3] !== undefined) void run(process.argv[2], process.argv[3]);
