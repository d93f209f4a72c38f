import type { Exclusion, Property } from '../book/index.ts';
import { type Region, STEPS_PER_METRE, withoutHairs } from '../geometry/index.ts';
import { metresToFeet, quantity } from '../units/index.ts';
import { prepareProperty } from './prepare.ts';

/** What lies beyond a side of what is treated: ground left out, by its kind; another zone; or ground of which the book knows nothing. */
export type EdgeKind = Exclusion['what'] | 'zone' | 'open';
/** How many feet of an edge lie next to something. */
export type EdgeLength = { readonly kind: EdgeKind; readonly lengthFt: number };

/** Outlines drawn by hand along the same line are seldom farther apart; about so much of the next side counts at each corner. metres */
const NEAR_M = 0.3;
/** Sides are looked at in pieces of at most so much. metres */
const PIECE_M = 0.5;
/** Less of a kind is where outlines only touch. ft */
const LEAST_FT = 1;

type Beyond = { readonly kind: EdgeKind; readonly sides: Float64Array };

/**
 * How much of the edge of what is treated of a zone, holes with it, lies next to what, on the map, longest first. An exclusion that is kept
 * away from begins where turf is left for it. Empty where the zone has no outline.
 */
export function edgeLengths(property: Property, zoneId: string): readonly EdgeLength[] {
  const { zones, exclusions } = prepareProperty(property);
  const zone = zones.find((each) => each.zone.id === zoneId);
  if (zone?.kind !== 'drawn') return [];
  const beyond: readonly Beyond[] = [
    ...exclusions.flatMap(({ exclusion, grown, isFar }) =>
      grown === null || isFar ? [] : [{ kind: exclusion.what, sides: sidesOf(grown) }],
    ),
    ...zones.flatMap((each) =>
      each === zone || each.kind !== 'drawn' ? [] : [{ kind: 'zone' as const, sides: sidesOf(each.cut.treatable) }],
    ),
  ];
  const metres = new Map<EdgeKind, number>();
  const sides = sidesOf(withoutHairs(zone.cut.treatable));
  for (let at = 0; at < sides.length; at += 4) {
    const [x, y, toX, toY] = [sides[at] ?? 0, sides[at + 1] ?? 0, sides[at + 2] ?? 0, sides[at + 3] ?? 0];
    const length = Math.hypot(toX - x, toY - y);
    const pieces = Math.max(1, Math.ceil(length / PIECE_M));
    for (let piece = 0; piece < pieces; piece += 1) {
      const share = (piece + 0.5) / pieces;
      const kind = nearest(x + share * (toX - x), y + share * (toY - y), beyond);
      metres.set(kind, (metres.get(kind) ?? 0) + length / pieces);
    }
  }
  return [...metres]
    .map(([kind, length]) => ({ kind, lengthFt: metresToFeet(quantity<'m'>(length)) }))
    .filter((each) => each.lengthFt >= LEAST_FT)
    .sort((left, right) => right.lengthFt - left.lengthFt);
}

/** What is nearest to a place of the edge, where anything is near; ground left out goes before another zone. */
function nearest(x: number, y: number, beyond: readonly Beyond[]): EdgeKind {
  let kind: EdgeKind = 'open';
  let least = NEAR_M;
  for (const each of beyond) {
    if (each.kind === 'zone' && kind !== 'open') break;
    const away = distanceTo(x, y, each.sides);
    if (away < least) [kind, least] = [each.kind, away];
  }
  return kind;
}

function distanceTo(x: number, y: number, sides: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < sides.length; at += 4) {
    const [fromX, fromY] = [sides[at] as number, sides[at + 1] as number];
    const [alongX, alongY] = [(sides[at + 2] as number) - fromX, (sides[at + 3] as number) - fromY];
    const square = alongX * alongX + alongY * alongY;
    const share = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - fromX) * alongX + (y - fromY) * alongY) / square));
    least = Math.min(least, Math.hypot(x - fromX - share * alongX, y - fromY - share * alongY));
  }
  return least;
}

/** Sides in a row, metres: x and y of one end, x and y of the other. */
function sidesOf({ paths }: Region): Float64Array {
  return Float64Array.from(
    paths.flatMap((path) =>
      path.flatMap((to, index) => {
        const from = path[(index + path.length - 1) % path.length] ?? to;
        return [from.x, from.y, to.x, to.y].map((each) => each / STEPS_PER_METRE);
      }),
    ),
  );
}

const NAMES: Readonly<Record<EdgeKind, string>> = {
  bed: 'beds',
  paving: 'paving',
  building: 'buildings',
  water: 'water',
  play: 'play ground',
  garden: 'gardens',
  other: 'other ground left out',
  zone: 'other zones',
  open: 'nothing drawn',
};

/**
 * "next to paving 200 ft, beds 100 ft, nothing drawn 376 ft".
 * @param length feet as people read them
 */
export function edgeWords(edges: readonly EdgeLength[], length: (feet: number) => string): string {
  const drawn = edges.toSorted((left, right) => Number(left.kind === 'open') - Number(right.kind === 'open'));
  return `next to ${drawn.map((each) => `${NAMES[each.kind]} ${length(each.lengthFt)}`).join(', ')}`;
}
