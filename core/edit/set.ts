import { ok } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { ApplyResult, BookSettings, SetAction } from './action.ts';

const SETTING_NAMES = ['name', 'note', 'units', 'prices', 'travel', 'matrix'] as const;

export function applySet(book: Book, action: SetAction): ApplyResult {
  const names = SETTING_NAMES.filter((name) => action.changes[name] !== undefined);
  const label = action.label ?? `Change ${names.length === 0 ? 'nothing' : names.join(', ')} of the book`;
  let after = book;
  const before: Record<string, unknown> = {};
  for (const name of names) {
    before[name] = book[name] ?? null;
    after = setOne(after, name, action.changes);
  }
  return ok({ book: after, inverse: { kind: 'set', changes: before as BookSettings, label }, label });
}

function setOne(book: Book, name: (typeof SETTING_NAMES)[number], changes: BookSettings): Book {
  if (changes[name] !== null) return { ...book, [name]: changes[name] };
  const { matrix: _, ...rest } = book;
  return rest as Book;
}
