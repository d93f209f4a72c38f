import type { Book, Round } from '../../core/book/index.ts';
import type { Plan } from '../../core/plan/result/index.ts';

/** What the rooms need, in the order in which a new book gets it. */
export const NEEDS = ['lawns', 'machines', 'fillPoints', 'rigs', 'treatments', 'round', 'plan', 'stops'] as const;
export type Need = (typeof NEEDS)[number];

type Known = { readonly book: Book; readonly round: Round | null; readonly plan: Plan | null };

/** The first thing that is missing before a need is met, that need included; null where it is met. */
export function firstMissing(need: Need, known: Known): Need | null {
  // What is there needs nothing any more: a plan stays when its last machine is taken away.
  if (isThere(need, known)) return null;
  return NEEDS.find((each) => !isThere(each, known)) ?? null;
}

function isThere(need: Need, { book, round, plan }: Known): boolean {
  switch (need) {
    case 'lawns':
      return book.properties.length > 0;
    case 'machines':
      return book.machines.length + book.handMethods.length > 0;
    case 'fillPoints':
      return book.fillPoints.length > 0;
    case 'rigs':
      return book.rigs.length > 0;
    case 'treatments':
      return book.treatments.length > 0;
    case 'round':
      return round !== null;
    case 'plan':
      return plan !== null;
    case 'stops':
      return (plan?.days ?? []).some((day) => day.stops.length > 0);
  }
}
