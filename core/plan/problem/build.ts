import { err, ok, type Result } from '../../base/index.ts';
import type { Book, Property, Round } from '../../book/index.ts';
import { type AreaOf, lawnsOf } from '../../round/programme/index.ts';
import { assemble } from './assemble.ts';
import { dateFault } from './calendar.ts';
import { withoutDone } from './done.ts';
import { withEvenDays } from './even-days.ts';
import { freeze } from './freeze.ts';
import { type Gathered, gatherFacts, Measures, productIdsOf } from './gather.ts';
import { groupJobs } from './group.ts';
import { suppliesOf } from './materials.ts';
import { type DayQuestion, openDays } from './open-days.ts';
import { withOutages } from './outages.ts';
import type { ProblemOptions } from './problem-options.ts';
import { equipRig } from './rigs.ts';
import { firstFault, roundWhere } from './round-faults.ts';
import type { Problem } from './types.ts';
import { withAboard } from './under-way.ts';

/**
 * Freezes a round of a book into a planning problem.
 *
 * @returns the problem, or the first thing that makes planning senseless: 'reference-missing' (round, rig, home),
 *   'quantity-out-of-range' (a day that no calendar has), 'nothing-to-do', 'label-limit-broken', 'book-invalid' (one machine
 *   on two rigs), 'cancelled'. Work that no rig can do is not an error: it is listed in `unplaceable` with the reason for every rig.
 */
export function buildProblem(book: Book, roundId: string, options: ProblemOptions = {}): Result<Problem> {
  const round = book.rounds.find((each) => each.id === roundId);
  if (round === undefined) {
    return err(
      'reference-missing',
      `round ${roundId}`,
      'The book has no such round.',
      'Choose one of the rounds of the book.',
    );
  }
  const impossible = dateFault(round, roundWhere(round));
  if (impossible !== null) return { ok: false, error: impossible };
  const dates = round.dates.filter((date) => options.dates === undefined || options.dates.includes(date));
  const measures = new Measures(options.measures);
  const areaOf: AreaOf = (property) => measures.of(property).treatableSqFt;
  const { underWay = [], propertyIds, done = [] } = options;
  const { taken } = lawnsOf(book, round, areaOf);
  const left = propertyIds === undefined ? taken : taken.filter((each) => propertyIds.includes(each.id));
  const all = gatherFacts(book, round, left, measures);
  const gathered = withoutDone(all, done, roundWhere(round));
  if (all.facts.length > 0 && gathered.facts.length === 0) return allDone(round);
  const working = round.rigIds.flatMap((id) => book.rigs.filter((each) => each.id === id));
  const days = openDays(book, round, dates, working, roundWhere(round), dayQuestion(book, gathered, areaOf, options));
  const fault = firstFault(book, round, dates, gathered, days.noneOpen);
  if (fault !== null) return { ok: false, error: fault };
  const demands = gathered.facts.map((each) => each.demand);
  const supplies = withAboard(book, suppliesOf(book, demands), underWay);
  const rigs = working.map((rig) => equipRig(book, rig, supplies.stocks));
  const jobsOf = groupJobs(book, round, rigs, supplies, { facts: gathered.facts, measures }, options);
  if (jobsOf === null) return cancelled(round);
  const parts = assemble(book, round, dates, rigs, supplies, gathered, jobsOf, days, underWay, options.roads);
  const asked = { ...parts, ...(done.length === 0 ? {} : { done }) };
  return ok(freeze(withEvenDays(withOutages(asked, options.outages ?? []), options.evenUsdPerHour ?? 0)));
}

function allDone(round: Round): Result<never> {
  return err(
    'nothing-to-do',
    roundWhere(round),
    'All of its work is recorded as done, or left out for good.',
    'Take back what was marked by mistake, or plan another round.',
  );
}

function cancelled(round: Round): Result<never> {
  return err(
    'cancelled',
    roundWhere(round),
    'Planning was cancelled before the work was known.',
    'Plan again when you are ready.',
  );
}

function dayQuestion(
  book: Book,
  { facts }: Gathered,
  areaOf: AreaOf,
  { today, plannedDays }: ProblemOptions,
): DayQuestion {
  return {
    areaOf,
    productsOn: ({ id }: Property) =>
      facts.flatMap((each) => (each.property.id === id ? productIdsOf(book, each) : [])),
    ...(today === undefined ? {} : { today }),
    ...(plannedDays === undefined ? {} : { planned: plannedDays }),
  };
}
