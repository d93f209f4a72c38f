import type { TravelMatrix, TravelSettings } from '../book/index.ts';
import type { TravelTable } from './types.ts';

/** How many of the pairs of different places are estimated. */
export function estimatedPairs(table: TravelTable): { readonly pairs: number; readonly estimated: number } {
  const count = table.places.length;
  return { pairs: count * (count - 1), estimated: table.estimated.reduce((sum, each) => sum + each, 0) };
}

/** Where the travel figures come from, in a line for screens and sheets. Says "estimate" wherever one is among them. */
export function describeTravel(table: TravelTable, settings: TravelSettings, matrix: TravelMatrix | undefined): string {
  const { pairs, estimated } = estimatedPairs(table);
  const estimate = `estimate: straight line × ${settings.circuity}, not roads`;
  if (matrix === undefined || (pairs > 0 && estimated === pairs)) return `Travel is an ${estimate}`;
  const source = `imported table ${matrix.source}`;
  if (estimated === 0) return `Travel is from the ${source}`;
  return `Travel is from the ${source}; ${estimated} of ${pairs} pairs are missing there and are an ${estimate}`;
}
