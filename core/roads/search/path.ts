import type { Position } from '../../book/index.ts';
import { ROAD_CLASSES } from '../classes.ts';
import { lineOf } from '../line.ts';
import type { RoadNetwork } from '../network/index.ts';
import type { RoadPath, Snap } from '../types.ts';
import { durationDsOf, entriesOf, lengthDmOf, NO_WAY } from '../weight.ts';
import { dijkstra } from './dijkstra.ts';
import { alongOneArc, partTo, type Seed, seedsFrom, seedsTo } from './ends.ts';

/** A piece of an arc that is driven, as shares of it. */
type Piece = { readonly arc: number; readonly begin: number; readonly end: number };

/** The quickest way from one place to another, the same as in `roadTable`; null where there is none. */
export function roadPath(network: RoadNetwork, from: Snap, to: Snap): RoadPath | null {
  const straight = alongOneArc(network, from, to);
  const ends = seedsTo(network, to);
  const marks = new Uint8Array(network.arcEdge.length);
  for (const { arc } of ends) marks[arc] = 1;
  const search = dijkstra(network.next, true);
  const begins = seedsFrom(network, from);
  const best = search.run(begins, marks, ends.length);
  const last = bestOf(ends.map((end) => ({ ...end, weight: end.weight + (best[end.arc] as number) })));
  const least = Math.min(straight, last?.weight ?? Number.POSITIVE_INFINITY);
  if (least >= NO_WAY) return null;
  const pieces =
    last === null || straight <= last.weight
      ? [onePiece(network, from, to, straight)]
      : piecesOf(network, from, to, wayTo(last.arc, search.before), best, begins);
  return told(network, pieces, least, from, to);
}

function bestOf(seeds: readonly Seed[]): Seed | null {
  return seeds.reduce<Seed | null>((best, each) => (best === null || each.weight < best.weight ? each : best), null);
}

function wayTo(arc: number, before: Int32Array): readonly number[] {
  const way: number[] = [];
  for (let at = arc; at >= 0; at = before[at] as number) way.push(at);
  return way.reverse();
}

function shareAt(network: RoadNetwork, arc: number, snap: Snap): number {
  const length = lengthDmOf(network.arcWeight[arc] as number);
  return length === 0 ? 0 : lengthDmOf(partTo(network, arc, snap)) / length;
}

function onePiece(network: RoadNetwork, from: Snap, to: Snap, weight: number): Piece {
  const arc = seedsTo(network, from).find(
    (each) =>
      partTo(network, each.arc, to) - each.weight === weight &&
      seedsTo(network, to).some(({ arc: other }) => other === each.arc),
  )?.arc as number;
  return { arc, begin: shareAt(network, arc, from), end: shareAt(network, arc, to) };
}

function piecesOf(
  network: RoadNetwork,
  from: Snap,
  to: Snap,
  way: readonly number[],
  best: Float64Array,
  begins: readonly Seed[],
): readonly Piece[] {
  const first = way[0] as number;
  const seed = begins.find(({ arc, weight }) => arc === first && weight === best[first]) as Seed;
  const pieces = way.map((arc, at) => ({ arc, begin: 0, end: at === way.length - 1 ? shareAt(network, arc, to) : 1 }));
  return [{ arc: seed.start, begin: shareAt(network, seed.start, from), end: 1 }, ...pieces];
}

function told(network: RoadNetwork, pieces: readonly Piece[], weight: number, from: Snap, to: Snap): RoadPath {
  const { map, arcEdge, arcWeight, arcWaitDs } = network;
  const sec = new Float64Array(ROAD_CLASSES.length);
  const metres = new Float64Array(ROAD_CLASSES.length);
  for (const { arc, begin, end } of pieces) {
    const roadClass = map.edges.roadClass[arcEdge[arc] as number] as number;
    const whole = arcWeight[arc] as number;
    sec[roadClass] =
      (sec[roadClass] as number) + ((end - begin) * (durationDsOf(whole) - (arcWaitDs[arc] as number))) / 10;
    metres[roadClass] = (metres[roadClass] as number) + ((end - begin) * lengthDmOf(whole)) / 10;
  }
  const durationSec = durationDsOf(weight) / 10;
  return {
    positions: [from.at, ...pieces.flatMap((piece) => cornersOf(network, piece)), to.at],
    durationSec,
    distanceM: lengthDmOf(weight) / 10,
    byClass: ROAD_CLASSES.flatMap((roadClass, at) =>
      (metres[at] as number) > 0 ? [{ roadClass, sec: sec[at] as number, metres: metres[at] as number }] : [],
    ),
    turnSec: Math.max(0, durationSec - sec.reduce((sum, each) => sum + each, 0)),
    entries: entriesOf(weight),
  };
}

/** The corners of a piece, without points at the places themselves. */
function cornersOf({ map, arcEdge, arcBackward }: RoadNetwork, { arc, begin, end }: Piece): readonly Position[] {
  const line = [...lineOf(map, arcEdge[arc] as number)];
  if (arcBackward[arc] === 1) line.reverse();
  const squeeze = Math.cos(((line[0]?.[1] ?? 0) * Math.PI) / 180);
  const along = [0];
  for (let at = 1; at < line.length; at += 1) {
    const [one, other] = [line[at - 1] as Position, line[at] as Position];
    along.push((along[at - 1] as number) + Math.hypot((other[0] - one[0]) * squeeze, other[1] - one[1]));
  }
  const whole = along[along.length - 1] as number;
  return line.filter((_, at) => {
    const share = whole === 0 ? 0 : (along[at] as number) / whole;
    return share > begin && (end === 1 ? true : share < end);
  });
}
