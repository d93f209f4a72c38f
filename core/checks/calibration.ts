import { type Issue, issue } from '../base/index.ts';
import type { Book, Mix } from '../book/index.ts';
import { type Applicator, rateCheck, rateIssue } from '../calibrate/index.ts';
import { named, type Rule } from './rule.ts';

type Sprayer = { readonly where: string; readonly applicator: Applicator };

/**
 * Mixes whose carrier volume no calibrated head or hand method delivers within 5 %. A mix that one of them suits is left
 * alone, since heads for large and small volumes live side by side; what a plan really uses is checked with the plan.
 */
export const calibration: Rule = {
  code: 'rate-differs',
  find: (book) => {
    const sprayers = calibrated(book);
    return book.mixes.flatMap((mix) => unsuited(book, mix, sprayers));
  },
};

function calibrated(book: Book): readonly Sprayer[] {
  const heads = book.machines.flatMap((machine) =>
    machine.heads
      .filter((head) => head.purpose === 'spray')
      .map((head) => ({ where: `${named('machine', machine)}, head ${head.name}`, applicator: head })),
  );
  const hands = book.handMethods
    .filter((hand) => hand.what !== 'hand-spreader')
    .map((hand) => ({ where: named('hand method', hand), applicator: hand }));
  return [...heads, ...hands].filter(({ applicator }) => applicator.deliveredGalPer1000SqFt !== undefined);
}

function unsuited(book: Book, mix: Mix, sprayers: readonly Sprayer[]): readonly Issue[] {
  const checked = sprayers.map((each) => ({ ...each, check: rateCheck(mix, each.applicator, book.products) }));
  if (checked.some(({ check }) => check.kind === 'agrees')) return [];
  return checked.flatMap(({ where, check }) => {
    const found = rateIssue(check, where);
    return found === null ? [] : [issue('warning', 'rate-differs', where, found.message)];
  });
}
