import { type Issue, issue } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import { type Calibrated, overdueUses } from '../calibrate/index.ts';
import { named, type Rule } from './rule.ts';

/** Heads and hand methods that were used so often since the last calibration that a new one is due. */
export const calibrationDue: Rule = {
  code: 'calibration-due',
  find: (book) => ownersOf(book).flatMap(({ where, owner }) => dueIssue(where, owner)),
};

function ownersOf(book: Book): readonly { readonly where: string; readonly owner: Calibrated }[] {
  const heads = book.machines.flatMap((machine) =>
    machine.heads.map((owner) => ({ where: `${named('machine', machine)}, head ${owner.name}`, owner })),
  );
  return [...heads, ...book.handMethods.map((owner) => ({ where: named('hand method', owner), owner }))];
}

function dueIssue(where: string, owner: Calibrated): readonly Issue[] {
  const overdue = overdueUses(owner);
  if (overdue === null || overdue < 0) return [];
  const last = owner.calibrations
    ?.map((each) => each.on)
    .sort()
    .at(-1);
  const since = last === undefined ? 'it was never calibrated here' : `it was last calibrated on ${last}`;
  return [
    issue(
      'warning',
      'calibration-due',
      where,
      `Used on ${owner.usesSince ?? 0} days since, due after ${owner.dueAfterUses}; ${since}. Calibrate it, or change when it is due.`,
    ),
  ];
}
