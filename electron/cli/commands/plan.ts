import { type AppError, err, ok, type Progress, type Result } from '../../../core/base/index.ts';
import type { Book, Round } from '../../../core/book/index.ts';
import { bookOfFleet } from '../../../core/compare/index.ts';
import { doneWork } from '../../../core/plan/live/index.ts';
import { type Plan, writePlan } from '../../../core/plan/result/index.ts';
import { programPlaces } from '../../program.ts';
import { describePlace, writeWhole } from '../../services/files/index.ts';
import { type PlanBase, type PlanOutcome, startPlanning } from '../../services/jobs/index.ts';
import { type Answer, type Command, fileOf, type Typed, UsageFault, type World } from '../command.ts';
import {
  type BookInput,
  mayWrite,
  ROADS_OPTION,
  readBookFile,
  readPlanFile,
  roundOf,
  withDrives,
} from '../input/index.ts';
import { dateOf, dollarsOf, secondsOf, wholeNumber } from '../parse.ts';
import { issueLines } from '../text/index.ts';
import { planText } from './plan-text.ts';

const USUAL_SECONDS = 10;
const MOST_SECONDS = 3600;
const MOST_ITERATIONS = 1_000_000_000;
const MOST_WORKERS = 64;
const MOST_KEPT = 10_000;
const MOST_EVEN_USD = 1000;
const MOST_SEED = 2 ** 32 - 1;

export const planCommand: Command = {
  name: 'plan',
  summary: 'Plans the days of a round: order of stops, loads, refills, times.',
  details: [
    `The search ends after --seconds (${USUAL_SECONDS} unless told) or after --iterations; where both are given, at whichever comes first. The same book, seed, number of iterations and of threads give the same plan. Ctrl-C ends the search early and keeps the best plan so far.`,
    'Work that cannot be done is listed with the reason for every rig. Where not one visit could be placed the exit code is 3. An existing file is overwritten by --out only where it holds a plan.',
  ],
  operands: [{ name: 'BOOK', words: 'book file or its JSON form' }],
  options: [
    { name: 'round', value: 'ID', words: 'round of the book (the first one unless told)' },
    { name: 'date', value: 'D', words: 'only this day of the round, YYYY-MM-DD' },
    {
      name: 'today',
      value: 'D',
      words: 'the day on which is asked: notice has to be possible from it on (else not asked)',
    },
    { name: 'seed', value: 'N', words: 'seed of the search (1 unless told)' },
    { name: 'seconds', value: 'S', words: `time to search, up to ${MOST_SECONDS}` },
    { name: 'iterations', value: 'N', words: 'steps to search' },
    {
      name: 'workers',
      value: 'N',
      words:
        'threads that search, each with a seed of its own, and exchange their best routes; the best plan wins (1 unless told)',
    },
    {
      name: 'balance',
      value: 'USD',
      words: 'price of each hour by which a day is longer than the mean day, so that days become alike (0 unless told)',
    },
    { name: 'from', value: 'PLAN', words: 'begin with this plan and change it only where that pays' },
    { name: 'keep', value: 'N', words: 'with --from: the first N stops of every day stay as they are' },
    { name: 'pin', value: 'IDS', words: 'with --from: these properties, or all, stay with their rig and day' },
    { name: 'fleet', value: 'ID', words: "by the rigs of this fleet of the book instead of the round's own" },
    ROADS_OPTION,
    { name: 'with-done', value: null, words: 'plan what is recorded as done as well (else it is left out)' },
    { name: 'out', value: 'FILE', words: 'write the plan into this file as well' },
    { name: 'progress', value: null, words: 'tell on standard error how far it is' },
  ],
  schema: 'plan',
  example: 'npx swardway plan sample-routes/residential-day.json --seconds 5 --out plan.json',
  run: async (typed, world) => {
    const limits = limitsOf(typed);
    const out = typed.options.out === undefined ? undefined : fileOf(typed, 'out');
    if (out !== undefined) {
      const free = await mayWrite(out, /^\s*\{\s*"format"\s*:\s*"swardway-plan"/, 'plan');
      if (!free.ok) return free;
    }
    const book = await readBookFile(fileOf(typed, 'BOOK'));
    if (!book.ok) return book;
    const read = await withDrives(book.value, typed, world);
    if (!read.ok) return read;
    const own = roundOf(read.value.book, read.value.where, typed.options.round);
    if (!own.ok) return own;
    const byFleet = withFleet(read.value, own.value, typed.options.fleet);
    if (!byFleet.ok) return byFleet;
    const input = byFleet.value;
    const round = roundOf(input.book, input.where, own.value.id);
    if (!round.ok) return round;
    const fault = faultBefore(input, round.value, limits.date);
    if (fault !== null) return { ok: false, error: fault };
    const base = await baseOf(typed, input.book, round.value);
    if (!base.ok) return base;
    const planned = await planRound(input, round.value, { ...limits, base: base.value }, typed, world);
    return planned.ok ? finish(input, planned.value, out) : planned;
  },
};

/** The book with the round worked by a fleet's rigs; as it is where no fleet is named. */
function withFleet(input: BookInput, round: Round, fleetId: string | undefined): Result<BookInput> {
  if (fleetId === undefined) return ok(input);
  const { book, where } = input;
  if (book.fleets.some((each) => each.id === fleetId))
    return ok({ ...input, book: bookOfFleet(book, round.id, fleetId) });
  const known = book.fleets.map((each) => each.id).join(', ');
  const hint = known === '' ? 'It has none.' : `It has ${known}.`;
  return err('reference-missing', `${where}, fleets`, `The book has no fleet "${fleetId}".`, hint);
}

type Limits = {
  readonly date: string | undefined;
  readonly today: string | undefined;
  readonly seed: number;
  readonly seconds: number | null;
  readonly iterations: number | null;
  readonly workers: number;
  readonly evenUsdPerHour: number;
};

function limitsOf(typed: Typed): Limits {
  const seconds = secondsOf(typed, 'seconds', MOST_SECONDS);
  const iterations = wholeNumber(typed, 'iterations', 1, MOST_ITERATIONS);
  return {
    date: dateOf(typed, 'date'),
    today: dateOf(typed, 'today'),
    seed: wholeNumber(typed, 'seed', 0, MOST_SEED) ?? 1,
    seconds: seconds ?? (iterations === undefined ? USUAL_SECONDS : null),
    iterations: iterations ?? null,
    workers: wholeNumber(typed, 'workers', 1, MOST_WORKERS) ?? 1,
    evenUsdPerHour: dollarsOf(typed, 'balance', MOST_EVEN_USD) ?? 0,
  };
}

/** The plan to begin with; null where none is named. */
async function baseOf(typed: Typed, book: Book, round: Round): Promise<Result<PlanBase | null>> {
  const keepFirst = wholeNumber(typed, 'keep', 0, MOST_KEPT) ?? 0;
  const names = (typed.options.pin ?? '')
    .split(',')
    .map((each) => each.trim())
    .filter((each) => each !== '');
  if (typed.options.from === undefined) {
    const lone = ['keep', 'pin'].find((each) => typed.options[each] !== undefined);
    if (lone !== undefined) throw new UsageFault(`--${lone} needs --from PLAN: a plan of which something can stay`);
    return ok(null);
  }
  const plan = await readPlanFile(fileOf(typed, 'from'));
  if (!plan.ok) return plan;
  if (plan.value.roundId !== round.id) {
    const detail = `It is a plan of round ${plan.value.roundId}, and this is round ${round.id}.`;
    return err('reference-missing', `--from ${typed.options.from}`, detail, 'Name a plan of the same round.');
  }
  const stranger = names.find((name) => name !== 'all' && !book.properties.some((each) => each.id === name));
  if (stranger !== undefined) {
    const detail = `The book has no property ${stranger}.`;
    return err('reference-missing', '--pin', detail, 'Name ids of properties with commas between them, or all.');
  }
  return ok({ plan: plan.value, keepFirst, pinned: names.includes('all') ? 'all' : names });
}

/** What makes planning senseless before it begins; null where nothing does. */
function faultBefore({ where, issues }: BookInput, round: Round, date: string | undefined): AppError | null {
  const doubled = issues.find((each) => each.code === 'duplicate-id');
  if (doubled !== undefined) {
    const hint = 'Give each record an id of its own; a plan could mean either.';
    return { code: 'book-invalid', where: doubled.where, detail: doubled.message, hint };
  }
  if (date === undefined || round.dates.includes(date)) return null;
  const place = `${where}, round ${round.name === '' ? round.id : round.name}`;
  const hint = `It has these: ${round.dates.join(', ')}.`;
  return { code: 'reference-missing', where: place, detail: `The round has no working day ${date}.`, hint };
}

async function planRound(
  { book, where, plannedDays, roads }: BookInput,
  round: Round,
  { date, today, base, ...limits }: Limits & { readonly base: PlanBase | null },
  typed: Typed,
  world: World,
): Promise<Result<PlanOutcome>> {
  const { workerFile } = programPlaces(world.bundleFolder);
  const order = {
    book,
    roundId: round.id,
    dates: date === undefined ? null : [date],
    ...(today === undefined ? {} : { today }),
    plannedDays,
    roads,
    done: typed.flags.has('with-done') ? [] : doneWork(book, round.id),
    ...limits,
    base,
  };
  const job = startPlanning(workerFile, order, typed.flags.has('progress') ? progressTeller(world) : () => undefined);
  const release = world.onInterrupt(job.cancel);
  const outcome = await job.outcome;
  release();
  if (outcome.ok) return outcome;
  const { error } = outcome;
  return { ok: false, error: { ...error, where: `${where}, ${error.where}` } };
}

/** Tells progress only where a figure changed. */
function progressTeller(world: World): (progress: Progress) => void {
  let last = '';
  return ({ step, done, total, bestSoFar }) => {
    const percent = total === 0 ? 0 : Math.floor((100 * done) / total);
    const line = `${step} ${percent} %${bestSoFar === '' ? '' : `, ${bestSoFar}`}`;
    if (line !== last) world.tell(line);
    last = line;
  };
}

async function finish(
  { book, where, issues }: BookInput,
  { plan, cancelled }: PlanOutcome,
  out: string | undefined,
): Promise<Result<Answer>> {
  const remarks = [...issueLines([...issues, ...plan.issues])];
  if (cancelled) remarks.push('stopped early: this is the best plan up to then');
  if (out !== undefined) {
    const written = await writeWhole(out, writePlan(plan));
    if (!written.ok) return written;
    remarks.push(`plan written: ${describePlace(out)}`);
  }
  const answer = { json: plan, text: () => planText(book, plan), remarks };
  if (plan.days.length > 0) return ok(answer);
  return ok({ ...answer, failure: { code: 3, error: noPlan(plan, where) } });
}

function noPlan(plan: Plan, where: string): AppError {
  const first = plan.unplaced[0];
  const reason = first?.reasons[0];
  const why =
    first === undefined || reason === undefined ? '' : ` ${first.propertyName}, ${first.zoneName}: ${reason.words}.`;
  const built = err(
    'no-plan-possible',
    `${where}, round ${plan.roundName}`,
    `Not one visit could be placed.${why}`,
    'Every piece of work is listed with its reason; change the machines, hoses, days or hours that it names.',
  );
  return built.error;
}
