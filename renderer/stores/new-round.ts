import type { Book, Round } from '../../core/book/index.ts';
import { calendarOf, nextWorkday } from '../../core/round/calendar/index.ts';
import { todayHere } from '../format/index.ts';
import { setUpWords } from '../texts/round/index.ts';
import { useBook } from './book.ts';
import { addRound, freshId } from './edits.ts';

/** Why no round can be made yet, or null. */
export function whyNoRound(book: Book): string | null {
  if (book.treatments.length === 0) return setUpWords.edits.needsTreatment;
  return book.rigs.length === 0 ? setUpWords.edits.needsRig : null;
}

/** A round of the first treatment with every rig, on the next working day. */
export function newRound(book: Book, id: string, today: string): Round {
  return {
    id,
    name: setUpWords.edits.newName(book.rounds.length + 1),
    treatmentIds: book.treatments.slice(0, 1).map((treatment) => treatment.id),
    propertyIds: 'all',
    skipped: [],
    dates: [nextWorkday(calendarOf(book), today)],
    rigIds: book.rigs.map((rig) => rig.id),
    wetGround: false,
  };
}

/** Adds a round of the first treatment with every rig, on the next working day, where one can be made. */
export function addNewRound(): void {
  const book = useBook.getState().open?.book;
  if (book === undefined || whyNoRound(book) !== null) return;
  addRound(newRound(book, freshId(book.rounds, 'round'), todayHere()));
}
