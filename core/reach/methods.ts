import type { Book, Treatment } from '../book/index.ts';
import { handDoes, purposeOf } from './material-rules.ts';
import type { Method } from './types.ts';

/**
 * The methods of a book that are made for a treatment: every head of that purpose, machines first, then hand methods, in the
 * order of the book. Whether one of them can treat a zone is for `reach` to say.
 */
export function methodsFor(book: Book, treatment: Treatment): readonly Method[] {
  const purpose = purposeOf(treatment);
  const machines = book.machines.flatMap((machine) =>
    machine.heads
      .filter((head) => head.purpose === purpose)
      .map((head): Method => ({ kind: 'machine', machineId: machine.id, headId: head.id })),
  );
  const hands = book.handMethods
    .filter((hand) => handDoes(hand, treatment))
    .map((hand): Method => ({ kind: 'hand', handMethodId: hand.id }));
  return [...machines, ...hands];
}
