import { expect, test, vi } from 'vitest';
import { emptyBook } from '../../../core/book/index.ts';
import { sampleBook } from '../../support/samples.ts';
import { storedPlan } from '../../support/stored-plans.ts';

vi.mock('lucide-react', () => ({}));
const { firstMissing, NEEDS } = await import('../../../renderer/next/index.ts');

test('what is missing first is told in the order in which a book is filled', () => {
  const whole = sampleBook('residential-day');
  const plan = storedPlan('residential-day');
  const bare = emptyBook('b', 'Bare');
  const said: (string | null)[] = [];
  let book = bare;
  const ask = (round = book.rounds[0] ?? null, of: typeof plan | null = null) =>
    said.push(firstMissing('stops', { book, round, plan: of }));
  ask();
  for (const member of ['properties', 'machines', 'fillPoints', 'rigs', 'treatments', 'rounds'] as const) {
    book = { ...book, [member]: whole[member] };
    ask();
  }
  ask(book.rounds[0] ?? null, { ...plan, days: [] });
  ask(book.rounds[0] ?? null, plan);
  expect(said).toEqual([...NEEDS, null]);
});

test('what is there needs nothing, whatever was taken away since', () => {
  const plan = storedPlan('residential-day');
  expect(firstMissing('stops', { book: emptyBook('b', 'Bare'), round: null, plan })).toBeNull();
});
