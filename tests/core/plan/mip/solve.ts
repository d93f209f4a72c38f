import highsLoader from 'highs';
import { dayCost, type FixedRoute } from '../oracle/route.ts';
import { refillProgram, secondsOf } from './refill-program.ts';

/** The least cost of a fixed route in nano-dollars; infinite where no day is cheap enough. */
export type Least =
  | { readonly kind: 'proved'; readonly cost: number }
  | { readonly kind: 'unproved'; readonly words: string };

/** Seconds given to one program. */
const PATIENCE = 60;
/** Rows of whole numbers hold to the last part once the whole columns are rounded; this is for the sums of broken coefficients. */
const ROUNDING = 1e-6;

const solver = highsLoader();

/**
 * Solves the refills of a fixed route to the end: no gap is left between the best day and the bound. The cost is not the solver's
 * own: its whole numbers are rounded, put back into every row, and the day is reckoned from them in milliseconds and metres.
 *
 * @param known cost of a day that is known, nano-dollars. Days dearer than it by a second of pay are not looked for, which saves most
 * of the time; infinite: all days are
 */
export async function leastCost(route: FixedRoute, known: number): Promise<Least> {
  const written = refillProgram(route);
  const { program, prices, baseMs, baseMetres } = written;
  const { solve } = await solver;
  const { Status, Columns } = solve(program.text(), {
    mip_rel_gap: 0,
    mip_abs_gap: 1e-6,
    mip_feasibility_tolerance: 1e-9,
    primal_feasibility_tolerance: 1e-9,
    dual_feasibility_tolerance: 1e-9,
    time_limit: PATIENCE,
    objective_bound: secondsOf(written, route, known) + 1,
  });
  if (Status === 'Infeasible') return { kind: 'proved', cost: Number.POSITIVE_INFINITY };
  if (Status !== 'Optimal') return { kind: 'unproved', words: Status };
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
