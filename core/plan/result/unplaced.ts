import { formatDuration, quantity } from '../../units/index.ts';
import { explainUnserved, type Way, type WhyNot } from '../explain/index.ts';
import { closedWords, type Problem } from '../problem/index.ts';
import type { Solution } from '../refills/index.ts';
import type { Names } from './names.ts';
import { must } from './route.ts';
import type { UnplacedTask } from './types.ts';
import { planWay } from './way-words.ts';

type Reason = UnplacedTask['reasons'][number];

/** Everything that is in no day: what no rig can do, and what found no room, each with its reason per rig. */
export function unplacedOf(problem: Problem, solution: Solution, names: Names): readonly UnplacedTask[] {
  const never = problem.unplaceable.map((each) =>
    unplacedTask(
      problem,
      names,
      each.task,
      each.reasons.map((reason) => ({ ...reason, ways: [] })),
    ),
  );
  const whys = explainUnserved(problem, solution);
  const noRoom = solution.unserved.flatMap((index) => {
    const job = must(problem.jobs[index], 'job');
    const reasons = whys.filter((why) => why.job === index).map((why) => reasonOf(problem, solution, names, why));
    return job.tasks.map((task) => unplacedTask(problem, names, task, reasons));
  });
  return [...never, ...noRoom];
}

/** A task that has no place in a plan, with the reasons. */
export function unplacedTask(
  problem: Problem,
  names: Names,
  taskIndex: number,
  reasons: UnplacedTask['reasons'],
): UnplacedTask {
  const { propertyId, zoneId, treatmentId, step } = must(problem.tasks[taskIndex], 'task');
  return {
    propertyId,
    zoneId,
    treatmentId,
    step,
    propertyName: names.property(propertyId),
    zoneName: names.zone(propertyId, zoneId),
    reasons: reasons.map((each) => ({ ...each })),
  };
}

function reasonOf(problem: Problem, solution: Solution, names: Names, why: WhyNot): Reason {
  const { rigId } = must(problem.rigs[why.rig], 'rig');
  switch (why.kind) {
    case 'out-of-reach':
      return { rigId, code: 'out-of-reach', words: 'cannot reach all of this work', ways: [] };
    case 'far-too-long': {
      const over = why.alone.kind === 'too-long' ? duration(why.alone.overMs) : '';
      const words = `is far too long for a day of this rig: alone it overruns one by at least ${over}`;
      return { rigId, code: 'too-long-for-a-day', words, ways: [] };
    }
    case 'weather': {
      const date = problem.dates[why.day ?? -1] ?? '';
      const closed = problem.jobs[why.job]?.treatHours?.[why.day ?? -1]?.words ?? '';
      const words = `would fit on ${date} but for the hours that weather closes: ${closed}`;
      return { rigId, code: 'weather-closed', words, ways: [] };
    }
    case 'room': {
      const words = 'would still fit: the search ended before it came to it; plan again with more time to search';
      return { rigId, code: 'room-left', words, ways: [] };
    }
    case 'no-single-cause':
      return {
        rigId,
        code: noDay(problem, why.job) === null ? 'no-single-cause' : 'day-not-allowed',
        words: noSingleCause(problem, why),
        ways: [],
      };
    case 'limits': {
      const facts = { problem, solution, names };
      const ways = why.ways.map((way) => planWay(facts, why, way));
      const told = why.ways.filter((way) => isLikely(problem, why, way)).map((way) => planWay(facts, why, way));
      const fits = (told.length > 0 ? told : ways).map((way) => way.words).join(', or with ');
      return { rigId, code: codeOf(why), words: `${standing(problem, why)}; fits with ${fits}`, ways };
    }
  }
}

function noSingleCause(problem: Problem, why: WhyNot): string {
  const { every, tried, insertions, alone } = why;
  if (insertions === 0) return 'has no working day';
  if (noDay(problem, why.job) !== null) return standing(problem, why);
  const stands = alone.kind === 'fits' ? '' : `${standing(problem, why)}; `;
  const searched = every ? '' : ` in the ${tried} likeliest of its ${insertions} places in the plan`;
  return `${stands}no single cause found: no longer day, wider hours or larger tank alone lets it in${searched}${closedHours(problem, why.job)}`;
}

/** "; weather closes hours of 2027-05-11 to it": no day is longer for that. */
function closedHours({ jobs, dates }: Problem, number: number): string {
  const hours = jobs[number]?.treatHours ?? [];
  const days = dates.filter((_, day) => (hours[day] ?? null) !== null);
  return days.length === 0 ? '' : `; weather closes hours of ${days.join(', ')} to it`;
}

/** A tank of more than twice its size is no advice where there is another one; it stays among the ways. */
function isLikely(problem: Problem, { rig }: WhyNot, { limit, amount }: Way): boolean {
  if (limit.kind !== 'compartment') return true;
  return amount <= (problem.rigs[rig]?.compartments[limit.compartment]?.capacityParts ?? 0);
}

/** Why every day is closed to a job; null where one is open or the reasons are not known. */
function noDay(problem: Problem, number: number): string | null {
  const job = problem.jobs[number];
  if (job?.closed === undefined || job.dayAllowed.includes(1)) return null;
  return `no day is open to it: ${closedWords(problem.dates, job.closed)}`;
}

/** How the work stands with the rig before anything is moved. */
function standing(problem: Problem, why: WhyNot): string {
  const { alone } = why;
  const closed = noDay(problem, why.job);
  if (closed !== null) return closed;
  if (alone.kind === 'too-long') return `alone it overruns a day by ${duration(alone.overMs)}`;
  if (alone.kind === 'never') return 'cannot be done as things are, even alone';
  const day = `would make a day of ${duration(alone.paidMs)} alone`;
  return why.ways.some((way) => way.limit.kind === 'time')
    ? `${day}, but every working day of this rig is full`
    : `${day}, but does not go with the rest of any working day`;
}

const CODES: Readonly<Record<Way['limit']['kind'], string>> = {
  time: 'no-time-left',
  day: 'day-not-allowed',
  'customer-hours': 'window-missed',
  'station-hours': 'fill-point-closed',
  payload: 'payload',
  'bag-places': 'bag-places',
  'nurse-tank': 'nurse-tank',
  compartment: 'tank-too-small',
  supply: 'no-material',
};

/** The code of the first way; where that is time, work that is too long for any day is told apart. */
function codeOf({ ways, alone }: WhyNot): string {
  const first = ways[0]?.limit.kind ?? 'time';
  return first === 'time' && alone.kind === 'too-long' ? 'too-long-for-a-day' : CODES[first];
}

function duration(ms: number): string {
  return formatDuration(quantity(ms / 1000));
}
