import { appendFileSync, existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { measureBook } from '../../core/measure/index.ts';
import { buildProblem, daysAboveMs } from '../../core/plan/problem/index.ts';
import { explainPlan } from '../../core/plan/result/index.ts';
import { solve } from '../../core/plan/search/index.ts';
import { inventRound } from './rounds.ts';

/**
 * Plans invented rounds from measuring to the reasons in the plan, and prints what it took:
 * npm run bench:planning -- --lawns 640 --rigs 2 --days 16 --seconds 60 [--seeds 1,2] [--iterations N] [--balance USD]
 * [--csv FILE]
 *
 * Seconds are processor seconds of this process; `seconds` in the table is everything, the search's share of it included. Memory is the
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
    csv: { type: 'string' },
  },
});
const COLUMNS =
  'lawns,rigs,days,seed,search seconds,seconds,MiB,iterations,rig days,left out,dollars,hours above the mean day';
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
  const searchSec = processorSeconds();
  const clock = { nowMs: () => 1000 * processorSeconds() };
  const solution = solve(problem.value, { seed, ...limits }, { clock });
  const endSec = processorSeconds();
  explainPlan(book, problem.value, solution);
  return [
    ...[shape.lawns, shape.rigs, shape.days, seed],
    (endSec - searchSec).toFixed(2),
    (processorSeconds() - startSec).toFixed(2),
    Math.round(process.resourceUsage().maxRSS / BYTES_PER_KIB),
    solution.iterations,
    solution.routes.length,
    solution.unserved.length,
    (solution.cost / 1e9).toFixed(2),
    (daysAboveMs(solution.routes.map((each) => each.paidMs)) / 3.6e6).toFixed(2),
  ];
}

console.log(COLUMNS);
for (const seed of values.seeds.split(',').map(Number)) {
  const row = planOnce(seed).join(',');
  console.log(row);
  if (values.csv === undefined) continue;
  if (!existsSync(values.csv)) appendFileSync(values.csv, `${COLUMNS}\n`);
  appendFileSync(values.csv, `${row}\n`);
}
