import { type Issue, NEVER_STOP } from '../../base/index.ts';
import type { Book, Property, Round } from '../../book/index.ts';
import { askLabels } from '../../round/ledger/index.ts';
import { type Measures, productIdsOf, uniqueIssues } from './gather.ts';
import { commonDates, groundOf, splitByDays } from './label-days.ts';
import type { Supplies } from './materials.ts';
import type { TaskOptions } from './modes.ts';
import { type OptionAnswer, optionsFor, type TaskFacts } from './options.ts';
import { modesWithOutages } from './outages.ts';
import { type OverRate, overlapIssues } from './overlap-rates.ts';
import type { ProblemOptions } from './problem-options.ts';
import type { EquippedRig } from './rigs.ts';
import { labelDaysNote, leftWarning, scantWarning, tightNote } from './task-notes.ts';
import type { Job, Outage, UnplaceableTask } from './types.ts';
import { rankOf, workOrderOf } from './work-order.ts';

/** Place of a task in the order of work of its round. */
export function rankOfFacts(round: Round, { demand, treatment }: TaskFacts): number {
  return rankOf(workOrderOf(round), demand.what, treatment.kind === 'seed' && demand.what === 'spread');
}

/** Tasks of one property that one visit does, with the ways of every rig to do them. */
export type JobGroup = {
  readonly property: Property;
  readonly tasks: readonly number[];
  readonly modes: Job['modes'];
  /** What it puts down, each product once. */
  readonly productIds: readonly string[];
  /** Days that labels and caps allow, null for all. */
  readonly labelDates: readonly string[] | null;
  /** Why not on the others. */
  readonly labelWords: string;
};
export type Grouping = {
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
export function groupJobs(
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
  const overRates: OverRate[] = [];
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
    overRates.push(...answers.flatMap((answer) => answer.overRates));
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
      .map((each) => groupOf(book, round, rigs, each, materialOf, outages)),
  );
  return { groups, unplaceable, issues: uniqueIssues([...issues, ...overlapIssues(book, overRates)]) };
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
  book: Book,
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
    productIds: [...new Set(answered.flatMap((each) => productIdsOf(book, each.facts)))],
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
