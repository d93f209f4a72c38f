import { type Issue, issue } from '../base/index.ts';
import type { Book, Round } from '../book/index.ts';
import { named, type Rule } from './rule.ts';

/** A machine that rides on two rigs of one round: it cannot be in both places on the same day. */
export const sharedMachines: Rule = {
  code: 'machine-on-two-rigs',
  find: (book) => book.rounds.flatMap((round) => shared(book, round)),
};

function shared(book: Book, round: Round): readonly Issue[] {
  const carriedBy = new Map<string, string>();
  return book.rigs
    .filter((rig) => round.rigIds.includes(rig.id))
    .flatMap((rig) =>
      [...new Set(rig.machines.map((each) => each.machineId))].flatMap((machineId) => {
        const other = carriedBy.get(machineId);
        carriedBy.set(machineId, named('rig', rig));
        if (other === undefined) return [];
        const message = `Machine ${machineId} rides on ${other} and on ${named('rig', rig)}; leave it on one of the two.`;
        return [issue('error', 'machine-on-two-rigs', named('round', round), message)];
      }),
    );
}
