import type { Book } from '../../core/book/index.ts';
import { metricText } from '../../core/units/index.ts';
import { useBook } from './book.ts';

const known = new WeakMap<Book, readonly string[]>();

/** Names of the open book that hold a quantity themselves, such as "Hose reel 200 ft": they stay as they are in any units. */
export function namesWithUnits(): readonly string[] {
  const book = useBook.getState().open?.book;
  if (book === undefined) return [];
  const before = known.get(book);
  if (before !== undefined) return before;
  const names = new Set(allNames(book).filter((name) => metricText(name) !== name));
  known.set(book, [...names]);
  return [...names];
}

function allNames(book: Book): readonly string[] {
  const nameOf = ({ name }: { readonly name: string }): string => name;
  const shelves = [
    book.handMethods,
    book.fillPoints,
    book.rigs,
    book.products,
    book.mixes,
    book.treatments,
    book.rounds,
  ];
  return [
    ...shelves.flatMap((shelf: readonly { readonly name: string }[]) => shelf.map(nameOf)),
    ...book.machines.flatMap((machine) => [machine, ...machine.heads, ...machine.compartments].map(nameOf)),
    ...book.properties.flatMap((property) => [property, ...property.zones, ...property.gates].map(nameOf)),
  ];
}
