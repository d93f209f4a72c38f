import type { SourceCoordinates } from '../types.ts';

type DrawingUnit = { readonly name: string; readonly metres: number };

/** Units of drawings by the header's $INSUNITS (DXF reference, header variables; sizes by definition). */
const UNITS: Readonly<Record<number, DrawingUnit>> = {
  1: { name: 'inches', metres: 0.0254 },
  2: { name: 'feet', metres: 0.3048 },
  3: { name: 'miles', metres: 1609.344 },
  4: { name: 'millimetres', metres: 0.001 },
  5: { name: 'centimetres', metres: 0.01 },
  6: { name: 'metres', metres: 1 },
  7: { name: 'kilometres', metres: 1000 },
  10: { name: 'yards', metres: 0.9144 },
  14: { name: 'decimetres', metres: 0.1 },
  21: { name: 'US survey feet', metres: 1200 / 3937 },
};

/** What the numbers of a drawing mean: never a place, and a size only as a guess. */
export function drawingCoordinates(unitCode: number | null): SourceCoordinates {
  const unit = unitCode === null ? undefined : UNITS[unitCode];
  const place = 'A drawing has no place on earth. Place it by two points whose distance is known';
  if (unit === undefined) {
    return { kind: 'drawing', metresPerUnit: null, why: `${place}; the drawing does not say what its unit is.` };
  }
  const doubt = `the drawing says that its unit is ${unit.name}, but that is often wrong.`;
  return { kind: 'drawing', metresPerUnit: unit.metres, why: `${place}; ${doubt}` };
}
