import { err, ok, type Result } from '../base/index.ts';
import type { SlopeWorking } from '../book/index.ts';
import { type Degrees, degreesToGrade, gradeToDegrees, quantity, type UnitSystem } from '../units/index.ts';
import { bare, fieldWords } from './figures.ts';

/** Steepest slope that a zone can have, degrees. */
const STEEPEST_DEG = 60;

/** A slope in degrees from level, and the arithmetic that gives it, a line for each step. */
export type WorkedSlope = { readonly slopeDeg: Degrees; readonly lines: readonly string[] };

/**
 * The slope behind its field work, degrees from level, with the arithmetic. Null for a slope read from elevations: there is
 * nothing to work out, the figure was found by whoever read them.
 * Errors: 'quantity-out-of-range' over 60 degrees.
 */
export function workedSlope(working: SlopeWorking, system: UnitSystem): Result<WorkedSlope> | null {
  if (working.kind === 'elevation') return null;
  const slopeDeg =
    working.kind === 'level'
      ? quantity<'deg'>(Math.abs(working.degrees))
      : gradeToDegrees(working.riseFt / working.runFt);
  if (!(slopeDeg <= STEEPEST_DEG)) {
    const detail = `${bare(slopeDeg, 1)}° is too steep for turf.`;
    return err('quantity-out-of-range', 'slope', detail, 'Measure along level ground and straight up, up to 60°.');
  }
  return ok({ slopeDeg, lines: [slopeLine(working, slopeDeg, system)] });
}

function slopeLine(
  working: Exclude<SlopeWorking, { kind: 'elevation' }>,
  slopeDeg: Degrees,
  system: UnitSystem,
): string {
  const result = `${bare(100 * degreesToGrade(slopeDeg), 1)} % = ${bare(slopeDeg, 1)}°`;
  if (working.kind === 'level') return `level shows ${bare(working.degrees, 1)}°: ${result}`;
  const { bareLength, length } = fieldWords(system);
  return `rise ${bareLength(working.riseFt)} / run ${length(working.runFt)}: ${result}`;
}

/** How a slope was found, for tables and sheets. */
export function slopeWorkingWords(working: SlopeWorking | undefined): string {
  if (working === undefined) return 'entered';
  if (working.kind === 'level') return 'level';
  return working.kind === 'rise-run' ? 'rise over run' : `elevations: ${working.source}`;
}
