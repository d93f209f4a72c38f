import { type Issue, issue } from '../base/index.ts';
import type { TravelMatrix, TravelSettings } from '../book/index.ts';
import { type DriveTable, offRoadWords, placesOffRoad } from './drive-table.ts';
import type { TravelTable } from './types.ts';

/** How many pairs of different places there are, and for how many of them duration or distance is an estimate. */
export type EstimateCount = { readonly pairs: number; readonly durations: number; readonly distances: number };

/** Where the travel figures of a plan come from; 'mixed' wherever estimates are among figures of another kind. */
export type TravelKind = 'estimate' | 'matrix' | 'roads' | 'mixed';

/** How much of a table is an estimate. The way from a place to itself does not count. */
export function countEstimates(table: TravelTable): EstimateCount {
  const count = table.places.length;
  const ones = (marks: Uint8Array): number => marks.reduce((sum, each) => sum + each, 0);
  return {
    pairs: count * (count - 1),
    durations: ones(table.estimated),
    distances: ones(table.distanceEstimated),
  };
}

/** Where the figures of a table come from, judged by its durations. */
export function travelKindOf(table: TravelTable): TravelKind {
  const { pairs, durations } = countEstimates(table);
  if (durations >= pairs) return 'estimate';
  if (durations > 0) return 'mixed';
  return table.roadPairs > 0 ? 'roads' : 'matrix';
}

/** Where the travel figures come from, in a line for screens and sheets. Says "estimate" wherever one is among them. */
export function describeTravel(
  table: TravelTable,
  settings: TravelSettings,
  matrix: TravelMatrix | undefined,
  roads?: DriveTable | undefined,
): string {
  const { pairs, durations, distances } = countEstimates(table);
  const estimate = `estimate: straight line × ${settings.circuity}, not roads`;
  if ((matrix === undefined && roads === undefined) || (pairs > 0 && durations === pairs))
    return `Travel is an ${estimate}`;
  if (roads !== undefined && table.roadPairs > 0) return withRoads(table, matrix, roads, estimate);
  const source = `Travel is from the imported table ${matrix?.source ?? ''}`;
  if (durations > 0) return `${source}; ${durations} of ${pairs} pairs are missing there and are an ${estimate}`;
  return distances > 0 ? `${source}; distances missing there are an ${estimate}` : source;
}

function withRoads(table: TravelTable, matrix: TravelMatrix | undefined, roads: DriveTable, estimate: string): string {
  const { pairs, durations } = countEstimates(table);
  const credit = roads.credit === '' ? '' : ` (${roads.credit})`;
  if (table.roadPairs === pairs) return `Travel is by road${credit}`;
  return [
    `Travel is by road${credit} for ${table.roadPairs} of ${pairs} pairs of places`,
    ...(matrix !== undefined && table.matrixPairs > 0
      ? [`${table.matrixPairs} are from the imported table ${matrix.source}`]
      : []),
    ...(durations > 0 ? [`${durations} are an ${estimate}`] : []),
  ].join('; ');
}

/**
 * What has to be said of travel by road: pairs that are an estimate all the same, places that no road comes near, and what went
 * wrong. Nothing where no roads are used: the plan then says "estimate" as a whole.
 *
 * @param nameOf the name of a place by its id, for people
 */
export function travelNotes(
  table: TravelTable,
  settings: TravelSettings,
  matrix: TravelMatrix | undefined,
  roads: DriveTable | undefined,
  nameOf: (id: string) => string,
): readonly Issue[] {
  if (roads === undefined) return [];
  const gaps = countEstimates(table).durations > 0;
  return [
    ...(roads.trouble === undefined ? [] : [issue('warning', 'roads-trouble', 'travel', roads.trouble)]),
    ...(gaps
      ? [issue('note', 'travel-estimated', 'travel', `${describeTravel(table, settings, matrix, roads)}.`)]
      : []),
    ...placesOffRoad(roads, table.places).map((each) =>
      issue('warning', 'place-off-road', nameOf(each.id), `${offRoadWords(each)} Ways to and from it are an estimate.`),
    ),
  ];
}
