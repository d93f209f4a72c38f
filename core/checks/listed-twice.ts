import { type Issue, issue } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import { named, type Rule } from './rule.ts';

/** The same thing named twice in one list of references. It counts once, or twice as much, and hardly either was meant. */
export const listedTwice: Rule = {
  code: 'listed-twice',
  find: (book) => [...ground(book), ...shed(book), ...work(book)],
};

function twice(where: string, what: string, ids: readonly string[]): readonly Issue[] {
  const seen = new Set<string>();
  const doubled = new Set<string>();
  for (const id of ids) (seen.has(id) ? doubled : seen).add(id);
  return [...doubled].map((id) =>
    issue('warning', 'listed-twice', where, `The ${what} ${id} is listed more than once; take the others out.`),
  );
}

function ground(book: Book): readonly Issue[] {
  return book.properties.flatMap((property) =>
    property.zones.flatMap((zone) => twice(`${named('property', property)}, zone ${zone.name}`, 'gate', zone.gateIds)),
  );
}

function shed(book: Book): readonly Issue[] {
  const heads = book.machines.flatMap((machine) =>
    machine.heads.flatMap((head) =>
      twice(`${named('machine', machine)}, head ${head.name}`, 'compartment', head.compartmentIds),
    ),
  );
  const rigs = book.rigs.flatMap((rig) => {
    const machines = rig.machines.map((each) => each.machineId);
    const where = named('rig', rig);
    return [...twice(where, 'machine', machines), ...twice(where, 'hand method', rig.handMethodIds)];
  });
  return [...heads, ...rigs];
}

function work(book: Book): readonly Issue[] {
  const mixes = book.mixes.flatMap((mix) => {
    const products = mix.parts.map((each) => each.productId);
    return twice(named('mix', mix), 'product', products);
  });
  const rounds = book.rounds.flatMap((round) => {
    const where = named('round', round);
    return [
      ...twice(where, 'treatment', round.treatmentIds),
      ...twice(where, 'property', round.propertyIds === 'all' ? [] : round.propertyIds),
      ...twice(where, 'rig', round.rigIds),
    ];
  });
  return [...mixes, ...rounds];
}
