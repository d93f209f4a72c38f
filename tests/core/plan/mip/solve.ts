import highsLoader from 'highs';
import { dayCost, type FixedRoute } from '../oracle/route.ts';
import { type RefillProgram, refillProgram, secondsOf } from './refill-program.ts';

/** The least cost of a fixed route in nano-dollars; infinite where no day is cheap enough. */
export type Least =
  | { readonly kind: 'proved'; readonly cost: number }
  | { readonly kind: 'unproved'; readonly words: string };

/** Seconds given to one program. */
const PATIENCE = 60;
/** Rows of whole numbers hold to the last part once the whole columns are rounded; this is for the sums of broken coefficients. */
const ROUNDING = 1e-6;

/** Solved to the end: no gap is left between the best day and the bound. */
const OPTIONS = { mip_rel_gap: 0, mip_abs_gap: 1e-6, time_limit: PATIENCE } as const;

const solver = highsLoader();
type Answer = ReturnType<Awaited<typeof solver>['solve']>;

/**
 * Solves the refills of a fixed route. The cost is not the solver's own: its whole numbers are rounded, put back into every row, and
 * the day is reckoned from them in milliseconds and metres.
 *
 * @param known cost of a day that is known, nano-dollars. Days dearer than it by a second of pay are not looked for, which saves most
 * of the time; infinite: all days are
 */
export async function leastCost(route: FixedRoute, known: number): Promise<Least> {
  const written = refillProgram(route);
  const bound = secondsOf(written, route, known) + 1;
  const { solve } = await solver;
  const first = dayFound(route, written, solve(written.program.text(), { ...OPTIONS, objective_bound: bound }));
  if (first.kind === 'proved' && (first.cost === known || Math.abs(first.cost - known) < 1)) return first;
  // Rounding while it simplifies a program can cost the solver a part. A day found without that stands on its own, like the first one.
  const plain = { ...OPTIONS, presolve: 'off', objective_bound: bound } as const;
  const second = dayFound(route, written, solve(written.program.text(), plain));
  if (first.kind === 'unproved' || second.kind === 'unproved') return second;
  return first.cost < second.cost ? first : second;
}

function dayFound(route: FixedRoute, written: RefillProgram, { Status, Columns }: Answer): Least {
  if (Status === 'Infeasible') return { kind: 'proved', cost: Number.POSITIVE_INFINITY };
  if (Status !== 'Optimal') return { kind: 'unproved', words: Status };
  const { program, prices, baseMs, baseMetres } = written;
  const found = Array.from({ length: program.size }, (_, column) => {
    const entry = Columns[`x${column}`];
    return entry !== undefined && 'Primal' in entry ? entry.Primal : 0;
  });
  const values = program.rounded(found);
  const breach = program.worstBreach(values);
  if (breach > ROUNDING) return { kind: 'unproved', words: `rounded, a row is off by ${breach}` };
  const sum = (unit: 'ms' | 'metres'): number =>
    prices.reduce((total, price) => total + price[unit] * (values[price.column] as number), 0);
  return { kind: 'proved', cost: dayCost(route, baseMs + sum('ms'), baseMetres + sum('metres')) };
}
