import type { Book } from '../../book/index.ts';
import { buildProblem } from '../problem/index.ts';
import type { TaskName } from './types.ts';

/** The book with a round that has one lawn and one rig. */
export function aloneIn(book: Book, roundId: string, task: TaskName, rigId: string): Book {
  const rounds = book.rounds.map((round) =>
    round.id === roundId ? { ...round, propertyIds: [task.propertyId], rigIds: [rigId], skipped: [] } : round,
  );
  return { ...book, rounds };
}

/** Why a rig cannot do a lawn, as the building of the problem says it when the lawn and the rig are all there is. */
export function refusalWords(book: Book, roundId: string, task: TaskName, rigId: string): string {
  const built = buildProblem(aloneIn(book, roundId, task, rigId), roundId);
  if (!built.ok) return built.error.detail;
  const words = built.value.unplaceable.flatMap((each) => each.reasons.map((reason) => reason.words));
  return words.length === 0 ? 'not all of its work in one visit' : [...new Set(words)].join('; ');
}
