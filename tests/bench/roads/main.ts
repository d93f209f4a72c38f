import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { createRandom } from '../../../core/base/index.ts';
import {
  ROAD_SETTINGS,
  type RoadNetwork,
  type RoadTable,
  readRoads,
  roadNetwork,
  roadTable,
  type Snapping,
  snapPlaces,
  writeRoadMap,
} from '../../../core/roads/index.ts';
import { compareWith } from './reference.ts';
import { tiled } from './tiles.ts';

/**
 * Times the road engine on an extract from a folder beside the repository:
 * npm run bench:roads -- --extract columbus_oh [--tiles 2] [--places 200] [--csv FILE] [--reference FILE]
 *
 * With --tiles the extract is laid side by side with itself, so many times in each direction. Places are random, with a road within
 * 300 m. Seconds are processor seconds of this process; memory is the most that it ever held, so a table of growth takes one run for
 * each size.
 */
const { values } = parseArgs({
  options: {
    folder: { type: 'string', default: '../shared/geodata' },
    extract: { type: 'string', default: 'columbus_oh' },
    tiles: { type: 'string', default: '1' },
    places: { type: 'string', default: '200' },
    reference: { type: 'string' },
    csv: { type: 'string' },
  },
});
const COLUMNS =
  'extract,tiles,arcs,links,read s,network s,plain 200 x 200 s,hierarchy s,climbs 200 x 200 s,stored MiB,MiB,cells that differ';
const BYTES_PER_MIB = 1024 * 1024;

function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

async function timed<Value>(work: () => Value | Promise<Value>): Promise<readonly [Value, number]> {
  const start = processorSeconds();
  const value = await work();
  return [value, processorSeconds() - start];
}

function somePlaces(network: RoadNetwork, count: number): readonly Snapping[] {
  const random = createRandom(1);
  const [west, south, east, north] = network.map.about.bounds;
  const tries = Array.from({ length: 20 * count }, (_, id) => ({
    id: `${id}`,
    at: [west + (east - west) * random.unit(), south + (north - south) * random.unit()] as const,
  }));
  return snapPlaces(network, tries)
    .filter((each) => each.kind === 'snapped')
    .slice(0, count);
}

function tableBy(network: RoadNetwork, places: readonly Snapping[], method: 'dijkstra' | 'hierarchy'): RoadTable {
  const table = roadTable(network, places, { method });
  if (!table.ok) throw new Error(table.error.detail);
  return table.value;
}

const file = path.join(values.folder, 'osm', `${values.extract}.osm.pbf`);
if (!existsSync(file)) throw new Error(`there is no ${file}; say another place with --folder`);
const bytes = new Uint8Array(readFileSync(file));
const [reading, readSec] = await timed(() => readRoads(bytes, { where: values.extract }));
if (!reading.ok) throw new Error(reading.error.detail);
const map = tiled(reading.value, Number(values.tiles));
const [network, networkSec] = await timed(() => roadNetwork(map, ROAD_SETTINGS));
const places = somePlaces(network, Number(values.places));
const [plain, plainSec] = await timed(() => tableBy(network, places, 'dijkstra'));
// One place: the hierarchy is built, and next to nothing else is done.
const [, hierarchySec] = await timed(() => tableBy(network, places.slice(0, 1), 'hierarchy'));
const [high, climbSec] = await timed(() => tableBy(network, places, 'hierarchy'));
let differ = 0;
plain.durationDs.forEach((each, cell) => {
  if (each !== high.durationDs[cell] || plain.distanceDm[cell] !== high.distanceDm[cell]) differ += 1;
});
const row = [
  values.extract,
  values.tiles,
  network.arcEdge.length,
  network.next.node.length,
  readSec.toFixed(3),
  networkSec.toFixed(3),
  plainSec.toFixed(3),
  hierarchySec.toFixed(3),
  climbSec.toFixed(3),
  (writeRoadMap(map).length / BYTES_PER_MIB).toFixed(2),
  Math.round(process.resourceUsage().maxRSS / 1024),
  differ,
];
console.log(COLUMNS);
console.log(row.join(','));
if (values.csv !== undefined) {
  appendFileSync(values.csv, `${existsSync(values.csv) ? '' : `${COLUMNS}\n`}${row.join(',')}\n`);
}
if (values.reference !== undefined) for (const line of compareWith(network, values.reference)) console.log(line);
