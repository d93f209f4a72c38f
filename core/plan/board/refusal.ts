import type { Book } from '../../book/index.ts';
import { buildProblem } from '../problem/index.ts';
import type { TaskName } from './types.ts';

/** Why a rig cannot do a lawn, as the building of the problem says it when the lawn and the rig are all there is. */
export function refusalWords(book: Book, roundId: string, task: TaskName, rigId: string): string {
  const rounds = book.rounds.map((round) =>
    round.id === roundId ? { ...round, propertyIds: [task.propertyId], rigIds: [rigId], skipped: [] } : round,
  );
  const built = buildProblem({ ...book, rounds }, roundId);
  if (!built.ok) return built.error.detail;
  const words = built.value.unplaceable.flatMap((each) => each.reasons.map((reason) => reason.words));
  return words.length === 0 ? 'not all of its work in one visit' : [...new Set(words)].join('; ');
}
