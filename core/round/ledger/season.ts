import type { Book, Property, Round, Treatment, Visit, Zone } from '../../book/index.ts';
import { treatedGround } from '../../demand/index.ts';
import { type Members, membersOf } from './members.ts';
import { type Recipes, recipesOf } from './recipes.ts';
import { recordedApplications } from './recorded.ts';
import type { Application, ByProduct, Ground } from './types.ts';

/** What a ledger needs beside the book. */
export type SeasonOptions = {
  readonly ground: Ground;
  /** False where nobody asks for the ground of what is planned; it is then 0. */
  readonly plannedGround?: boolean;
  /** Day on which a plan that is at hand has a round at a property; absent: any of the round's days. */
  readonly plannedDay?: (roundId: string, propertyId: string) => string | undefined;
};

/** All that was done and is planned on the lawns of a book. */
export type Season = {
  readonly book: Book;
  readonly recipes: Recipes;
  /** Rank of every round by its first day; of two that begin on one day, the one that stands first comes first. */
  readonly rankOf: (roundId: string) => number;
  /** Applications on a property, recorded ones first, each list in the order of the rounds. */
  readonly at: (property: Property) => readonly Application[];
  /** What one round puts down on a zone, by treatment. */
  readonly ownRates: (round: Round, property: Property, zone: Zone) => ReadonlyMap<string, ByProduct>;
  /** What could not be counted on the properties asked for so far. */
  readonly gaps: ReadonlySet<string>;
};

type Planned = {
  readonly round: Round;
  readonly members: Members;
  readonly rank: number;
  readonly first: string;
  readonly last: string;
  readonly years: readonly string[];
  readonly treatments: readonly Treatment[];
};

/**
 * Reads the season of a book. What was recorded stands for itself. What a round has planned counts as well, on each of its lawns and
 * zones, until it is recorded there as done, or the lawn is recorded as skipped.
 */
export function readSeason(book: Book, options: SeasonOptions): Season {
  const { ground } = options;
  const recipes = recipesOf(book);
  const rounds = inOrder(book, recipes, ground);
  const ranks = new Map(rounds.map((each) => [each.round.id, each.rank]));
  const visits = visitsByProperty(book.visits);
  const gaps = new Set<string>();
  const reading = { recipes, ground, say: (gap: string) => gaps.add(gap) };
  return {
    book,
    recipes,
    gaps,
    rankOf: (roundId) => ranks.get(roundId) ?? -1,
    at: (property) => {
      const byRound = visits.get(property.id) ?? new Map<string, readonly Visit[]>();
      const recorded = [...byRound].flatMap(([roundId, own]) => {
        const round = rounds.find((each) => each.round.id === roundId);
        const named = { roundName: round === undefined ? roundId : nameOf(round.round), rank: round?.rank ?? -1 };
        return recordedApplications(reading, property, own).map((each): Application => ({ ...each, ...named }));
      });
      const planned = rounds.flatMap((each) =>
        plannedApplications(recipes, options, property, each, byRound.get(each.round.id) ?? []),
      );
      return [...recorded, ...planned];
    },
    ownRates: (round, property, zone) => {
      const own = rounds.find((each) => each.round.id === round.id);
      const treatments = own?.treatments.filter((each) => own.members.treats(property, zone, each.id)) ?? [];
      return new Map(treatments.map((each) => [each.id, recipes.rates.get(each.id) ?? new Map()]));
    },
  };
}

function inOrder(book: Book, { treatments }: Recipes, ground: Ground): readonly Planned[] {
  return book.rounds
    .map((round, index) => ({ round, index, days: round.dates.toSorted() }))
    .toSorted((one, other) => compare(one.days[0] ?? '', other.days[0] ?? '') || one.index - other.index)
    .map(({ round, days }, rank) => ({
      round,
      rank,
      members: membersOf(book, round, ground),
      first: days[0] ?? '',
      last: days.at(-1) ?? '',
      years: [...new Set(days.map((each) => each.slice(0, 4)))],
      treatments: round.treatmentIds.flatMap((id) => treatments.get(id) ?? []),
    }));
}

function compare(one: string, other: string): number {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}

function visitsByProperty(visits: readonly Visit[]): ReadonlyMap<string, ReadonlyMap<string, readonly Visit[]>> {
  const found = new Map<string, Map<string, Visit[]>>();
  for (const visit of visits) {
    const rounds = found.get(visit.propertyId) ?? new Map<string, Visit[]>();
    found.set(visit.propertyId, rounds);
    const own = rounds.get(visit.roundId);
    if (own === undefined) rounds.set(visit.roundId, [visit]);
    else own.push(visit);
  }
  return found;
}

/** What a round still has before it on a property. */
function plannedApplications(
  recipes: Recipes,
  { ground, plannedDay, plannedGround = true }: SeasonOptions,
  property: Property,
  planned: Planned,
  visits: readonly Visit[],
): readonly Application[] {
  const { round, members, rank, treatments } = planned;
  if (!members.has(property) || visits.some((each) => each.outcome.kind === 'skipped')) return [];
  const done = new Set(
    visits.flatMap(({ outcome }) =>
      outcome.kind === 'done' ? outcome.tasks.map((each) => `${each.zoneId}\n${each.treatmentId}`) : [],
    ),
  );
  const day = plannedDay?.(round.id, property.id);
  const days =
    day === undefined
      ? { first: planned.first, last: planned.last, years: planned.years }
      : { first: day, last: day, years: [day.slice(0, 4)] };
  const roundName = nameOf(round);
  return property.zones.flatMap((zone) =>
    treatments
      .filter(({ id }) => !done.has(`${zone.id}\n${id}`) && members.treats(property, zone, id))
      .map(
        (treatment): Application => ({
          zoneId: zone.id,
          treatmentId: treatment.id,
          roundId: round.id,
          roundName,
          status: 'planned',
          rank,
          ...days,
          seeds: treatment.kind === 'seed',
          treatedSqFt: plannedGround ? plannedSqFt(ground, property, zone, treatment) : 0,
          rates: recipes.rates.get(treatment.id) ?? new Map(),
        }),
      ),
  );
}

function plannedSqFt(ground: Ground, property: Property, zone: Zone, { coverage }: Treatment): number {
  const areaSqFt = ground.areaSqFt(property, zone.id) ?? 0;
  return treatedGround(coverage, areaSqFt, coverage.kind === 'band' ? ground.bandSqFt(property, zone, coverage) : null);
}

function nameOf(round: Round): string {
  return `round ${round.name === '' ? round.id : round.name}`;
}
