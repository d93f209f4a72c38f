import { type Issue, issue } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import type { Rule } from './rule.ts';

type WithId = { readonly id: string };

/** Two records of one list with the same id: references could mean either. */
export const duplicateIds: Rule = {
  code: 'duplicate-id',
  find: (book) => [
    ...tables(book).flatMap(([name, records]) => doubled(name, records)),
    ...doubled('fill points and properties', places(book)),
    ...book.properties.flatMap((property) => [
      ...doubled(`zones of ${property.id}`, property.zones),
      ...doubled(`gates of ${property.id}`, property.gates),
      ...doubled(`exclusions of ${property.id}`, property.exclusions),
    ]),
    ...book.machines.flatMap((machine) => [
      ...doubled(`compartments of ${machine.id}`, machine.compartments),
      ...doubled(`heads of ${machine.id}`, machine.heads),
    ]),
  ],
};

function tables(book: Book): readonly (readonly [string, readonly WithId[]])[] {
  return [
    ['properties', book.properties],
    ['machines', book.machines],
    ['hand methods', book.handMethods],
    ['rigs', book.rigs],
    ['fill points', book.fillPoints],
    ['products', book.products],
    ['mixes', book.mixes],
    ['treatments', book.treatments],
    ['rounds', book.rounds],
    ['programmes', book.programmes],
    ['timings', book.timings],
    ['years of temperatures', book.temperatures],
    ['days of weather', book.weather],
    ['yearly caps', book.caps],
    ['applicators', book.applicators],
    ['fleets', book.fleets],
    ['visits', book.visits],
    ['readings of levels', book.gauges],
  ];
}

/** Places share one list of ids, since drive times are looked up by them. */
function places(book: Book): readonly WithId[] {
  const own = new Set(book.properties.map((each) => each.id));
  return book.fillPoints.filter((each) => own.has(each.id)).flatMap((each) => [each, each]);
}

function doubled(where: string, records: readonly WithId[]): readonly Issue[] {
  const seen = new Set<string>();
  const twice = new Set<string>();
  for (const { id } of records) (seen.has(id) ? twice : seen).add(id);
  return [...twice].map((id) =>
    issue('error', 'duplicate-id', where, `The id ${id} is used more than once; give each record its own.`),
  );
}
