import type { Spot } from './map-labels.ts';

type Rings = readonly (readonly Spot[])[];
/** A stretch of a line that lies inside of an area: how far along the line it begins and ends, and where the line is. */
type Stretch = { readonly from: number; readonly to: number; readonly across: number };

/** Lines never run exactly through a corner, where inside and outside could not be told apart. */
const OFF_CORNERS = 0.0137;

/**
 * Parallel lines inside of an area, as the data of one SVG path. Patterns of SVG would draw the same, but a printed page keeps every
 * piece of one apart: a day's maps came to 30 MB and half a minute.
 *
 * @param rings   outer edges and holes in any order; what lies inside an odd number of them is inside
 * @param spacing between the lines, in the unit of the rings
 * @param angleDeg of the lines, 0 for lines from left to right
 */
export function hatchLines(rings: Rings, spacing: number, angleDeg: number): string {
  const angle = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turned = rings.map((ring) => ring.map(([x, y]): Spot => [x * cos + y * sin, y * cos - x * sin]));
  const back = (along: number, across: number): string =>
    `${(along * cos - across * sin).toFixed(1)} ${(along * sin + across * cos).toFixed(1)}`;
  return stretchesOf(turned, spacing)
    .map(({ from, to, across }) => `M${back(from, across)}L${back(to, across)}`)
    .join('');
}

/** Dots inside of an area, on a square grid, as the data of one SVG path that is drawn with round ends. */
export function hatchDots(rings: Rings, spacing: number): string {
  return stretchesOf(rings, spacing)
    .flatMap(({ from, to, across }) => {
      const first = Math.ceil(from / spacing);
      const count = Math.max(0, Math.floor(to / spacing) - first + 1);
      return Array.from(
        { length: count },
        (_, index) => `M${((first + index) * spacing).toFixed(1)} ${across.toFixed(1)}h0`,
      );
    })
    .join('');
}

/** The stretches of level lines that lie inside, line by line. The same grid of lines serves for every area of a map. */
function stretchesOf(rings: Rings, spacing: number): readonly Stretch[] {
  let [lowest, highest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const [, y] of rings.flat()) {
    lowest = Math.min(lowest, y);
    highest = Math.max(highest, y);
  }
  const stretches: Stretch[] = [];
  for (let line = Math.ceil(lowest / spacing); line * spacing <= highest; line += 1) {
    const across = line * spacing + OFF_CORNERS;
    const crossings = rings.flatMap((ring) => crossingsOf(ring, across)).sort((one, other) => one - other);
    for (let index = 0; index + 1 < crossings.length; index += 2) {
      stretches.push({ from: crossings[index] ?? 0, to: crossings[index + 1] ?? 0, across });
    }
  }
  return stretches;
}

function crossingsOf(ring: readonly Spot[], across: number): readonly number[] {
  const crossings: number[] = [];
  let before = ring.at(-1);
  for (const spot of ring) {
    if (before !== undefined && before[1] > across !== spot[1] > across) {
      crossings.push(before[0] + ((across - before[1]) * (spot[0] - before[0])) / (spot[1] - before[1]));
    }
    before = spot;
  }
  return crossings;
}
