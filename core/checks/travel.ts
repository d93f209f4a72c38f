import { type Issue, issue } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { Rule } from './rule.ts';

/** Travel settings that leave gaps, and imported tables that are not square. */
export const travel: Rule = {
  code: 'travel-incomplete',
  find: (book) => [...speeds(book), ...matrix(book)],
};

function odd(where: string, message: string): Issue {
  return issue('error', 'travel-incomplete', where, message);
}

function speeds({ travel }: Book): readonly Issue[] {
  const where = 'travel speeds';
  const ends = travel.speeds.map((each) => each.upToMiles ?? Number.POSITIVE_INFINITY);
  if (ends.length === 0) return [odd(where, 'There is no speed to drive at; enter at least one.')];
  const rising = ends.every((end, index) => index === 0 || end > (ends[index - 1] ?? 0));
  if (!rising) return [odd(where, 'Their distances do not rise from line to line; put them in order.')];
  return ends.at(-1) === Number.POSITIVE_INFINITY
    ? []
    : [odd(where, `There is no speed for more than ${ends.at(-1)} miles; leave the last distance open.`)];
}

function matrix({ matrix }: Book): readonly Issue[] {
  if (matrix === undefined) return [];
  const count = matrix.placeIds.length;
  const square = (rows: readonly (readonly unknown[])[]) =>
    rows.length === count && rows.every((row) => row.length === count);
  if (square(matrix.durationSec) && square(matrix.distanceM)) return [];
  return [
    odd(
      `travel table ${matrix.source}`,
      `It names ${count} places but does not have ${count} rows of ${count} figures each; import it again.`,
    ),
  ];
}
