import type { Book, Round } from '../../../core/book/index.ts';

/** Why no round can be made yet, or null. */
export function whyNoRound(book: Book): string | null {
  if (book.treatments.length === 0) return 'Add a treatment in the shed first';
  return book.rigs.length === 0 ? 'Add a rig in the shed first' : null;
}

/** A round of the first treatment with every rig, on the next working day. */
export function newRound(book: Book, id: string, today: string): Round {
  return {
    id,
    name: `Round ${book.rounds.length + 1}`,
    treatmentIds: book.treatments.slice(0, 1).map((treatment) => treatment.id),
    propertyIds: 'all',
    skipped: [],
    dates: [nextDate([today])],
    rigIds: book.rigs.map((rig) => rig.id),
    wetGround: false,
  };
}

const DAY_MS = 86_400_000;
const SATURDAY = 6;

/** The next day after the last one that is no Saturday or Sunday; YYYY-MM-DD. */
export function nextDate(dates: readonly string[]): string {
  const last = dates.toSorted().at(-1) ?? '2027-01-01';
  let day = new Date(`${last}T12:00:00Z`);
  do day = new Date(day.getTime() + DAY_MS);
  while (day.getUTCDay() === 0 || day.getUTCDay() === SATURDAY);
  return day.toISOString().slice(0, 10);
}

/** The list with one member added or taken out; the order of the others stays. */
export function withMember(chosen: readonly string[], id: string, on: boolean): readonly string[] {
  if (!on) return chosen.filter((each) => each !== id);
  return chosen.includes(id) ? chosen : [...chosen, id];
}
