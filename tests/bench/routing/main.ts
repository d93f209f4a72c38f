import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { SETS as compartments } from './sets/compartments.ts';
import { SETS as hsdmdmtpvrp } from './sets/hsdmdmtpvrp.ts';
import { SETS as loads } from './sets/loads.ts';
import { SETS as mdvrpi } from './sets/mdvrpi.ts';
import { SETS as plain } from './sets/plain.ts';
import { SETS as pvrpif } from './sets/pvrpif.ts';
import { SETS as split } from './sets/split.ts';
import type { BenchSet, Entry } from './types.ts';

/**
 * Solves public instances and prints each cost, reckoned by a checker of its own, beside the best known one:
 * npm run bench:routing -- --set NAME --seconds S [--iterations N] [--only REGEXP] [--seeds 1,2] [--folder FOLDER]
 * [--csv FILE]
 *
 * With --csv the table is also written as CSV, as the tables under docs/benchmarks are.
 * Seconds are processor seconds of one thread, so that other work on the machine changes little.
 */
const SETS: readonly BenchSet[] = [...plain, ...compartments, ...loads, ...split, ...mdvrpi, ...pvrpif, ...hsdmdmtpvrp];

const { values } = parseArgs({
  options: {
    set: { type: 'string', default: 'cvrp-A' },
    seconds: { type: 'string', default: '10' },
    iterations: { type: 'string' },
    seeds: { type: 'string', default: '1' },
    only: { type: 'string', default: '' },
    folder: { type: 'string', default: '../shared/bench' },
    csv: { type: 'string' },
  },
});
const set = SETS.find((each) => each.id === values.set);
if (set === undefined) throw new Error(`--set is one of ${SETS.map((each) => each.id).join(', ')}`);
const index = path.join(values.folder, 'index.json');
if (!existsSync(index)) {
  console.log(`No public instances here: ${index} is missing. Name their folder with --folder.`);
  process.exit(0);
}
const limit =
  values.iterations === undefined ? { seconds: Number(values.seconds) } : { iterations: Number(values.iterations) };
const clock = {
  nowMs: () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  },
};
const entries = (JSON.parse(readFileSync(index, 'utf8')) as readonly Entry[]).filter(
  (each) => each.set === values.set && new RegExp(values.only).test(each.instance),
);
const gaps: number[] = [];
const rows = [['instance', 'seed', 'cost', 'best known', 'gap %', 'iterations', 'processor s', 'faults']];
let broken = 0;
for (const entry of entries) for (const seed of values.seeds.split(',').map(Number)) solveOne(set, entry, seed);
const mean = gaps.reduce((sum, each) => sum + each, 0) / gaps.length;
const met = gaps.filter((gap) => gap < 1e-4).length;
const budget = values.iterations === undefined ? `${values.seconds} s` : `${values.iterations} iterations`;
const compared =
  gaps.length === 0
    ? 'no stored values'
    : `mean gap ${mean.toFixed(3)} %, ${met} of ${gaps.length} at the best known value`;
console.log(`${values.set}, ${budget}: ${compared}, ${broken} answers not feasible`);
if (values.csv !== undefined) writeFileSync(values.csv, rows.map((row) => `${row.join(',')}\n`).join(''));

function solveOne({ prepare }: BenchSet, entry: Entry, seed: number): void {
  const text = readFileSync(path.join(values.folder, entry.file), 'utf8');
  const startMs = clock.nowMs();
  const { cost, faults, iterations } = prepare(text, entry).solve({ seed, ...limit, clock });
  const seconds = (clock.nowMs() - startMs) / 1000;
  if (faults.length > 0) broken += 1;
  const known = entry.bestKnown ?? null;
  const gap = known === null || faults.length > 0 ? null : 100 * (cost / known - 1);
  if (gap !== null) gaps.push(gap);
  const told = Number.isInteger(cost) ? String(cost) : cost.toFixed(2);
  rows.push([
    entry.instance,
    String(seed),
    told,
    known === null ? '' : String(known),
    gap === null ? '' : gap.toFixed(3),
    String(iterations),
    seconds.toFixed(1),
    String(faults.length),
  ]);
  const columns = [
    entry.instance.padEnd(16),
    `seed ${seed}`,
    `cost ${told}`,
    `best known ${known ?? 'none'}`,
    `gap ${gap === null ? '-' : `${gap.toFixed(3)} %`}`,
    `${iterations} iterations`,
    `${seconds.toFixed(1)} s`,
    ...faults.slice(0, 1),
  ];
  console.log(columns.join('  '));
}
