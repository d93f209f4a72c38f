import { asRead, clockBeside, type Reading } from '../units/index.ts';
import type { Book } from './model.ts';

/** How sheets and files of a book are read: what it says, else a clock that goes with its units, and the month before the day. */
export function readingOf({ units, clock, dates }: Pick<Book, 'units' | 'clock' | 'dates'>): Reading {
  return { units, clock: clock ?? clockBeside(units), dates: dates ?? 'month-first' };
}

/** The reading that changes most, which shows what any of them would change. */
const FAR: Reading = { units: 'metric', clock: '24-hour', dates: 'day-first' };
const known = new WeakMap<Book, readonly string[]>();

/** Names of a book that hold a figure themselves, such as "Hose reel 200 ft": they stay as they are, however sentences are read. */
export function namesWithFigures(book: Book): readonly string[] {
  const before = known.get(book);
  if (before !== undefined) return before;
  const names = [...new Set(allNames(book).filter((name) => asRead(name, FAR) !== name))];
  known.set(book, names);
  return names;
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
