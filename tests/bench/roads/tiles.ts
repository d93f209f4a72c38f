import { distanceMetres } from '../../../core/geometry/index.ts';
import type { RoadMap } from '../../../core/roads/index.ts';

/** Roads between two tiles that lie side by side. */
const JOINTS = 20;

type Row = Int32Array | Uint32Array | Uint16Array | Uint8Array;

/**
 * A map laid side by side with itself, so many tiles in each direction, neighbours joined by straight roads between junctions near the
 * seam: a larger map of roads that are real but for the seams.
 */
export function tiled(map: RoadMap, side: number): RoadMap {
  if (side === 1) return map;
  const [west, south, east, north] = map.about.bounds;
  const [stepLon, stepLat] = [Math.round((east - west) * 1e7) + 1000, Math.round((north - south) * 1e7) + 1000];
  const tiles = Array.from({ length: side * side }, (_, tile) => ({
    lon: (tile % side) * stepLon,
    lat: Math.floor(tile / side) * stepLat,
    junction: tile * map.junctions.lon.length,
    edge: tile * map.edges.from.length,
    shape: tile * map.edges.shapeLon.length,
  }));
  const laid = <Numbers extends Row>(
    row: Numbers,
    add: (tile: (typeof tiles)[number]) => number = () => 0,
  ): Numbers => {
    const whole = new (row.constructor as new (length: number) => Numbers)(row.length * tiles.length);
    tiles.forEach((tile, at) => {
      whole.set(row.map((each) => each + add(tile)) as never, at * row.length);
    });
    return whole;
  };
  const { edges, junctions, restrictions } = map;
  const whole: RoadMap = {
    ...map,
    junctions: {
      ...junctions,
      lon: laid(junctions.lon, (tile) => tile.lon),
      lat: laid(junctions.lat, (tile) => tile.lat),
      flags: laid(junctions.flags),
      heightCm: laid(junctions.heightCm),
    },
    edges: {
      ...(Object.fromEntries(Object.entries(edges).map(([name, row]) => [name, laid(row)])) as RoadMap['edges']),
      from: laid(edges.from, (tile) => tile.junction),
      to: laid(edges.to, (tile) => tile.junction),
      shapeStart: Uint32Array.from([
        ...laid(edges.shapeStart.slice(0, -1), (tile) => tile.shape),
        edges.shapeLon.length * tiles.length,
      ]),
      shapeLon: laid(edges.shapeLon, (tile) => tile.lon),
      shapeLat: laid(edges.shapeLat, (tile) => tile.lat),
    },
    restrictions: {
      from: laid(restrictions.from, (tile) => tile.edge),
      via: laid(restrictions.via, (tile) => tile.junction),
      to: laid(restrictions.to, (tile) => tile.edge),
      flags: laid(restrictions.flags),
    },
    about: { ...map.about, bounds: [west, south, west + (side * stepLon) / 1e7, south + (side * stepLat) / 1e7] },
    fingerprint: `${map.fingerprint} x ${side}`,
  };
  return joined(whole, map, side);
}

/** Straight roads both ways between the junctions that lie nearest to a seam. */
function joined(whole: RoadMap, map: RoadMap, side: number): RoadMap {
  const count = map.junctions.lon.length;
  const byPlace = (row: Int32Array, isHigh: boolean): readonly number[] =>
    Array.from({ length: count }, (_, at) => at)
      .sort((one, other) => (row[one] as number) - (row[other] as number))
      .slice(...(isHigh ? [-JOINTS] : [0, JOINTS]));
  const seams = [
    { step: 1, isThere: (tile: number) => tile % side < side - 1, row: map.junctions.lon, order: map.junctions.lat },
    {
      step: side,
      isThere: (tile: number) => tile < side * (side - 1),
      row: map.junctions.lat,
      order: map.junctions.lon,
    },
  ];
  const pairs = seams.flatMap(({ step, isThere, row, order }) => {
    const along = (places: readonly number[]): readonly number[] =>
      [...places].sort((one, other) => (order[one] as number) - (order[other] as number));
    const [near, far] = [along(byPlace(row, true)), along(byPlace(row, false))];
    return Array.from({ length: side * side }, (_, tile) => tile)
      .filter(isThere)
      .flatMap((tile) =>
        near.map((at, place) => [tile * count + at, (tile + step) * count + (far[place] as number)] as const),
      );
  });
  const { lon, lat } = whole.junctions;
  const position = (at: number): readonly [number, number] => [(lon[at] as number) / 1e7, (lat[at] as number) / 1e7];
  const added: Readonly<Record<string, readonly number[]>> = {
    from: pairs.map(([from]) => from),
    to: pairs.map(([, to]) => to),
    lengthDm: pairs.map(([from, to]) => Math.round(10 * distanceMetres(position(from), position(to)))),
    // Secondary roads, both ways.
    roadClass: pairs.map(() => 6),
    flags: pairs.map(() => 3),
    shapeStart: pairs.map(() => whole.edges.shapeLon.length),
    shapeLon: [],
    shapeLat: [],
  };
  const edges = Object.fromEntries(
    Object.entries(whole.edges).map(([name, row]) => {
      const more = added[name] ?? pairs.map(() => 0);
      const wider = new (row.constructor as new (length: number) => Row)(row.length + more.length);
      wider.set(row);
      wider.set(more, row.length);
      return [name, wider];
    }),
  ) as RoadMap['edges'];
  return { ...whole, edges };
}
