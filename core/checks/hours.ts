import { type Issue, issue } from '../base/index.ts';
import type { Hours } from '../book/index.ts';
import { formatClock } from '../units/index.ts';
import { named, type Rule } from './rule.ts';

/** Hours that end before they begin, so that nothing can ever be done in them. */
export const hours: Rule = {
  code: 'hours-reversed',
  find: (book) => [
    ...book.properties.flatMap((each) => reversed(named('property', each), each.hours)),
    ...book.fillPoints.flatMap((each) => reversed(named('fill point', each), each.hours)),
  ],
};

function reversed(where: string, hours: Hours | undefined): readonly Issue[] {
  if (hours === undefined || hours.closeMin > hours.openMin) return [];
  const [open, close] = [formatClock(hours.openMin * 60), formatClock(hours.closeMin * 60)];
  const message = `Its hours open at ${open} and close at ${close}, so they are never open; correct one of the two.`;
  return [issue('error', 'hours-reversed', where, message)];
}
