import { appendFileSync, existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { Region } from '../../../core/geometry/index.ts';
import { type PassHead, type PassPlan, planPasses } from '../../../core/passes/index.ts';
import { missedByRaster, overScan } from './checks.ts';
import { type BenchHead, HEADS, headOf, isThere, OVERLAP_M, regionsOf, SETS } from './grounds.ts';

/**
 * Passes over public outlines that lie beside the repository: what they miss, how long the way is, how good the direction is,
 * and how long they take to find:
 * npm run bench:passes -- [--set NAME] [--head NAME] [--every N] [--checks N] [--csv FILE]
 *
 * --every takes each N-th outline of a set, --checks holds each N-th of those against a raster and a scan of all directions
 * (0: none). Rows are added to the table of --csv. Times are processor milliseconds of this process, in the order in which the outlines stand in their files.
 */
const { values } = parseArgs({
  options: {
    set: { type: 'string' },
    head: { type: 'string' },
    every: { type: 'string', default: '1' },
    checks: { type: 'string', default: '0' },
    csv: { type: 'string' },
  },
});

const COLUMNS = [
  'ground',
  'head',
  'outlines',
  'missed % median',
  'missed % p95',
  'hand trim less missed % max',
  'overlap % median',
  'off target % max',
  'way over ideal median',
  'way over ideal p95',
  'runs into corners median',
  'minutes',
  'ms median',
  'ms p95',
  'ms max',
  'checked',
  'over scan % median',
  'over scan % p95',
  'raster off points max',
];

type Run = { readonly ground: Region; readonly plan: PassPlan; readonly ms: number };

function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function run(ground: Region, head: PassHead): Run {
  const startMs = processorMs();
  const plan = planPasses(ground, head);
  const ms = processorMs() - startMs;
  if (!plan.ok) throw new Error(plan.error.detail);
  return { ground, plan: plan.value, ms };
}

function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((left, right) => left - right);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

const largest = (values: readonly number[]): number => values.reduce((most, each) => Math.max(most, each), 0);

function checksOf(runs: readonly Run[], head: PassHead): readonly (string | number)[] {
  const every = Number(values.checks);
  const chosen = every > 0 ? runs.filter((_, index) => index % every === 0) : [];
  if (chosen.length === 0) return [0, '', '', ''];
  const scan = chosen.flatMap(({ ground, plan }) => {
    const over = overScan(ground, head, plan);
    return over === null ? [] : [100 * over];
  });
  const raster = chosen.map(({ ground, plan }) => 100 * Math.abs(missedByRaster(ground, plan) - plan.missedShare));
  return [chosen.length, quantile(scan, 0.5).toFixed(2), quantile(scan, 0.95).toFixed(2), largest(raster).toFixed(3)];
}

function rowOf(name: string, runs: readonly Run[], bench: BenchHead): readonly (string | number)[] {
  const figures = (figure: (each: Run) => number) => runs.map(figure);
  const missed = figures(({ plan }) => 100 * plan.missedShare);
  const ideal = (plan: PassPlan): number => plan.areaSqM / (bench.swathM - OVERLAP_M);
  // Trim passes of another width have no such ideal.
  const hasIdeal = bench.trimM === bench.swathM;
  const way = figures(({ plan }) => (plan.sprayedM + plan.unsprayedM) / ideal(plan));
  const ms = figures((each) => each.ms);
  const apart = figures(({ plan }) => Math.abs(100 * (plan.handTrimSqM / plan.areaSqM - plan.missedShare)));
  return [
    `"${name}"`,
    `"${bench.name}"`,
    runs.length,
    quantile(missed, 0.5).toFixed(3),
    quantile(missed, 0.95).toFixed(3),
    largest(apart).toFixed(6),
    quantile(
      figures(({ plan }) => 100 * plan.overlapShare),
      0.5,
    ).toFixed(2),
    largest(figures(({ plan }) => 100 * plan.offTargetShare)).toFixed(4),
    hasIdeal ? quantile(way, 0.5).toFixed(3) : '',
    hasIdeal ? quantile(way, 0.95).toFixed(3) : '',
    quantile(
      figures(({ plan }) => plan.cornerCount),
      0.5,
    ),
    figures(({ plan }) => plan.minutes)
      .reduce((sum, each) => sum + each, 0)
      .toFixed(0),
    quantile(ms, 0.5).toFixed(1),
    quantile(ms, 0.95).toFixed(1),
    largest(ms).toFixed(0),
    ...checksOf(runs, headOf(bench)),
  ];
}

/** Prints a row, and adds it to the table where one is kept, so that sets can be run one at a time. */
function tell(row: string): void {
  console.log(row);
  if (values.csv !== undefined) appendFileSync(values.csv, `${row}\n`);
}

if (values.csv === undefined || !existsSync(values.csv)) tell(COLUMNS.join(','));
/** Missed shares of all outlines by head, percent. */
const together = new Map<string, number[]>();
for (const set of SETS) {
  if (values.set !== undefined && values.set !== set.name) continue;
  if (!isThere(set)) {
    console.log(`skipped: ${set.file} is not there`);
    continue;
  }
  const every = Number(values.every);
  const grounds = regionsOf(set).filter((ground, index) => index % every === 0 && ground.paths.length > 0);
  for (const head of HEADS) {
    if (values.head !== undefined && !head.name.startsWith(values.head)) continue;
    const runs = grounds.map((ground) => run(ground, headOf(head)));
    tell(rowOf(set.name, runs, head).join(','));
    const missed = together.get(head.name) ?? [];
    missed.push(...runs.map(({ plan }) => 100 * plan.missedShare));
    together.set(head.name, missed);
  }
}
for (const [head, missed] of values.set === undefined ? together : []) {
  console.log(
    `${missed.length} outlines together, ${head}: half of them miss at most ${quantile(missed, 0.5).toFixed(3)} %`,
  );
}
