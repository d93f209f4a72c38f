import { localPlane } from '../../../core/geometry/index.ts';
import {
  ROAD_CLASSES,
  ROAD_SETTINGS,
  type RoadMap,
  type RoadNetwork,
  type RoadSettings,
  readRoads,
  roadNetwork,
  roadPath,
  roadTable,
  SNAP_OPTIONS,
  type Snap,
  type SnapOptions,
  snapPlaces,
} from '../../../core/roads/index.ts';

/** Invented towns on a plane of metres, written as OSM XML, so that answers can be worked out by hand. */
export type Town = {
  /** Metres east and north. */
  readonly nodes: Readonly<Record<string, readonly [x: number, y: number, tags?: Tags]>>;
  /** Names of nodes, "A B C", and tags; `highway` is residential where none is told. */
  readonly ways: readonly (readonly [nodes: string, tags?: Tags])[];
  /** Ways by their place in the list, from 0. */
  readonly restrictions?: readonly {
    readonly kind: string;
    readonly from: number;
    readonly via: string;
    readonly to: number;
  }[];
};
export type Tags = Readonly<Record<string, string>>;

const plane = localPlane([-83, 40]);

export function at(x: number, y: number): readonly [number, number] {
  return plane.toDegrees({ x, y });
}

export function townXml({ nodes, ways, restrictions = [] }: Town): string {
  const names = Object.keys(nodes);
  const idOf = (name: string): number => names.indexOf(name) + 1;
  const tagLines = (tags: Tags): string =>
    Object.entries(tags)
      .map(([k, v]) => `<tag k="${k}" v="${v}"/>`)
      .join('');
  return [
    '<?xml version="1.0" encoding="UTF-8"?><osm version="0.6" generator="a test">',
    ...names.map((name) => {
      const [x, y, tags = {}] = nodes[name]!;
      const [lon, lat] = at(x, y);
      return `<node id="${idOf(name)}" lat="${lat.toFixed(7)}" lon="${lon.toFixed(7)}">${tagLines(tags)}</node>`;
    }),
    ...ways.map(([list, tags = {}], way) => {
      const refs = list.split(' ').map((name) => `<nd ref="${idOf(name)}"/>`);
      return `<way id="${way + 1}">${refs.join('')}${tagLines({ highway: 'residential', ...tags })}</way>`;
    }),
    ...restrictions.map(
      ({ kind, from, via, to }, number) =>
        `<relation id="${number + 1}"><member type="way" ref="${from + 1}" role="from"/>` +
        `<member type="node" ref="${idOf(via)}" role="via"/><member type="way" ref="${to + 1}" role="to"/>` +
        `${tagLines({ type: 'restriction', restriction: kind })}</relation>`,
    ),
    '</osm>',
  ].join('\n');
}

export async function mapOf(town: Town | string): Promise<RoadMap> {
  const xml = typeof town === 'string' ? town : townXml(town);
  const reading = await readRoads(new TextEncoder().encode(xml), { where: 'town.osm' });
  if (!reading.ok) throw new Error(`${reading.error.code}: ${reading.error.detail}`);
  return reading.value;
}

/** 36 km/h, that is 10 m/s, on every road, and nothing lost at turns: seconds are metres over ten. */
export const PLAIN: RoadSettings = {
  ...ROAD_SETTINGS,
  speedsKmh: Object.fromEntries(ROAD_CLASSES.map((name) => [name, 36])) as RoadSettings['speedsKmh'],
  shareOfLimit: 1,
  shareUnpaved: 1,
  turns: { nearSec: 0, acrossSec: 0, roundSec: 0, signalSec: 0, gateSec: 0 },
};

export type Drive = {
  readonly network: RoadNetwork;
  readonly snap: (x: number, y: number) => Snap;
  /** Seconds between two points, by the table, which must say the same as the path; null where there is no way. */
  readonly seconds: (from: readonly [number, number], to: readonly [number, number]) => number | null;
  readonly metres: (from: readonly [number, number], to: readonly [number, number]) => number | null;
};

/** What is driven in a town with some settings. */
export async function drive(
  town: Town,
  settings: RoadSettings = PLAIN,
  options: Partial<SnapOptions> = {},
): Promise<Drive> {
  const network = roadNetwork(await mapOf(town), settings);
  const snap = (x: number, y: number): Snap => {
    const [snapped] = snapPlaces(network, [{ id: `${x} ${y}`, at: at(x, y) }], { ...SNAP_OPTIONS, ...options });
    if (snapped?.kind !== 'snapped') throw new Error(`(${x}, ${y}) is ${snapped?.kind}`);
    return snapped;
  };
  const ask = (from: readonly [number, number], to: readonly [number, number]): readonly [number, number] | null => {
    const places = [snap(...from), snap(...to)] as const;
    const table = roadTable(network, places);
    if (!table.ok) throw new Error(table.error.detail);
    const [duration, distance] = [table.value.durationDs[1]! / 10, table.value.distanceDm[1]! / 10];
    const path = roadPath(network, ...places);
    if (duration < 0 !== (path === null) || (path !== null && path.durationSec !== duration))
      throw new Error('path and table differ');
    return path === null ? null : [duration, distance];
  };
  return {
    network,
    snap,
    seconds: (from, to) => ask(from, to)?.[0] ?? null,
    metres: (from, to) => ask(from, to)?.[1] ?? null,
  };
}
