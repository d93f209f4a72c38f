import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { type Book, writeBook } from '../../core/book/index.ts';
import { checkInSteps, RULES } from '../../core/checks/index.ts';
import { type Action, applyAction } from '../../core/edit/index.ts';
import { createStoreFile } from '../../electron/services/store/index.ts';
import { changesBetween } from '../../electron/services/store/records.ts';
import { largeBook } from '../bench/load/large-book.ts';
import { startTestHost } from '../electron/support/test-host.ts';

/**
 * What an edit of one lawn sets going in a large book, counted and not timed: `npm run bench:load` says what it takes. A whole book that is
 * written, sent or looked through anew for every edit would show here.
 */
const LAWNS = 400;
const book = largeBook(LAWNS);

function editOf(lawnAt: number, note: string): Action {
  const lawn = book.properties[lawnAt];
  if (lawn === undefined) throw new Error('there is no such lawn');
  return { kind: 'put', table: 'properties', record: { ...lawn, note } };
}

function after(action: Action): Book {
  const applied = applyAction(book, action);
  if (!applied.ok) throw new Error(applied.error.detail);
  return applied.value.book;
}

/** How many steps the checks make, and what they find. */
function checked(of: Book) {
  const steps = checkInSteps(of);
  for (let count = 0; ; count += 1) {
    const step = steps.next();
    if (step.done === true) return { count, found: step.value };
  }
}

test('the store writes the one record', () => {
  expect(changesBetween(book, after(editOf(7, 'wet')))).toMatchObject([
    { kind: 'put-record', collection: 'properties', slot: book.properties[7]?.id },
  ]);
});

test('the checks look at every lawn once, in steps, and after an edit at the changed one alone', () => {
  const first = checked(book);
  expect(first.count).toBeGreaterThan(LAWNS);
  expect(checked(book).count).toBe(RULES.length);
  const edited = after(editOf(7, 'wet'));
  const second = checked(edited);
  const rulesOfLawns = RULES.filter((each) => each.prepare !== undefined).length;
  expect(second.count).toBeGreaterThan(RULES.length);
  expect(second.count).toBeLessThanOrEqual(RULES.length + rulesOfLawns);
  const told = (found: typeof second.found) => found.map(({ code, where, message }) => ({ code, where, message }));
  expect(told(second.found)).toEqual(told(RULES.flatMap((rule) => rule.find(edited))));
});

test('the host answers and tells in a few words, however large the book is', async () => {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-large-'));
  const file = path.join(folder, 'large.swardway');
  const made = await createStoreFile(file, book);
  expect(made.ok).toBe(true);
  const host = await startTestHost({ open: { kind: 'file', file } });
  try {
    const screen = host.screen('one');
    const wish = (await screen.must('app.info', {})).openAtStart;
    if (wish?.kind !== 'file') throw new Error('the host names the book');
    const { session, revision } = await screen.must('book.open', { token: wish.token });
    screen.forget();
    const saved = await screen.must('book.apply', { session, action: editOf(7, 'wet'), baseRevision: revision });
    const said = JSON.stringify([saved, screen.events]).length;
    expect(screen.events.map(({ name }) => name)).toEqual(['book.saved']);
    expect(said).toBeLessThan(1000);
    expect(writeBook(book).length / said).toBeGreaterThan(100);
  } finally {
    await host.close();
    await rm(folder, { recursive: true, force: true });
  }
});
