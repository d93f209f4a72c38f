import { err, ok } from '../base/index.ts';
import { type Book, memberFault } from '../book/index.ts';
import type { ApplyResult, BookSettings, SetAction } from './action.ts';

/** What a book can be without. */
const MAY_GO = [
  'clock',
  'dates',
  'matrix',
  'roads',
  'estimate',
  'overlays',
  'calendar',
  'siteOffsets',
  'spread',
  'firm',
] as const;
const SETTING_NAMES = ['name', 'note', 'units', 'prices', 'travel', ...MAY_GO] as const;
type SettingName = (typeof SETTING_NAMES)[number];

export function applySet(book: Book, action: SetAction): ApplyResult {
  const names = SETTING_NAMES.filter((name) => action.changes[name] !== undefined);
  const label = action.label ?? `Change ${names.length === 0 ? 'nothing' : names.join(', ')} of the book`;
  let after = book;
  const before: Record<string, unknown> = {};
  for (const name of names) {
    const refused = refuse(name, action.changes[name]);
    if (refused !== null) return refused;
    before[name] = book[name] ?? null;
    after = setOne(after, name, action.changes);
  }
  return ok({ book: after, inverse: { kind: 'set', changes: before as BookSettings, label }, label });
}

function refuse(name: SettingName, value: unknown): ApplyResult | null {
  if (value === null) {
    if (MAY_GO.some((each) => each === name)) return null;
    return err('book-invalid', `${name} of the book`, 'A book cannot be without it.', 'Enter a value.');
  }
  const fault = memberFault(name, value, `${name} of the book`);
  return fault === null ? null : { ok: false, error: fault };
}

function setOne(book: Book, name: SettingName, changes: BookSettings): Book {
  if (changes[name] !== null) return { ...book, [name]: changes[name] };
  const { [name]: _, ...rest } = book;
  return rest as Book;
}
