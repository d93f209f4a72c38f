import { ROAD_CLASSES } from '../classes.ts';
import { ACCESS } from '../types.ts';
import type { MapRows } from './sections.ts';

const HALF_TURN = 1_800_000_000;
/** Search weights hold lengths below 2^25 decimetres. */
const MOST_LENGTH_DM = 20_000_000;

/** Why the rows make no map: something in them leads beyond them; null where all is well. */
export function faultIn({ junctions, edges, restrictions }: MapRows): string | null {
  const junctionCount = junctions.lon.length;
  const edgeCount = edges.from.length;
  const isBelow = (row: Uint32Array | Uint8Array, bound: number): boolean => row.every((each) => each < bound);
  const isPlace = (lon: Int32Array, lat: Int32Array): boolean =>
    lon.every((each) => Math.abs(each) <= HALF_TURN) && lat.every((each) => Math.abs(each) <= HALF_TURN / 2);
  if (edgeCount === 0) return 'it holds no roads';
  if (!isBelow(edges.from, junctionCount) || !isBelow(edges.to, junctionCount)) return 'a road ends at no junction';
  if (!isRising(edges.shapeStart, edges.shapeLon.length)) return 'the points of its roads are out of order';
  if (!isBelow(edges.roadClass, ROAD_CLASSES.length)) return 'a road is of an unknown class';
  if (!isBelow(edges.access, ACCESS.closed + 1)) return 'a road is for nobody known';
  if (!isBelow(edges.heavyAccess, ACCESS.closed + 1)) return 'a road is for nobody known';
  if (!isBelow(edges.lengthDm, MOST_LENGTH_DM + 1)) return 'a road is longer than any';
  if (!isPlace(junctions.lon, junctions.lat)) return 'a junction lies nowhere';
  if (!isPlace(edges.shapeLon, edges.shapeLat)) return 'a point of a road lies nowhere';
  const { from, via, to } = restrictions;
  const isWhole = isBelow(from, edgeCount) && isBelow(to, edgeCount) && isBelow(via, junctionCount);
  return isWhole ? null : 'a turn restriction is for no road';
}

function isRising(start: Uint32Array, end: number): boolean {
  return (
    start[0] === 0 &&
    start[start.length - 1] === end &&
    start.every((each, at) => at === 0 || each >= (start[at - 1] as number))
  );
}
