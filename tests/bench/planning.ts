import { appendFileSync, existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { measureBook } from '../../core/measure/index.ts';
import { buildProblem, daysAboveMs } from '../../core/plan/problem/index.ts';
import { explainPlan } from '../../core/plan/result/index.ts';
import { solve } from '../../core/plan/search/index.ts';
import { BAD_BOOKS } from '../core/plan/bad-books.ts';
import { timeBadBooks } from './bad-books.ts';
import { COLD_COLUMNS, timeFromCold } from './drawn-round.ts';
import { inventRound } from './rounds.ts';

/**
 * Plans invented rounds from measuring to the reasons in the plan, and prints what it took:
 * npm run bench:planning -- --lawns 640 --rigs 2 --days 16 --seconds 60 [--seeds 1,2] [--iterations N] [--balance USD]
 * [--csv FILE]
 *
 * With --cold it draws the lawns and times the problem alone, when no passes are known and when all are: tests/bench/drawn-round.ts.
 * With --bad it plans the books of tests/core/plan/bad-books.ts instead, which make no sense, at 60 iterations.
 *
 * `first plan after ms` is the processor time from the problem to the first whole plan, a search of its own that is told to stop at once;
 * it is in no other figure. Seconds are processor seconds of this process; `seconds` in the table is everything, the search's share of it included. Memory is the
 * most that the process ever held, so a table of growth takes one run for each size.
 */
const { values } = parseArgs({
  options: {
    lawns: { type: 'string', default: '40' },
    rigs: { type: 'string', default: '2' },
    days: { type: 'string', default: '1' },
    seconds: { type: 'string' },
    iterations: { type: 'string' },
    seeds: { type: 'string', default: '1' },
    balance: { type: 'string', default: '0' },
    bad: { type: 'boolean', default: false },
    cold: { type: 'boolean', default: false },
    csv: { type: 'string' },
  },
});
const COLUMNS =
  'lawns,rigs,days,seed,search seconds,seconds,MiB,iterations,rig days,left out,dollars,hours above the mean day,first plan after ms,left out of it';
const BYTES_PER_KIB = 1024;

function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

function planOnce(seed: number): readonly (string | number)[] {
  const shape = { lawns: Number(values.lawns), rigs: Number(values.rigs), days: Number(values.days) };
  const book = inventRound(shape, 1);
  const startSec = processorSeconds();
  const measures = new Map(measureBook(book).map((each) => [each.propertyId, each]));
  const problem = buildProblem(book, book.rounds[0]?.id ?? '', { measures, evenUsdPerHour: Number(values.balance) });
  if (!problem.ok) throw new Error(problem.error.detail);
  const limits = {
    ...(values.seconds === undefined ? {} : { seconds: Number(values.seconds) }),
    ...(values.iterations === undefined ? {} : { iterations: Number(values.iterations) }),
  };
  // Told to stop before it begins, the search gives the first whole plan that it has.
  const firstSec = processorSeconds();
  const first = solve(problem.value, { seed, ...limits }, { signal: { stopped: () => true } });
  const searchSec = processorSeconds();
  const clock = { nowMs: () => 1000 * processorSeconds() };
  const solution = solve(problem.value, { seed, ...limits }, { clock });
  const endSec = processorSeconds();
  explainPlan(book, problem.value, solution);
  return [
    ...[shape.lawns, shape.rigs, shape.days, seed],
    (endSec - searchSec).toFixed(2),
    (processorSeconds() - startSec - (searchSec - firstSec)).toFixed(2),
    Math.round(process.resourceUsage().maxRSS / BYTES_PER_KIB),
    solution.iterations,
    solution.routes.length,
    solution.unserved.length,
    (solution.cost / 1e9).toFixed(2),
    (daysAboveMs(solution.routes.map((each) => each.paidMs)) / 3.6e6).toFixed(2),
    Math.round(1000 * (searchSec - firstSec)),
    first.unserved.length,
  ];
}

if (values.bad) for (const row of timeBadBooks(BAD_BOOKS, 60, processorSeconds)) console.log(row);
else if (values.cold) {
  const shape = { lawns: Number(values.lawns), rigs: Number(values.rigs), days: Number(values.days) };
  console.log(`${COLD_COLUMNS}\n${timeFromCold(shape, processorSeconds)}`);
} else console.log(COLUMNS);
for (const seed of values.bad || values.cold ? [] : values.seeds.split(',').map(Number)) {
  const row = planOnce(seed).join(',');
  console.log(row);
  if (values.csv === undefined) continue;
  if (!existsSync(values.csv)) appendFileSync(values.csv, `${COLUMNS}\n`);
  appendFileSync(values.csv, `${row}\n`);
}
