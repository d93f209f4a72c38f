import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { judgeRoutes, ROUTING_FORMATS, solveRouting } from '../../core/routing/index.ts';

/**
 * Solves public instances and prints each cost beside the best known one:
 * npm run bench:routing -- --set cvrp-X --seconds 10 [--only REGEXP] [--seeds 1,2] [--folder FOLDER]
 */
type Entry = {
  readonly set: string;
  readonly instance: string;
  readonly file: string;
  readonly bestKnown: number;
  readonly vehicles?: number | null;
};

/** Sets that are read, with their format; `limited` where the best value is for at most the stated number of vehicles. */
const SETS: Readonly<Record<string, { readonly format: string; readonly limited: boolean; readonly exact: boolean }>> =
  {
    'cvrp-A': { format: 'vrplib', limited: true, exact: false },
    'cvrp-B': { format: 'vrplib', limited: true, exact: false },
    'cvrp-E': { format: 'vrplib', limited: true, exact: false },
    'cvrp-F': { format: 'vrplib', limited: true, exact: false },
    'cvrp-M': { format: 'vrplib', limited: true, exact: false },
    'cvrp-P': { format: 'vrplib', limited: true, exact: false },
    'cvrp-X': { format: 'vrplib', limited: false, exact: false },
    'cvrp-CMT': { format: 'vrplib', limited: false, exact: true },
    'vrptw-solomon': { format: 'solomon', limited: true, exact: false },
    tsplib: { format: 'vrplib', limited: false, exact: false },
  };

const { values } = parseArgs({
  options: {
    set: { type: 'string', default: 'cvrp-A' },
    seconds: { type: 'string', default: '10' },
    seeds: { type: 'string', default: '1' },
    only: { type: 'string', default: '' },
    folder: { type: 'string', default: '../shared/bench' },
  },
});
const how = SETS[values.set];
const index = path.join(values.folder, 'index.json');
if (how === undefined) throw new Error(`--set is one of ${Object.keys(SETS).join(', ')}`);
if (!existsSync(index)) {
  console.log(`No public instances here: ${index} is missing. Name their folder with --folder.`);
  process.exit(0);
}
const entries = (JSON.parse(readFileSync(index, 'utf8')) as readonly Entry[]).filter(
  (each) => each.set === values.set && new RegExp(values.only).test(each.instance),
);
const gaps: number[] = [];
for (const entry of entries) for (const seed of values.seeds.split(',').map(Number)) gaps.push(solveOne(entry, seed));
const mean = gaps.reduce((sum, each) => sum + each, 0) / gaps.length;
const met = gaps.filter((gap) => gap < 1e-4).length;
console.log(
  `${values.set}, ${values.seconds} s: mean gap ${mean.toFixed(3)} %, ${met} of ${gaps.length} at the best known value`,
);

/** Gap to the best known value, per cent. */
function solveOne(entry: Entry, seed: number): number {
  const { format, limited, exact } = how as NonNullable<typeof how>;
  const text = readFileSync(path.join(values.folder, entry.file), 'utf8');
  const vehicles = limited && entry.vehicles != null ? { vehicles: entry.vehicles } : {};
  const problem = ROUTING_FORMATS.find((each) => each.id === format)?.read(text, entry.file, { exact, ...vehicles });
  if (problem?.ok !== true) throw new Error(problem?.error.detail ?? format);
  const clock = { nowMs: () => performance.now() };
  const found = solveRouting(problem.value, { seed, seconds: Number(values.seconds) }, { clock });
  const { cost, faults } = judgeRoutes(problem.value, found.routes);
  const gap = faults.length > 0 ? Number.POSITIVE_INFINITY : 100 * (cost / entry.bestKnown - 1);
  const words = faults.length > 0 ? `  ${faults[0]}` : '';
  console.log(
    `${entry.instance.padEnd(14)} seed ${seed}  cost ${cost.toFixed(exact ? 2 : 0)}  best known ${entry.bestKnown}  ` +
      `gap ${gap.toFixed(3)} %  ${found.iterations} iterations${words}`,
  );
  return gap;
}
