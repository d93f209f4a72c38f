import { type AppError, err, ok, type Result } from '../../../core/base/index.ts';
import { judgeRoutes, ROUTING_FORMATS, type RoutingProblem, solveRouting } from '../../../core/routing/index.ts';
import { describePlace, readText } from '../../services/files/index.ts';
import { type Answer, type Command, fileOf, type Typed, UsageFault } from '../command.ts';
import type { SolveOutput } from '../output/index.ts';
import { secondsOf, wholeNumber } from '../parse.ts';
import { counted } from '../text/index.ts';

const USUAL_SECONDS = 10;
const MOST_SECONDS = 3600;
const MOST_VEHICLES = 20_000;
const MOST_ITERATIONS = 1_000_000_000;
const FORMAT_NAMES = ROUTING_FORMATS.map((each) => each.id).join(', ');

export const solveCommand: Command = {
  name: 'solve',
  summary: 'Solves a public routing instance with the routing engine, to hold it against known values.',
  details: [
    `FORMAT is one of: ${ROUTING_FORMATS.map((each) => `${each.id} (${each.title})`).join('; ')}.`,
    'The routes are reckoned anew by a check of their own before they are printed. Routes list customers numbered from 1; the depot is not listed, and 0 is a reload there. Where vehicles differ there is one route for each, in the order of the file, empty where it is not used. The same file, seed and number of iterations give the same routes.',
  ],
  operands: [{ name: 'FILE', words: 'the instance' }],
  options: [
    { name: 'format', value: 'FORMAT', words: `one of ${FORMAT_NAMES}` },
    { name: 'vehicles', value: 'N', words: 'routes that may be used (as the file says, or no limit)' },
    { name: 'seconds', value: 'S', words: `time to search, ${USUAL_SECONDS} unless told, up to ${MOST_SECONDS}` },
    { name: 'iterations', value: 'N', words: 'rounds of ruin and recreate, instead of a time' },
    { name: 'seed', value: 'N', words: 'seed of the search (1 unless told)' },
  ],
  required: ['format'],
  schema: 'solve',
  example: 'npx swardway solve instance.vrp --format vrplib --seconds 10',
  run: async (typed) => {
    const problem = await readProblem(typed);
    return problem.ok ? answerOf(problem.value, typed) : problem;
  },
};

async function readProblem(typed: Typed): Promise<Result<RoutingProblem>> {
  const format = ROUTING_FORMATS.find((each) => each.id === typed.options.format);
  if (format === undefined) throw new UsageFault(`--format is one of ${FORMAT_NAMES}`);
  const vehicles = wholeNumber(typed, 'vehicles', 1, MOST_VEHICLES);
  const file = fileOf(typed, 'FILE');
  const text = await readText(file);
  return text.ok ? format.read(text.value, describePlace(file), vehicles === undefined ? {} : { vehicles }) : text;
}

function answerOf(problem: RoutingProblem, typed: Typed): Result<Answer> {
  const seed = wholeNumber(typed, 'seed', 0, 2 ** 31 - 1) ?? 1;
  const iterations = wholeNumber(typed, 'iterations', 1, MOST_ITERATIONS);
  const seconds = secondsOf(typed, 'seconds', MOST_SECONDS) ?? (iterations === undefined ? USUAL_SECONDS : undefined);
  const startMs = performance.now();
  const clock = { nowMs: () => performance.now() };
  const found = solveRouting(problem, { seed, iterations, seconds }, { clock });
  const { cost, faults } = judgeRoutes(problem, found.routes);
  const json: SolveOutput = {
    format: 'swardway-routes',
    version: 1,
    name: problem.name,
    cost,
    routes: found.routes,
    absent: found.absent,
    faults,
    seconds: Math.round(performance.now() - startMs) / 1000,
    iterations: found.iterations,
    seed,
  };
  const answer = { json, text: () => textOf(json), remarks: [] };
  return ok(faults.length === 0 ? answer : { ...answer, failure: { code: 3, error: noPlan(problem.name, faults) } });
}

function noPlan(name: string, faults: readonly string[]): AppError {
  const detail = `The routes found break what the file asks for: ${faults.slice(0, 3).join('; ')}.`;
  return err('no-plan-possible', name, detail, 'Give it more time, another seed, or more vehicles.').error;
}

function textOf({ name, cost, routes, seconds, iterations }: SolveOutput): string {
  const lines = routes.flatMap((route, at) => (route.length === 0 ? [] : [`Route #${at + 1}: ${route.join(' ')}`]));
  const summary = `${name}: ${counted(lines.length, 'route')}, ${iterations} iterations, ${seconds} s`;
  return [...lines, `Cost ${cost}`, '', summary].join('\n');
}
