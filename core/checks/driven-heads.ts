import { issue } from '../base/index.ts';
import type { Book, Head, Machine } from '../book/index.ts';
import { passFault, passHeadOf } from '../passes/index.ts';
import { formatShare } from '../units/index.ts';
import { type Finding, named, type Rule } from './rule.ts';

/** Heads of which the book does not say how they are driven, although lawns are drawn. */
export const undrivenHeads: Rule = {
  code: 'head-without-passes',
  find: (book) => {
    const drawn = drawnZones(book);
    if (drawn === 0) return [];
    return headsOf(book).flatMap(({ where, head }) =>
      head.passes === undefined ? [undriven(where, head, drawn)] : [],
    );
  },
};

/** Heads that cannot be driven as the book says: an overlap as wide as the swath, sections that do not make the swath. */
export const undrivableHeads: Rule = {
  code: 'passes-not-possible',
  find: (book) =>
    headsOf(book).flatMap(({ where, head }): readonly Finding[] => {
      const passHead = passHeadOf(head);
      const fault = passHead === null ? null : passFault(passHead, where);
      if (fault === null) return [];
      return [issue('warning', 'passes-not-possible', where, `${fault.detail} ${fault.hint}`)];
    }),
};

type Named = { readonly where: string; readonly head: Head };

function headsOf(book: Book): readonly Named[] {
  return book.machines.flatMap((machine: Machine) =>
    machine.heads.map((head) => ({ where: `${named('machine', machine)}, head ${head.name}`, head })),
  );
}

function drawnZones(book: Book): number {
  return book.properties.reduce(
    (sum, property) => sum + property.zones.filter((zone) => zone.shape.kind === 'drawn').length,
    0,
  );
}

function undriven(where: string, { fieldEfficiency }: Head, drawn: number): Finding {
  const zones = drawn === 1 ? '1 zone is drawn' : `${drawn} zones are drawn`;
  const words = `Its work is reckoned from a field efficiency of ${formatShare(fieldEfficiency)}, although ${zones}. Say in the shed how it is driven, and the shape of each lawn counts.`;
  return issue('note', 'head-without-passes', where, words);
}
