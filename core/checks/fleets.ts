import { type Issue, issue } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import { named, type Rule } from './rule.ts';

/** Fleets that cannot do anything, or that count a machine twice. */
export const fleets: Rule = {
  code: 'fleet-idle',
  find: (book) => book.fleets.flatMap((fleet) => idle(book, fleet)),
};

function idle(book: Book, fleet: Book['fleets'][number]): readonly Issue[] {
  const rigs = fleet.rigIds.flatMap((id) => book.rigs.filter((rig) => rig.id === id));
  if (rigs.length === 0 || rigs.some((rig) => rig.machines.length + rig.handMethodIds.length > 0)) return [];
  const message = 'None of its rigs carries a machine or a hand method, so it can treat nothing. Put one on a rig.';
  return [issue('error', 'fleet-idle', named('fleet', fleet), message)];
}
