import {
  err,
  fingerprint,
  fingerprintNumbers,
  type Issue,
  issue,
  NEVER_STOP,
  ok,
  type Progress,
  type Result,
  type StopSignal,
} from '../../base/index.ts';
import type { Book, Property, Round, Treatment, Zone } from '../../book/index.ts';
import { demandFor, intervalIssues, yearLimitIssues } from '../../demand/index.ts';
import {
  bandAreaSqFt,
  farthestFt,
  measureProperty,
  type PropertyMeasure,
  treatableGround,
} from '../../measure/index.ts';
import type { PassGround } from '../../passes/index.ts';
import { calendarOf } from '../../round/calendar/index.ts';
import { askLabels } from '../../round/ledger/index.ts';
import { type AreaOf, lawnsOf, type PlannedDays, zonesOf } from '../../round/programme/index.ts';
import { buildTravelTable, type Place } from '../../travel/index.ts';
import { daysBetween, NANO_PER_DOLLAR, quantity } from '../../units/index.ts';
import { clockNotes, dateFault } from './calendar.ts';
import { placeOfStation, withDepots } from './depots.ts';
import { withEvenDays } from './even-days.ts';
import { flagNotes } from './flags.ts';
import { commonDates, groundOf, splitByDays } from './label-days.ts';
import { type Supplies, stationsOf, suppliesOf } from './materials.ts';
import type { TaskOptions } from './modes.ts';
import { type DayQuestion, type OpenDays, openDays, reserveNote } from './open-days.ts';
import { type Option, type OptionAnswer, optionsFor, type TaskFacts } from './options.ts';
import { modesWithOutages, withOutages } from './outages.ts';
import { type EquippedRig, equipRig, problemRig } from './rigs.ts';
import { firstFault, roundWhere } from './round-faults.ts';
import { areaUnits, minutesToMs } from './scale.ts';
import type { ClosedDay, Job, Outage, Problem, RouteSlot, Task, UnplaceableTask } from './types.ts';
import { placesUnderWay, rigUnderWay, stationHere, type UnderWay, withAboard } from './under-way.ts';
import { rankOf, workOrderOf } from './work-order.ts';

export type ProblemOptions = {
  /** Only these dates of the round. */
  readonly dates?: readonly string[];
  /** Measures made before; whatever is missing is measured here. */
  readonly measures?: ReadonlyMap<string, PropertyMeasure>;
  /** The day on which is asked, YYYY-MM-DD; absent: whether notice can still be given is not asked. */
  readonly today?: string;
  /** Days of other rounds' plans, for split applications: see `splitSpans`. */
  readonly plannedDays?: PlannedDays;
  /** Rigs in the middle of their day. Days that begin later are none of the problem's: say which dates. */
  readonly underWay?: readonly UnderWay[];
  /** Only these of the round's properties. */
  readonly propertyIds?: readonly string[];
  /** Price on days of unlike length, dollars for an hour above the mean; 0 unless told. See `EvenDays`. */
  readonly evenUsdPerHour?: number;
  /** Rigs and machines that are out on single dates; see `Outage`. */
  readonly outages?: readonly Outage[];
  /** Asked between two tasks: passes over thousands of lawns take a while. */
  readonly signal?: StopSignal;
  readonly onProgress?: (progress: Progress) => void;
};

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
  const { underWay = [], propertyIds } = options;
  const { taken } = lawnsOf(book, round, areaOf);
  const left = propertyIds === undefined ? taken : taken.filter((each) => propertyIds.includes(each.id));
  const gathered = gatherFacts(book, round, left, measures);
  const working = round.rigIds.flatMap((id) => book.rigs.filter((each) => each.id === id));
  const days = openDays(book, round, dates, working, roundWhere(round), dayQuestion(areaOf, options));
  const fault = firstFault(book, round, dates, gathered, days.noneOpen);
  if (fault !== null) return { ok: false, error: fault };
  const demands = gathered.facts.map((each) => each.demand);
  const supplies = withAboard(book, suppliesOf(book, demands), underWay);
  const rigs = working.map((rig) => equipRig(book, rig, supplies.stocks));
  const jobsOf = groupJobs(book, round, rigs, supplies, { facts: gathered.facts, measures }, options);
  if (jobsOf === null) return cancelled(round);
  const parts = assemble(book, round, dates, rigs, supplies, gathered, jobsOf, days, underWay);
  return ok(freeze(withEvenDays(withOutages(parts, options.outages ?? []), options.evenUsdPerHour ?? 0)));
}

function cancelled(round: Round): Result<never> {
  return err(
    'cancelled',
    roundWhere(round),
    'Planning was cancelled before the work was known.',
    'Plan again when you are ready.',
  );
}

function dayQuestion(areaOf: AreaOf, { today, plannedDays }: ProblemOptions): DayQuestion {
  return {
    areaOf,
    ...(today === undefined ? {} : { today }),
    ...(plannedDays === undefined ? {} : { planned: plannedDays }),
  };
}

/** Measures of properties, made when they are asked for and kept. */
class Measures {
  private readonly known: Map<string, PropertyMeasure>;

  constructor(known: ReadonlyMap<string, PropertyMeasure> | undefined) {
    this.known = new Map(known);
  }

  of(property: Property): PropertyMeasure {
    const measure = this.known.get(property.id) ?? measureProperty(property);
    this.known.set(property.id, measure);
    return measure;
  }
}

type Gathered = { readonly facts: readonly TaskFacts[]; readonly issues: readonly Issue[] };

/** Measures every zone and works out what each treatment of the round takes there. */
function gatherFacts(book: Book, round: Round, properties: readonly Property[], measures: Measures): Gathered {
  const facts: TaskFacts[] = [];
  const issues: Issue[] = [];
  const treatments = round.treatmentIds.flatMap((id) => book.treatments.filter((each) => each.id === id));
  for (const property of properties) {
    const measure = measures.of(property);
    issues.push(...measure.issues);
    const getting = treatments.map((treatment) => ({
      treatment,
      zones: zonesOf(round, treatment.id, property, () => measure.treatableSqFt),
    }));
    for (const zone of property.zones) {
      for (const { treatment, zones } of getting)
        if (zones.includes(zone)) gatherZone(book, property, zone, measure, treatment, facts, issues);
    }
  }
  const demands = facts.map((each) => each.demand);
  issues.push(
    ...flagNotes(treatments),
    ...yearLimitIssues(book.products, demands),
    ...intervalIssues(book.products, demands),
  );
  return { facts, issues: uniqueIssues(issues) };
}

function gatherZone(
  book: Book,
  property: Property,
  zone: Zone,
  propertyMeasure: PropertyMeasure,
  treatment: Treatment,
  facts: TaskFacts[],
  issues: Issue[],
): void {
  const measure = propertyMeasure.zones.find((each) => each.zoneId === zone.id);
  if (measure === undefined) return;
  const { coverage } = treatment;
  const bandSqFt =
    coverage.kind === 'band' ? bandAreaSqFt(property, zone, quantity(coverage.widthFt), coverage.along) : null;
  const result = demandFor({ book, property, zone, zoneMeasure: measure, treatment, bandSqFt });
  issues.push(...result.issues);
  const farthest = farthestFt(property, zone);
  const ground = onceOnly(() => treatableGround(property, zone.id));
  for (const demand of result.demands) {
    if (demand.treatedSqFt > 0 || measure.areaSqFt === null)
      facts.push({ property, zone, measure, treatment, demand, farthestFt: farthest, ground });
  }
}

function onceOnly(find: () => PassGround): () => PassGround {
  let found: PassGround | null = null;
  return () => {
    found ??= find();
    return found;
  };
}

function uniqueIssues(issues: readonly Issue[]): readonly Issue[] {
  return [...new Map(issues.map((each) => [`${each.code} ${each.where} ${each.message}`, each])).values()];
}

function assemble(
  book: Book,
  round: Round,
  dates: readonly string[],
  rigs: readonly EquippedRig[],
  supplies: Supplies,
  gathered: Gathered,
  jobsOf: Grouping,
  days: OpenDays,
  underWay: readonly UnderWay[],
): Omit<Problem, 'hash'> {
  const { serviceMin } = calendarOf(book);
  const properties = [...new Map(gathered.facts.map((each) => [each.property.id, each.property])).values()];
  const known: readonly Place[] = [
    ...book.fillPoints.map((each) => ({ id: each.id, at: each.at })),
    ...properties.map((each) => ({ id: each.id, at: each.parking })),
  ];
  const places = [...known, ...placesUnderWay(known, underWay)];
  const placeOfProperty = new Map(properties.map((each, index) => [each.id, book.fillPoints.length + index]));
  const table = buildTravelTable(places, book.travel, book.matrix);
  const estimates = table.estimated.reduce((sum, each) => sum + each, 0);
  const pairs = places.length * (places.length - 1);
  const stationOf = (id: string): number => book.fillPoints.findIndex((each) => each.id === id);
  const placeOf = (id: string): number => places.findIndex((each) => each.id === id);
  const stations = [
    ...stationsOf(book, supplies.stocks, stationOf),
    ...underWay.map(({ rigId, at }) => stationHere(placeOf(at.id), rigId, supplies.stocks.length)),
  ];
  const ends = rigs.map(({ rig }) => {
    const here = underWay.findIndex((each) => each.rigId === rig.id);
    return {
      home: here < 0 ? stationOf(rig.homeId) : book.fillPoints.length + here,
      end: stationOf(rig.endId ?? rig.homeId),
    };
  });
  const { depots, ...travel } = withDepots(
    {
      placeIds: places.map((each) => each.id),
      travelMs: inMilliseconds(table.durationSec),
      travelM: table.distanceM,
    },
    rigs.map(({ rig }, index) => ({
      rigId: rig.id,
      from: placeOfStation(stations, ends[index]?.home ?? 0),
      to: placeOfStation(stations, ends[index]?.end ?? 0),
    })),
  );
  return {
    bookId: book.id,
    roundId: round.id,
    dates,
    ...travel,
    travelKind: estimates >= pairs ? 'estimate' : estimates === 0 ? 'matrix' : 'mixed',
    ...supplies,
    stations,
    rigs: rigs.map((each, index) => {
      const where = { home: 0, end: 0, ...ends[index], depot: depots[index] ?? 0 };
      const whole = problemRig(each, book.prices, where, serviceMin);
      const now = underWay.find(({ rigId }) => rigId === each.rig.id);
      return now === undefined ? whole : rigUnderWay(whole, supplies, now);
    }),
    slots: dates
      .flatMap((_, day) => rigs.map((__, rig): RouteSlot => ({ rig, day })))
      .filter(({ rig, day }) => days.works(rig, day)),
    tasks: gathered.facts.map((each) => taskOf(round, each)),
    jobs: jobsOf.groups.map((each) => jobOf(book, round, dates, each, placeOfProperty, days)),
    unplaceable: jobsOf.unplaceable,
    issues: [
      ...gathered.issues,
      ...jobsOf.issues,
      ...days.issues,
      ...reserveNote(serviceMin, roundWhere(round)),
      ...clockNotes(book, dates, rigs),
    ],
  };
}

/** In place: with ten thousand places the table is 400 MB, and it was made for this problem. */
function inMilliseconds(seconds: Int32Array): Int32Array {
  for (let index = 0; index < seconds.length; index += 1) seconds[index] = (seconds[index] as number) * 1000;
  return seconds;
}

function taskOf(round: Round, facts: TaskFacts): Task {
  return {
    propertyId: facts.property.id,
    zoneId: facts.zone.id,
    treatmentId: facts.treatment.id,
    step: facts.demand.step,
    areaUnits: areaUnits(facts.demand.treatedSqFt),
    rank: rankOfFacts(round, facts),
  };
}

function rankOfFacts(round: Round, { demand, treatment }: TaskFacts): number {
  return rankOf(workOrderOf(round), demand.what, treatment.kind === 'seed' && demand.what === 'spread');
}

type JobGroup = {
  readonly property: Property;
  readonly tasks: readonly number[];
  readonly modes: Job['modes'];
  /** Days that labels and caps allow, null for all. */
  readonly labelDates: readonly string[] | null;
  /** Why not on the others. */
  readonly labelWords: string;
};
type Grouping = {
  readonly groups: readonly JobGroup[];
  readonly unplaceable: readonly UnplaceableTask[];
  readonly issues: readonly Issue[];
};

type Answered = {
  readonly task: number;
  readonly facts: TaskFacts;
  readonly answers: readonly OptionAnswer[];
  readonly labelDates: readonly string[] | null;
  readonly labelWords: string;
};

/** The work, and the measures behind it. */
type Known = { readonly facts: readonly TaskFacts[]; readonly measures: Measures };

/** The tasks of each property become jobs; tasks that nobody can do are listed with the reasons. */
function groupJobs(
  book: Book,
  round: Round,
  rigs: readonly EquippedRig[],
  supplies: Supplies,
  { facts, measures }: Known,
  { signal = NEVER_STOP, onProgress, outages = [] }: ProblemOptions,
): Grouping | null {
  const byProperty = new Map<string, Answered[]>();
  const unplaceable: UnplaceableTask[] = [];
  const issues: Issue[] = [];
  const labels = askLabels(
    book,
    round,
    groundOf((property) => measures.of(property)),
  );
  for (const [task, each] of facts.entries()) {
    if (signal.stopped()) return null;
    onProgress?.({ step: 'Reckoning the work', done: task, total: facts.length, bestSoFar: '' });
    const label = labels(each.property, each.zone, each.treatment);
    if (label.kind === 'refused') {
      const reason = { code: 'label-limit-broken', words: label.words };
      unplaceable.push({ task, reasons: rigs.map(({ rig }) => ({ rigId: rig.id, ...reason })) });
      continue;
    }
    if (label.kind === 'some-days') issues.push(labelDaysNote(each, label.words));
    const answers = rigs.map((rig) => optionsFor(book, rig, each, round.wetGround));
    const options = answers.flatMap((answer) => answer.options);
    issues.push(...answers.flatMap((answer) => answer.issues));
    if (options.length === 0) {
      unplaceable.push({ task, reasons: answers.map((answer) => answer.refusal) });
      continue;
    }
    const some = label.kind === 'some-days' ? label : { dates: null, words: '' };
    const entry = { task, facts: each, answers, labelDates: some.dates, labelWords: some.words };
    byProperty.set(each.property.id, [...(byProperty.get(each.property.id) ?? []), entry]);
    if (options.every((option) => option.tight)) issues.push(tightNote(each));
    if (options.every((option) => option.scant)) issues.push(scantWarning(each));
    if (options.every((option) => option.untrimmedUnits > 0)) issues.push(leftWarning(each, options));
  }
  const materialOf = (each: TaskFacts): number =>
    supplies.materials.findIndex((material) => material.id === each.demand.materialId);
  const groups = [...byProperty.values()].flatMap((answered) =>
    splitByRigs(rigs, answered)
      .flatMap(splitByDays)
      .map((each) => groupOf(round, rigs, each, materialOf, outages)),
  );
  return { groups, unplaceable, issues: uniqueIssues(issues) };
}

function labelDaysNote({ property, zone }: TaskFacts, words: string): Issue {
  return issue('note', 'label-days', `property ${property.name}, zone ${zone.name}`, `${words}.`);
}

function tightNote({ property, zone }: TaskFacts): Issue {
  const where = `property ${property.name}, zone ${zone.name}`;
  return issue('note', 'gate-tight', where, 'Every machine that fits has less than 2 in to spare at the gate.');
}

function scantWarning({ property, zone, demand }: TaskFacts): Issue {
  const where = `property ${property.name}, zone ${zone.name}`;
  const words = `It takes ${demand.volumeGal.toFixed(2)} gal, less than the hand method needs to work evenly. Treat it together with other ground or with another method.`;
  return issue('warning', 'below-least-volume', where, words);
}

function leftWarning({ property, zone }: TaskFacts, options: readonly Option[]): Issue {
  const least = Math.min(...options.map((each) => each.untrimmedUnits));
  const where = `property ${property.name}, zone ${zone.name}`;
  const words = `At least ${least} ft2 are not reached by any machine, and no rig that does the zone has a hand tool that may treat them. They stay untreated.`;
  return issue('warning', 'ground-not-reached', where, words);
}

/**
 * One visit does a whole property where some rig can do all of it. Where none can, the tasks are split by the rigs that can do them,
 * so that as few visits as possible are needed.
 */
function splitByRigs(rigs: readonly EquippedRig[], answered: readonly Answered[]): readonly (readonly Answered[])[] {
  const can = (each: Answered, rig: number): boolean => (each.answers[rig]?.options.length ?? 0) > 0;
  if (rigs.some((_, rig) => answered.every((each) => can(each, rig)))) return [answered];
  const groups = new Map<string, Answered[]>();
  for (const each of answered) {
    const able = rigs.map((_, rig) => (can(each, rig) ? '1' : '0')).join('');
    groups.set(able, [...(groups.get(able) ?? []), each]);
  }
  return [...groups.values()];
}

function groupOf(
  round: Round,
  rigs: readonly EquippedRig[],
  answered: readonly Answered[],
  materialOf: (facts: TaskFacts) => number,
  outages: readonly Outage[],
): JobGroup {
  const [first] = answered;
  if (first === undefined) throw new RangeError('a job without tasks');
  return {
    property: first.facts.property,
    tasks: answered.map((each) => each.task),
    labelDates: commonDates(answered),
    labelWords: [...new Set(answered.flatMap((each) => (each.labelWords === '' ? [] : [each.labelWords])))].join('; '),
    modes: rigs.map((rig, number) => {
      const tasks = answered.map(
        ({ task, facts, answers }): TaskOptions => ({
          task,
          rank: rankOfFacts(round, facts),
          facts,
          options: answers[number]?.options ?? [],
        }),
      );
      return modesWithOutages(rig, tasks, materialOf, outages);
    }),
  };
}

function jobOf(
  book: Book,
  round: Round,
  dates: readonly string[],
  group: JobGroup,
  placeOf: ReadonlyMap<string, number>,
  days: OpenDays,
): Job {
  const perDay = book.prices.perDayLate * NANO_PER_DOLLAR;
  const closed = closedByLabel(days.closedFor(group.property), dates, group);
  return {
    propertyId: group.property.id,
    place: placeOf.get(group.property.id) ?? 0,
    openMs: minutesToMs(group.property.hours?.openMin ?? 0),
    closeMs: minutesToMs(group.property.hours?.closeMin ?? 1440),
    tasks: group.tasks,
    modes: group.modes,
    dayAllowed: Uint8Array.from(closed, (each) => (each === null ? 1 : 0)),
    ...(closed.some((each) => each !== null) ? { closed } : {}),
    lateCost: Float64Array.from(dates, (date) => Math.round(perDay * daysLate(date, round.dueDate))),
  };
}

/** What a label forbids comes first: no leave and no promise opens such a day. */
function closedByLabel(
  closed: readonly (ClosedDay | null)[],
  dates: readonly string[],
  { labelDates, labelWords }: JobGroup,
): readonly (ClosedDay | null)[] {
  if (labelDates === null) return closed;
  const byLabel: ClosedDay = { code: 'label', words: labelWords, isPassing: false };
  return dates.map((date, day) => (labelDates.includes(date) ? (closed[day] ?? null) : byLabel));
}

function daysLate(date: string, dueDate: string | undefined): number {
  if (dueDate === undefined) return 0;
  return Math.max(0, daysBetween(dueDate, date));
}

/** Adds the fingerprint of everything else. Issues are words, not figures, and stay out of it. */
function freeze(parts: Omit<Problem, 'hash'>): Problem {
  const { issues: _, unplaceable: __, travelMs, travelM, jobs, tasks, ...rest } = parts;
  const plain = {
    ...rest,
    travelMs: fingerprintNumbers(travelMs),
    travelM: fingerprintNumbers(travelM),
    tasks: tasks.map(fingerprint),
    jobs: jobs.map(({ closed, ...job }) =>
      fingerprint({
        ...job,
        dayAllowed: Array.from(job.dayAllowed, (allowed, day) => (closed?.[day]?.isPassing === true ? 1 : allowed)),
        lateCost: Array.from(job.lateCost),
      }),
    ),
  };
  return { ...parts, hash: fingerprint(plain) };
}
