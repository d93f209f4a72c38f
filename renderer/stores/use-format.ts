import { useMemo } from 'react';
import { type Book, namesWithFigures } from '../../core/book/index.ts';
import type { Reading } from '../../core/units/index.ts';
import { type Formatter, formatterFor, readingBy, type WeekBegin, weekBeginBy } from '../format/index.ts';
import { useBook } from './book.ts';
import { useHost } from './host.ts';

/** How the user reads figures now. */
export function currentReading(): Reading {
  return readingBy(useHost.getState().settings);
}

function useReading(): Reading {
  const units = useHost((state) => state.settings.units);
  const clock = useHost((state) => state.settings.clock);
  const dates = useHost((state) => state.settings.dates);
  return useMemo(() => readingBy({ units, clock, dates }), [units, clock, dates]);
}

/** The formatter of the units, the clock and the order of dates that the user reads. */
export function useFormat(): Formatter {
  const reading = useReading();
  return useMemo(() => formatterFor(reading, namesOfOpenBook), [reading]);
}

function namesOfOpenBook(): readonly string[] {
  const book = useBook.getState().open?.book;
  return book === undefined ? [] : namesWithFigures(book);
}

/** The first day of the weeks of calendars now. */
export function currentWeekBegin(): WeekBegin {
  return weekBeginBy(useHost.getState().settings.weekBegin);
}

/** The same, told anew when it changes. */
export function useWeekBegin(): WeekBegin {
  return weekBeginBy(useHost((state) => state.settings.weekBegin));
}

/** The book as sheets and files made in this window are to tell it: as the user reads, whatever the book says. */
export function useBookAsRead(book: Book | null): Book | null {
  const reading = useReading();
  return useMemo(() => (book === null ? null : { ...book, ...reading }), [book, reading]);
}
