/** Writes edits into a book file as fast as it can, and prints each revision once it is told that it is stored. Killed by a test. */
import { applyAction } from '../../../core/edit/index.ts';
import { openStore } from '../../../electron/services/store/index.ts';

const file = process.argv[2] ?? '';
if (file === '--only-build') process.exit(0);
const opened = await openStore(file);
if (!opened.ok) throw new Error(opened.error.detail);
const store = opened.value;
let { book, revision } = store.stored;
for (;;) {
  revision += 1;
  const changes = { note: String(revision), prices: { ...book.prices, perMile: revision } };
  const applied = applyAction(book, { kind: 'set', changes });
  if (!applied.ok) throw new Error(applied.error.detail);
  const { book: after, inverse, label } = applied.value;
  const action = { kind: 'set', changes } as const;
  const stored = await store.saveEdit({
    before: book,
    after,
    revision,
    at: '2027-03-16T07:00:00.000Z',
    label,
    action,
    inverse,
  });
  if (!stored.ok) throw new Error(stored.error.detail);
  book = after;
  process.stdout.write(`${revision}\n`);
}
