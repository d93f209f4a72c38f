import { issue } from '../base/index.ts';
import type { Book } from '../book/index.ts';
import {
  propertyOutOfRound,
  rigOutOfRound,
  roundWithoutSeason,
  stepWithoutBefore,
  timingOutOfRound,
  timingOutOfStep,
  treatmentOutOfProgramme,
  treatmentOutOfRound,
} from './reference-fixes.ts';
import { type Finding, type Fix, named, type Rule } from './rule.ts';

/** Ids that lead nowhere. */
export const references: Rule = {
  code: 'reference-missing',
  find: (book) => [
    ...ground(book),
    ...shed(book),
    ...work(book),
    ...rounds(book),
    ...programmes(book),
    ...book.fleets.flatMap((fleet) => missing(named('fleet', fleet), 'rig', ids(book.rigs), fleet.rigIds)),
    ...records(book),
  ],
};

function ids(records: readonly { readonly id: string }[]): ReadonlySet<string> {
  return new Set(records.map((each) => each.id));
}

/** One finding for each id that is not known; `fixOf` gives the safe way out, null for none. */
function missing(
  where: string,
  what: string,
  known: ReadonlySet<string>,
  wanted: readonly string[],
  fixOf: (id: string) => Fix | null = () => null,
): readonly Finding[] {
  return [...new Set(wanted)]
    .filter((id) => !known.has(id))
    .map((id) => {
      const found = issue(
        'error',
        'reference-missing',
        where,
        `There is no ${what} ${id}; choose another one or add it.`,
      );
      const fix = fixOf(id);
      return fix === null ? found : { ...found, fix };
    });
}

function ground(book: Book): readonly Finding[] {
  return book.properties.flatMap((property) =>
    property.zones.flatMap((zone) =>
      missing(`${named('property', property)}, zone ${zone.name}`, 'gate', ids(property.gates), zone.gateIds),
    ),
  );
}

function shed(book: Book): readonly Finding[] {
  const machines = ids(book.machines);
  return [
    ...book.machines.flatMap((machine) =>
      machine.heads.flatMap((head) =>
        missing(
          `${named('machine', machine)}, head ${head.name}`,
          'compartment',
          ids(machine.compartments),
          head.compartmentIds,
        ),
      ),
    ),
    ...book.handMethods.flatMap((hand) => {
      const from = hand.drawsFrom;
      if (from.kind !== 'machine') return [];
      const where = named('hand method', hand);
      const machine = book.machines.find((each) => each.id === from.machineId);
      return machine === undefined
        ? missing(where, 'machine', machines, [from.machineId])
        : missing(where, 'compartment', ids(machine.compartments), [from.compartmentId]);
    }),
    ...book.rigs.flatMap((rig) => [
      ...missing(named('rig', rig), 'fill point', ids(book.fillPoints), [
        rig.homeId,
        ...(rig.endId === undefined ? [] : [rig.endId]),
      ]),
      ...missing(
        named('rig', rig),
        'machine',
        machines,
        rig.machines.map((each) => each.machineId),
      ),
      ...missing(named('rig', rig), 'hand method', ids(book.handMethods), rig.handMethodIds),
    ]),
    ...book.fillPoints.flatMap((point) =>
      point.products === 'all'
        ? []
        : missing(named('fill point', point), 'product', ids(book.products), point.products),
    ),
  ];
}

function work(book: Book): readonly Finding[] {
  const products = ids(book.products);
  return [
    ...book.mixes.flatMap((mix) =>
      missing(
        named('mix', mix),
        'product',
        products,
        mix.parts.map((each) => each.productId),
      ),
    ),
    ...missing('estimate', 'treatment', ids(book.treatments), book.estimate?.treatmentIds ?? []),
    ...book.treatments.flatMap((treatment) => {
      const where = named('treatment', treatment);
      if (treatment.kind === 'spray') return missing(where, 'mix', ids(book.mixes), [treatment.mixId]);
      if (treatment.kind === 'aerate') return [];
      const starter = treatment.kind === 'seed' && treatment.starter !== undefined ? [treatment.starter.productId] : [];
      return missing(where, 'product', products, [treatment.productId, ...starter]);
    }),
  ];
}

function rounds(book: Book): readonly Finding[] {
  const properties = ids(book.properties);
  return book.rounds.flatMap((round) => {
    const where = named('round', round);
    const propertyIds = [
      ...(round.promised ?? []).map((each) => each.propertyId),
      ...(round.propertyIds === 'all' ? [] : round.propertyIds),
      ...round.skipped.map((each) => each.propertyId),
    ];
    const treatmentIds = [...round.treatmentIds, ...(round.only ?? []).map((each) => each.treatmentId)];
    const timings = round.timingId === undefined ? [] : [round.timingId];
    return [
      ...missing(where, 'treatment', ids(book.treatments), treatmentIds, (id) => treatmentOutOfRound(round, id)),
      ...missing(where, 'rig', ids(book.rigs), round.rigIds, (id) => rigOutOfRound(round, id)),
      ...missing(where, 'timing', ids(book.timings), timings, () => timingOutOfRound(round.id)),
      ...seasonOf(book, round),
      ...missing(where, 'property', properties, propertyIds, (id) => propertyOutOfRound(round.id, id)),
    ];
  });
}

/** Rigs of applicators. What visits name may be gone: records outlive what they are about. */
function records(book: Book): readonly Finding[] {
  const rigs = ids(book.rigs);
  return book.applicators.flatMap((each) => missing(named('applicator', each), 'rig', rigs, each.rigIds ?? []));
}

function seasonOf(book: Book, round: Book['rounds'][number]): readonly Finding[] {
  const { season } = round;
  if (season === undefined) return [];
  const where = named('round', round);
  const fix = () => roundWithoutSeason(round.id);
  const programme = book.programmes.find((each) => each.id === season.programmeId);
  return programme === undefined
    ? missing(where, 'programme', ids(book.programmes), [season.programmeId], fix)
    : missing(where, 'step of the programme', ids(programme.steps), [season.stepId], fix);
}

function programmes(book: Book): readonly Finding[] {
  return book.programmes.flatMap((programme) =>
    programme.steps.flatMap((step) => {
      const where = `${named('programme', programme)}, ${step.name === '' ? step.id : step.name}`;
      const after = step.after === undefined ? [] : [step.after.stepId];
      const timing = step.timingId === undefined ? [] : [step.timingId];
      const { treatmentIds } = step;
      return [
        ...missing(where, 'treatment', ids(book.treatments), treatmentIds, (id) =>
          treatmentOutOfProgramme(programme.id, id),
        ),
        ...missing(where, 'timing', ids(book.timings), timing, () => timingOutOfStep(programme.id, step.id)),
        ...missing(where, 'step before', ids(programme.steps), after, () => stepWithoutBefore(programme.id, step.id)),
      ];
    }),
  );
}
