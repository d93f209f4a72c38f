import { type Book, readBook } from '../../../core/book/index.ts';
import { checkBook } from '../../../core/checks/index.ts';
import { measureBook } from '../../../core/measure/index.ts';
import { buildProblem } from '../../../core/plan/problem/index.ts';
import { explainPlan, type Plan } from '../../../core/plan/result/index.ts';
import { type SolveOptions, type SolveRun, solve } from '../../../core/plan/search/index.ts';
import { sampleText } from '../../support/samples.ts';

/** What a book of the samples holds, as far as it is spoilt here. */
type Loose = {
  readonly properties: { id: string; hours?: object; zones: { shape: object }[] }[];
  readonly machines: { compartments: Record<string, unknown>[] }[];
  readonly rigs: Record<string, unknown>[];
  readonly rounds: Record<string, unknown>[];
  readonly fillPoints: { id: string }[];
  matrix?: object;
};

/** How planning a spoilt book ends: with an error of these codes, with all work left out, with some of it, or with none. */
export type Ending = { readonly errors: readonly string[] } | 'all' | 'some' | 'none';

export type BadBook = {
  readonly name: string;
  readonly spoil: (book: Loose) => void;
  /** Replaces in the text, for what JSON cannot say. */
  readonly write?: (text: string) => string;
  readonly ends: Ending;
};

const stated = (areaSqFt: number): object => ({ kind: 'stated', areaSqFt, method: 'invented' });
const allZones = (book: Loose, areaSqFt: number): void => {
  for (const each of book.properties) for (const zone of each.zones) zone.shape = stated(areaSqFt);
};

function matrixOf(book: Loose, lost: number, seconds: number | null): object {
  const placeIds = [...book.fillPoints, ...book.properties].map((each) => each.id);
  const table = (own: number) =>
    placeIds.map((_, from) =>
      placeIds.map((__, to) => (from === to ? 0 : from === lost || to === lost ? seconds : own)),
    );
  return { source: 'invented', placeIds, durationSec: table(300), distanceM: table(3000) };
}

/** Books of which nothing, or not all, can be planned; every one made of the residential day. */
export const BAD_BOOKS: readonly BadBook[] = [
  {
    name: 'customers whose hours end before they begin',
    spoil: (book) => {
      for (const each of book.properties) each.hours = { openMin: 900, closeMin: 600 };
    },
    ends: 'all',
  },
  {
    name: 'customers whose hours are over before the rig can be there',
    spoil: (book) => {
      for (const each of book.properties) each.hours = { openMin: 60, closeMin: 120 };
    },
    ends: 'all',
  },
  {
    name: 'a tank of which the pump reaches nothing',
    spoil: (book) => {
      for (const { compartments } of book.machines)
        for (const each of compartments) if (each.kind === 'tank') each.sumpGal = each.capacityGal;
      for (const rig of book.rigs) rig.handMethodIds = [];
    },
    ends: 'all',
  },
  {
    name: 'vessels of no capacity',
    spoil: (book) => {
      for (const { compartments } of book.machines)
        for (const each of compartments)
          Object.assign(each, each.kind === 'tank' ? { capacityGal: 0 } : { capacityLb: 0 });
    },
    ends: { errors: ['wrong-schema', 'quantity-out-of-range'] },
  },
  { name: 'more work than all days hold', spoil: (book) => allZones(book, 40_000), ends: 'some' },
  { name: 'lawns of which each takes more than a day', spoil: (book) => allZones(book, 40_000_000), ends: 'all' },
  {
    name: 'one lawn that takes more than a day',
    spoil: (book) => {
      for (const zone of book.properties[0]?.zones ?? []) zone.shape = stated(40_000_000);
    },
    ends: 'some',
  },
  {
    name: 'a day of no length',
    spoil: (book) => {
      for (const rig of book.rigs) Object.assign(rig, { shiftMin: 0, overtimeMin: 0 });
    },
    ends: { errors: ['wrong-schema', 'quantity-out-of-range'] },
  },
  {
    name: 'a day shorter than its own morning',
    spoil: (book) => {
      for (const rig of book.rigs) Object.assign(rig, { shiftMin: 10, overtimeMin: 0 });
    },
    ends: 'all',
  },
  {
    name: 'a place that the imported times say is days away',
    spoil: (book) => {
      book.matrix = matrixOf(book, book.fillPoints.length, 1_000_000);
    },
    ends: 'some',
  },
  {
    name: 'imported times that know no way to a place',
    spoil: (book) => {
      book.matrix = matrixOf(book, book.fillPoints.length, null);
      // Time enough, so that nothing but the way could leave a lawn out.
      for (const rig of book.rigs) rig.overtimeMin = 240;
    },
    ends: 'none',
  },
  {
    name: 'a figure that is no number',
    spoil: (book) => {
      for (const rig of book.rigs) rig.shiftMin = 'NOT A NUMBER';
    },
    write: (text) => text.replace('"NOT A NUMBER"', 'NaN'),
    ends: { errors: ['not-json'] },
  },
  {
    name: 'a figure without end',
    spoil: (book) => {
      for (const rig of book.rigs) rig.shiftMin = 'ENDLESS';
    },
    write: (text) => text.replace('"ENDLESS"', '1e999'),
    ends: { errors: ['wrong-schema', 'quantity-out-of-range'] },
  },
  {
    name: 'a round without rigs',
    spoil: (book) => {
      for (const round of book.rounds) round.rigIds = [];
    },
    ends: { errors: ['wrong-schema', 'nothing-to-do'] },
  },
  {
    name: 'a round without work',
    spoil: (book) => {
      for (const round of book.rounds) round.propertyIds = [];
    },
    ends: { errors: ['nothing-to-do'] },
  },
  {
    name: 'a round without days',
    spoil: (book) => {
      for (const round of book.rounds) round.dates = [];
    },
    ends: { errors: ['wrong-schema', 'nothing-to-do'] },
  },
  {
    name: 'two lawns of one id',
    spoil: (book) => {
      const [first, second] = book.properties;
      if (first !== undefined && second !== undefined) second.id = first.id;
    },
    ends: { errors: ['duplicate-id'] },
  },
];

export type Outcome = { readonly plan: Plan; readonly jobs: number } | { readonly code: string };

/** The text of a spoilt book. */
export function badText({ spoil, write }: BadBook): string {
  const book = JSON.parse(sampleText('residential-day')) as Loose;
  spoil(book);
  const text = JSON.stringify(book);
  return write === undefined ? text : write(text);
}

/** Plans a book from its text to the reasons in the plan. */
export function planText(text: string, options: SolveOptions, run: SolveRun = {}): Outcome {
  const read = readBook(text, 'bad.json');
  if (!read.ok) return { code: read.error.code };
  const { book } = read.value;
  const doubled = checkBook(book).find((each) => each.code === 'duplicate-id');
  if (doubled !== undefined) return { code: doubled.code };
  return planned(book, options, run);
}

function planned(book: Book, options: SolveOptions, run: SolveRun): Outcome {
  const measures = new Map(measureBook(book).map((each) => [each.propertyId, each]));
  const problem = buildProblem(book, book.rounds[0]?.id ?? '', { measures });
  if (!problem.ok) return { code: problem.error.code };
  const solution = solve(problem.value, options, run);
  return { plan: explainPlan(book, problem.value, solution), jobs: problem.value.jobs.length };
}
