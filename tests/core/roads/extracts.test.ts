import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import {
  ROAD_SETTINGS,
  type RoadMap,
  type RoadNetwork,
  readRoadMap,
  readRoads,
  roadNetwork,
  roadTable,
  snapPlaces,
  writeRoadMap,
} from '../../../core/roads/index.ts';

/** Extracts of OpenStreetMap beside the repository: (c) OpenStreetMap contributors, ODbL 1.0. */
const FOLDER = fileURLToPath(new URL('../../../../shared/geodata', import.meta.url));
const EXTRACTS = [
  'bangor_me_roads',
  'columbus_oh',
  'felton_ca',
  'liechtenstein',
  'monaco',
  'portland_or_central_roads',
];
const noFolder = `no folder ${path.basename(FOLDER)} beside the repository`;
const hasOsmium = ((): boolean => {
  try {
    execFileSync('osmium', ['--version']);
    return true;
  } catch {
    return false;
  }
})();
const noOsmium = 'no osmium on this machine (Debian: osmium-tool)';

const fileOf = (name: string): string => path.join(FOLDER, 'osm', `${name}.osm.pbf`);
const maps = new Map<string, RoadMap>();
async function mapOf(name: string): Promise<RoadMap> {
  const known = maps.get(name) ?? (await readFile(fileOf(name)));
  maps.set(name, known);
  return known;
}
async function readFile(file: string): Promise<RoadMap> {
  const reading = await readRoads(new Uint8Array(readFileSync(file)), { where: path.basename(file) });
  if (!reading.ok) throw new Error(reading.error.detail);
  return reading.value;
}

describe.each(EXTRACTS)('%s', (name) => {
  it('holds what osmium counts in it', async (context) => {
    if (!existsSync(FOLDER)) return context.skip(noFolder);
    if (!hasOsmium) return context.skip(noOsmium);
    const told = JSON.parse(execFileSync('osmium', ['fileinfo', '-e', '-j', fileOf(name)], { encoding: 'utf8' })) as {
      data: { count: { nodes: number; ways: number; relations: number } };
    };
    const { nodes, ways, relations } = told.data.count;
    expect((await mapOf(name)).about.counts).toMatchObject({ nodes, ways, relations });
  });

  it('is stored and read back the same', async (context) => {
    if (!existsSync(FOLDER)) return context.skip(noFolder);
    const map = await mapOf(name);
    const stored = readRoadMap(writeRoadMap(map), 'x');
    if (!stored.ok) throw new Error(stored.error.detail);
    expect([stored.value.fingerprint, stored.value.about]).toEqual([map.fingerprint, map.about]);
  });
});

describe.each(['felton_ca', 'monaco', 'bangor_me_roads'])('%s', (name) => {
  it('is the same as osmium writes it anew in other forms', async (context) => {
    if (!existsSync(FOLDER)) return context.skip(noFolder);
    if (!hasOsmium) return context.skip(noOsmium);
    const map = await mapOf(name);
    const folder = mkdtempSync(path.join(tmpdir(), 'extracts-'));
    try {
      for (const [file, format] of [
        ['a.osm', 'osm'],
        ['b.pbf', 'pbf,pbf_dense_nodes=false'],
        ['c.pbf', 'pbf,pbf_compression=none'],
      ] as const) {
        const target = path.join(folder, file);
        execFileSync('osmium', ['cat', fileOf(name), '-f', format, '-o', target]);
        expect((await readFile(target)).fingerprint, format).toBe(map.fingerprint);
      }
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

/** 100 x 100 durations and distances of the Open Source Routing Machine v6.0.0, car profile, fastest ways. */
type Reference = {
  readonly coordinates: readonly (readonly [number, number])[];
  readonly snapped: readonly (readonly [number, number])[];
  readonly durations: readonly (readonly number[])[];
  readonly distances: readonly (readonly number[])[];
};

describe('Columbus against another engine', () => {
  const reference = (): Reference =>
    JSON.parse(readFileSync(path.join(FOLDER, 'reference/osrm_table_columbus_oh.json'), 'utf8')) as Reference;
  const networkOf = async (): Promise<RoadNetwork> => roadNetwork(await mapOf('columbus_oh'), ROAD_SETTINGS);

  it('joins places to the same roads, within 3 m, and says nearly the same', async (context) => {
    if (!existsSync(FOLDER)) return context.skip(noFolder);
    const { coordinates, snapped, durations, distances } = reference();
    const network = await networkOf();
    const places = snapPlaces(
      network,
      coordinates.map((at, id) => ({ id: `${id}`, at })),
    );
    places.forEach((place, number) => {
      if (place.kind !== 'snapped') throw new Error(`${number} is ${place.kind}`);
      const [lon, lat] = snapped[number]!;
      const metres = 111_195 * Math.hypot((place.at[0] - lon) * Math.cos((lat * Math.PI) / 180), place.at[1] - lat);
      expect(metres, `place ${number}`).toBeLessThan(3);
    });
    const table = roadTable(network, places, { method: 'dijkstra' });
    if (!table.ok) throw new Error(table.error.detail);
    const pairs = durations.flatMap((row, from) =>
      row.flatMap((sec, to) => {
        const cell = from * places.length + to;
        const [ownSec, ownM] = [table.value.durationDs[cell]! / 10, table.value.distanceDm[cell]! / 10];
        return sec < 60 ? [] : [{ sec, metres: distances[from]![to]!, ownSec, ownM }];
      }),
    );
    expect(pairs.length).toBe(9878);
    const off = median(pairs.map(({ metres, ownM }) => Math.abs(ownM / metres - 1)));
    const late = median(pairs.map(({ sec, ownSec }) => Math.abs(ownSec / sec - 1)));
    expect(off).toBeLessThan(0.005);
    expect(late).toBeLessThan(0.05);
    expect(
      rankCorrelation(
        pairs.map(({ sec }) => sec),
        pairs.map(({ ownSec }) => ownSec),
      ),
    ).toBeGreaterThan(0.98);
  });
});

it('Portland: every cell by climbs in a hierarchy is the same as by plain searches', async (context) => {
  if (!existsSync(FOLDER)) return context.skip(noFolder);
  const map = await mapOf('portland_or_central_roads');
  const network = roadNetwork(map, ROAD_SETTINGS);
  const random = createRandom(1);
  const [west, south, east, north] = map.about.bounds;
  const places = snapPlaces(
    network,
    Array.from({ length: 60 }, (_, id) => ({
      id: `${id}`,
      at: [west + (east - west) * random.unit(), south + (north - south) * random.unit()],
    })),
  );
  const plain = roadTable(network, places, { method: 'dijkstra' });
  const high = roadTable(network, places, { method: 'hierarchy' });
  if (!plain.ok || !high.ok) throw new Error('stopped');
  expect(high.value.durationDs).toEqual(plain.value.durationDs);
  expect(high.value.distanceDm).toEqual(plain.value.distanceDm);
  expect(plain.value.durationDs.filter((each) => each > 0).length).toBeGreaterThan(1000);
});

function median(numbers: readonly number[]): number {
  return [...numbers].sort((one, other) => one - other)[Math.floor(numbers.length / 2)]!;
}

/** Spearman's: the correlation of places in order (ties as they come). */
function rankCorrelation(one: readonly number[], other: readonly number[]): number {
  const ranks = (numbers: readonly number[]): number[] => {
    const order = numbers.map((_, at) => at).sort((a, b) => numbers[a]! - numbers[b]!);
    const rank: number[] = [];
    order.forEach((at, place) => {
      rank[at] = place;
    });
    return rank;
  };
  const [left, right] = [ranks(one), ranks(other)];
  const count = one.length;
  const squares = left.reduce((sum, rank, at) => sum + (rank - right[at]!) ** 2, 0);
  return 1 - (6 * squares) / (count * (count * count - 1));
}
