import type { Book, Timing } from '../../../../core/book/index.ts';
import type { Action } from '../../../../core/edit/index.ts';
import { whenWords } from '../../../texts/round/index.ts';

/** Takes a timing out of a book, and out of every round and programme that has it, as one step. */
export function withoutTiming(book: Book, timing: Timing): Action {
  const rounds = book.rounds.flatMap((round): Action[] => {
    const { timingId, ...record } = round;
    return timingId === timing.id ? [{ kind: 'put', table: 'rounds', record }] : [];
  });
  const programmes = book.programmes.flatMap((programme): Action[] => {
    if (!programme.steps.some((step) => step.timingId === timing.id)) return [];
    const steps = programme.steps.map((step) => {
      const { timingId, ...rest } = step;
      return timingId === timing.id ? rest : step;
    });
    return [{ kind: 'put', table: 'programmes', record: { ...programme, steps } }];
  });
  const label = whenWords.edits.removed(timing.name);
  return {
    kind: 'several',
    label,
    actions: [...rounds, ...programmes, { kind: 'remove', table: 'timings', id: timing.id }],
  };
}
