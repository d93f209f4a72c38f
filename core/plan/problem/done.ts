import { type Issue, issue } from '../../base/index.ts';
import type { Gathered } from './gather.ts';
import type { TaskFacts } from './options.ts';
import type { DoneWork } from './types.ts';

/** The work of a round without what was done before, and a note of how much that is. */
export function withoutDone(gathered: Gathered, done: readonly DoneWork[], where: string): Gathered {
  if (done.length === 0) return gathered;
  const byProperty = new Map<string, DoneWork[]>();
  for (const each of done) byProperty.set(each.propertyId, [...(byProperty.get(each.propertyId) ?? []), each]);
  const facts = gathered.facts.filter(
    (each) => !(byProperty.get(each.property.id) ?? []).some((work) => isThat(work, each)),
  );
  const count = gathered.facts.length - facts.length;
  if (count === 0) return gathered;
  return { facts, issues: [...gathered.issues, doneNote(where, count)] };
}

function isThat({ zoneId, treatmentId, step }: DoneWork, { zone, treatment, demand }: TaskFacts): boolean {
  return (
    (zoneId === undefined || zoneId === zone.id) &&
    (treatmentId === undefined || treatmentId === treatment.id) &&
    (step === undefined || step === demand.step)
  );
}

function doneNote(where: string, count: number): Issue {
  const words = count === 1 ? 'One treatment of a zone is' : `${count} treatments of zones are`;
  return issue(
    'note',
    'done-left-out',
    where,
    `${words} recorded as done, or left out for good, and not planned again.`,
  );
}
