import { readFileSync } from 'node:fs';
import { type RoadNetwork, roadTable, snapPlaces } from '../../../core/roads/index.ts';

type Reference = {
  readonly engine: string;
  readonly coordinates: readonly (readonly [number, number])[];
  readonly durations: readonly (readonly number[])[];
  readonly distances: readonly (readonly number[])[];
};

/** How durations and distances of a network compare with a stored table of another engine, in lines. */
export function compareWith(network: RoadNetwork, file: string): readonly string[] {
  const { engine, coordinates, durations, distances } = JSON.parse(readFileSync(file, 'utf8')) as Reference;
  const places = snapPlaces(
    network,
    coordinates.map((at, id) => ({ id: `${id}`, at })),
  );
  const table = roadTable(network, places);
  if (!table.ok) throw new Error(table.error.detail);
  const pairs = durations.flatMap((row, from) =>
    row.flatMap((sec, to) => {
      const cell = from * places.length + to;
      const [own, metres] = [table.value.durationDs[cell] as number, table.value.distanceDm[cell] as number];
      const other = distances[from]?.[to] ?? 0;
      return sec < 60 ? [] : [{ time: own / 10 / sec - 1, length: metres / 10 / other - 1 }];
    }),
  );
  const line = (name: string, ratios: readonly number[]): string => {
    const size = ratios.map(Math.abs);
    const told = [
      ['median', at(ratios, 0.5)],
      ['median of the size', at(size, 0.5)],
      ['twentieth', at(ratios, 0.05)],
      ['nineteen twentieths', at(ratios, 0.95)],
    ] as const;
    return `${name}: ${told.map(([label, value]) => `${label} ${(100 * value).toFixed(2)} %`).join(', ')}`;
  };
  return [
    `against ${engine}, ${pairs.length} pairs of at least 60 s`,
    line(
      'durations',
      pairs.map(({ time }) => time),
    ),
    line(
      'distances',
      pairs.map(({ length }) => length),
    ),
  ];
}

function at(numbers: readonly number[], share: number): number {
  return [...numbers].sort((one, other) => one - other)[Math.floor(share * (numbers.length - 1))] ?? Number.NaN;
}
