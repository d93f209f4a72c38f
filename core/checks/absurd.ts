import { type Issue, issue } from '../base/index.ts';
import type { Book, Position, Property } from '../book/index.ts';
import { fillPointFigures, handFigures, machineFigures, rigFigures } from './absurd-shed.ts';
import { mixFigures, priceFigures, productFigures, treatmentFigures } from './absurd-work.ts';
import { named, type Rule } from './rule.ts';

const WIDEST_GATE_IN = 480;
const STEEPEST_DEG = 45;
const FARTHEST_MILES = 100;
const MILES_PER_DEGREE = 69;

/**
 * Figures that are possible but hardly meant: a unit mixed up, a slip of the pen, coordinates the wrong way round. The bounds
 * are limits of plausibility, our own and without a source; nothing is refused for them.
 */
export const absurd: Rule = {
  code: 'figure-absurd',
  find: (book) => [
    ...book.machines.flatMap(machineFigures),
    ...book.handMethods.flatMap(handFigures),
    ...book.rigs.flatMap(rigFigures),
    ...book.fillPoints.flatMap(fillPointFigures),
    ...book.products.flatMap(productFigures),
    ...book.mixes.flatMap((mix) => mixFigures(book, mix)),
    ...book.treatments.flatMap((treatment) => treatmentFigures(book, treatment)),
    ...priceFigures(book),
    ...book.properties.flatMap((property) => [...gates(property), ...slopes(property), ...far(book, property)]),
  ],
};

function odd(where: string, message: string): Issue {
  return issue('warning', 'figure-absurd', where, message);
}

function gates(property: Property): readonly Issue[] {
  return property.gates
    .filter((gate) => gate.clearWidthIn > WIDEST_GATE_IN)
    .map((gate) =>
      odd(`${named('property', property)}, gate ${gate.name}`, `It is ${gate.clearWidthIn} in wide; check the unit.`),
    );
}

function slopes(property: Property): readonly Issue[] {
  return property.zones
    .filter((zone) => zone.slopeDeg > STEEPEST_DEG)
    .map((zone) =>
      odd(
        `${named('property', property)}, zone ${zone.name}`,
        `A slope of ${zone.slopeDeg} degrees is a cliff; check whether per cent was meant.`,
      ),
    );
}

function far(book: Book, property: Property): readonly Issue[] {
  if (book.fillPoints.length === 0) return [];
  const miles = Math.min(...book.fillPoints.map((point) => roughMiles(point.at, property.parking)));
  if (miles <= FARTHEST_MILES) return [];
  return [
    odd(
      named('property', property),
      `It lies about ${Math.round(miles)} miles from every fill point; check whether latitude and longitude were exchanged.`,
    ),
  ];
}

/** Good enough to tell a mistake from a long drive. */
function roughMiles(from: Position, to: Position): number {
  const middle = (((from[1] + to[1]) / 2) * Math.PI) / 180;
  return MILES_PER_DEGREE * Math.hypot(from[1] - to[1], (from[0] - to[0]) * Math.cos(middle));
}
