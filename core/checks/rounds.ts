import { type Issue, issue } from '../base/index.ts';
import type { Book, Round } from '../book/index.ts';
import { named, type Rule } from './rule.ts';

/** Rounds with nothing to do, or with days in a muddle. */
export const rounds: Rule = {
  code: 'round-senseless',
  find: (book) => book.rounds.flatMap((round) => [...empty(book, round), ...days(round)]),
};

function empty(book: Book, round: Round): readonly Issue[] {
  const skipped = new Set(round.skipped.map((each) => each.propertyId));
  const wanted = round.propertyIds === 'all' ? book.properties.map((each) => each.id) : round.propertyIds;
  if (wanted.some((id) => !skipped.has(id))) return [];
  return [
    issue(
      'warning',
      'round-senseless',
      named('round', round),
      'Nothing is left to do in it; add properties or take fewer out.',
    ),
  ];
}

function days(round: Round): readonly Issue[] {
  const where = named('round', round);
  const inOrder = round.dates.every((date, index) => index === 0 || date > (round.dates[index - 1] ?? ''));
  const first = round.dates[0] ?? '';
  return [
    ...(inOrder
      ? []
      : [
          issue(
            'error',
            'round-senseless',
            where,
            'Its days are not in order, or one stands twice; put them in order.',
          ),
        ]),
    ...(round.dueDate !== undefined && round.dueDate < first
      ? [
          issue(
            'warning',
            'round-senseless',
            where,
            `It is due on ${round.dueDate}, before its first day ${first}; correct one of the two.`,
          ),
        ]
      : []),
  ];
}
