import { createRandom, type Random } from '../../../core/base/index.ts';
import type { AreaGeometry, Book, Position, Property } from '../../../core/book/index.ts';
import { localPlane } from '../../../core/geometry/index.ts';
import { drawnRound } from '../drawn-round.ts';

/** Corners that each side of a drawn outline gets between its ends, and how far inwards the farthest of them lies, metres. */
const CORNERS_A_SIDE = 2;
const INWARDS_M = 0.15;
/** Lawns of the one day. */
const STOPS = 40;

/**
 * An invented book of many drawn lawns: the house lots of the mixed day, stretched at random, with two zones, four to six things to keep out
 * of, a gate and an address each, and outlines with the corners of one that was traced: some 50 a lawn. Its one round is a day of the
 * forty lawns nearest to the shop, for two rigs.
 */
export function largeBook(lawns: number): Book {
  const book = drawnRound({ lawns, rigs: 2, days: 1 }, 3);
  const random = createRandom(7);
  const [round] = book.rounds;
  if (round === undefined) throw new Error('the invented round is missing');
  const properties = book.properties.map((lawn) => traced(lawn, random));
  const shop = localPlane(book.fillPoints[0]?.at ?? [0, 0]);
  const far = ({ parking }: Property): number => Math.hypot(shop.toPlane(parking).x, shop.toPlane(parking).y);
  const near = properties.toSorted((left, right) => far(left) - far(right)).slice(0, STOPS);
  const propertyIds = near.map(({ id }) => id);
  return { ...book, name: `${lawns} lawns (invented)`, properties, rounds: [{ ...round, propertyIds }] };
}

function traced(lawn: Property, random: Random): Property {
  const zones = lawn.zones.map((zone) =>
    zone.shape.kind === 'stated'
      ? zone
      : { ...zone, shape: { ...zone.shape, geometry: tracedArea(zone.shape.geometry, random) } },
  );
  return { ...lawn, zones };
}

function tracedArea(area: AreaGeometry, random: Random): AreaGeometry {
  if (area.type !== 'Polygon') return area;
  return { type: 'Polygon', coordinates: area.coordinates.map((ring) => tracedRing(ring, random)) };
}

/** The ring with more corners, a hand's breadth inside the straight sides of the convex lots. */
function tracedRing(ring: readonly Position[], random: Random): readonly Position[] {
  const [first] = ring;
  if (first === undefined) return ring;
  const plane = localPlane(first);
  const corners = ring.map((at) => plane.toPlane(at));
  const middle = {
    x: corners.reduce((sum, { x }) => sum + x, 0) / corners.length,
    y: corners.reduce((sum, { y }) => sum + y, 0) / corners.length,
  };
  return corners.flatMap((corner, index) => {
    const next = corners[index + 1];
    if (next === undefined) return [plane.toDegrees(corner)];
    const between = Array.from({ length: CORNERS_A_SIDE }, (_, number) => {
      const part = (number + 1) / (CORNERS_A_SIDE + 1);
      const [x, y] = [corner.x + part * (next.x - corner.x), corner.y + part * (next.y - corner.y)];
      const reach = (INWARDS_M * random.unit()) / Math.hypot(middle.x - x, middle.y - y);
      return { x: x + reach * (middle.x - x), y: y + reach * (middle.y - y) };
    });
    return [corner, ...between].map(plane.toDegrees);
  });
}
