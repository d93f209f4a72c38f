import type { TravelMatrix, TravelSettings } from '../book/index.ts';
import type { TravelTable } from './types.ts';

/** How many pairs of different places there are, and for how many of them duration or distance is an estimate. */
export type EstimateCount = { readonly pairs: number; readonly durations: number; readonly distances: number };

export function countEstimates(table: TravelTable): EstimateCount {
  const count = table.places.length;
  const ones = (marks: Uint8Array): number => marks.reduce((sum, each) => sum + each, 0);
  return {
    pairs: count * (count - 1),
    durations: ones(table.estimated),
    distances: ones(table.distanceEstimated),
  };
}

/** Where the travel figures come from, in a line for screens and sheets. Says "estimate" wherever one is among them. */
export function describeTravel(table: TravelTable, settings: TravelSettings, matrix: TravelMatrix | undefined): string {
  const { pairs, durations, distances } = countEstimates(table);
  const estimate = `estimate: straight line × ${settings.circuity}, not roads`;
  if (matrix === undefined || (pairs > 0 && durations === pairs)) return `Travel is an ${estimate}`;
  const source = `Travel is from the imported table ${matrix.source}`;
  if (durations > 0) return `${source}; ${durations} of ${pairs} pairs are missing there and are an ${estimate}`;
  return distances > 0 ? `${source}; distances missing there are an ${estimate}` : source;
}
