import { err, ok, type Result } from '../base/index.ts';
import type { AreaWorking, PlainShape } from '../book/index.ts';
import { quantity, type SquareFeet, type UnitSystem } from '../units/index.ts';
import { bare, type FieldWords, fieldWords } from './figures.ts';
import { simpsonArea, total, trapezoidArea } from './offsets.ts';
import { plainShapeArea, plainShapeLine } from './plain-shapes.ts';
import type { FieldArea } from './types.ts';

/** An area from what was measured on site: ft2, and the arithmetic in lines of text. */
export type WorkedArea = { readonly areaSqFt: SquareFeet; readonly lines: readonly string[] };

/**
 * Works the area out from what was measured with tape or wheel.
 * @param system units of the lines of text; the area is in ft2 either way
 * Errors: 'quantity-out-of-range' where nothing is left, or the figures are too few.
 */
export function workedArea(working: AreaWorking, system: UnitSystem): Result<WorkedArea> {
  const few = tooFew(working);
  if (few !== null) return err('quantity-out-of-range', 'field work', few, 'Measure and enter more of them.');
  const { areaSqFt, lines } = areaOf(working, fieldWords(system));
  if (areaSqFt > 0 && Number.isFinite(areaSqFt)) return ok({ areaSqFt: quantity<'ft2'>(areaSqFt), lines });
  return err(
    'quantity-out-of-range',
    'field work',
    'Nothing is left: what is taken off is as large as what is there.',
    'Check the figures and which parts are taken off.',
  );
}

function areaOf(working: AreaWorking, words: FieldWords): FieldArea {
  switch (working.kind) {
    case 'shapes':
      return shapesArea(working.shapes, words);
    case 'offsets':
      return working.rule === 'simpson'
        ? simpsonArea(working.intervalFt, working.offsetsFt, words)
        : trapezoidArea(working.intervalFt, working.offsetsFt, words);
    case 'mean-radius':
      return meanRadiusArea(working.radiiFt, words);
  }
}

function tooFew(working: AreaWorking): string | null {
  if (working.kind === 'shapes' && working.shapes.length === 0) return 'There is no shape.';
  if (working.kind === 'offsets' && working.offsetsFt.length < 2) return 'There are fewer than two offsets.';
  if (working.kind === 'mean-radius' && working.radiiFt.length < 3) return 'There are fewer than three radii.';
  return null;
}

function shapesArea(shapes: readonly PlainShape[], words: FieldWords): FieldArea {
  const areaSqFt = total(
    shapes.map((each) => (each.take === 'subtract' ? -plainShapeArea(each) : plainShapeArea(each))),
  );
  const lines = shapes.map((each) => plainShapeLine(each, words));
  return { areaSqFt, lines: shapes.length === 1 ? lines : [...lines, `together ${words.area(areaSqFt)}`] };
}

/**
 * Round greens: pi times the square of the mean of radii measured at equal angles from one point inside. It reads a little
 * low where the radii differ much.
 */
function meanRadiusArea(radiiFt: readonly number[], words: FieldWords): FieldArea {
  const sum = total(radiiFt);
  const mean = sum / radiiFt.length;
  const areaSqFt = Math.PI * mean ** 2;
  return {
    areaSqFt,
    lines: [
      `mean radius: ${words.bareLength(sum)} / ${bare(radiiFt.length)} = ${words.length(mean)}`,
      `π × (${words.bareLength(sum)} / ${bare(radiiFt.length)})² = ${words.area(areaSqFt)}`,
    ],
  };
}

/** How a stated area was found, in a few words for tables and sheets: "offsets, Simpson's rule". */
export function workingWords(working: AreaWorking): string {
  switch (working.kind) {
    case 'shapes':
      return `plain shapes (${working.shapes.length})`;
    case 'offsets':
      return `offsets, ${working.rule === 'simpson' ? "Simpson's rule" : 'trapezoid rule'}`;
    case 'mean-radius':
      return `mean of ${working.radiiFt.length} radii`;
  }
}
