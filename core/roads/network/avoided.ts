import type { AreaGeometry } from '../../book/index.ts';
import { boxesMeet, boxOfEdge, lineOf, type StepBox, widen } from '../line.ts';
import type { RoadMap } from '../types.ts';

type Ring = readonly (readonly [number, number])[];

/** Marks the edges of which any piece lies in one of the areas. Degrees are taken for a plane, as they are drawn on the map. */
export function avoidedEdges(map: RoadMap, areas: readonly AreaGeometry[]): Uint8Array {
  const marks = new Uint8Array(map.edges.from.length);
  for (const area of areas) {
    const polygons = area.type === 'Polygon' ? [area.coordinates] : area.coordinates;
    for (const polygon of polygons) markPolygon(map, polygon, marks);
  }
  return marks;
}

function markPolygon(map: RoadMap, rings: readonly Ring[], marks: Uint8Array): void {
  const box = boxOf(rings[0] ?? []);
  for (let edge = 0; edge < marks.length; edge += 1) {
    if (marks[edge] === 1 || !boxesMeet(boxOfEdge(map, edge), box)) continue;
    let before: readonly [number, number] | null = null;
    for (const place of lineOf(map, edge)) {
      if (isIn(rings, place[0], place[1]) || (before !== null && crosses(rings, before, place))) {
        marks[edge] = 1;
        break;
      }
      before = place;
    }
  }
}

function boxOf(ring: Ring): StepBox {
  const box: StepBox = { west: Infinity, south: Infinity, east: -Infinity, north: -Infinity };
  for (const [longitude, latitude] of ring) widen(box, longitude * 1e7, latitude * 1e7);
  return box;
}

/** Even-odd over all rings, so that holes are outside. */
function isIn(rings: readonly Ring[], x: number, y: number): boolean {
  let inside = false;
  for (const ring of rings) {
    let last = ring[ring.length - 1];
    for (const corner of ring) {
      if (last !== undefined && corner[1] > y !== last[1] > y) {
        const at = corner[0] + ((y - corner[1]) / (last[1] - corner[1])) * (last[0] - corner[0]);
        if (x < at) inside = !inside;
      }
      last = corner;
    }
  }
  return inside;
}

function crosses(rings: readonly Ring[], from: readonly [number, number], to: readonly [number, number]): boolean {
  const side = (a: readonly [number, number], b: readonly [number, number], c: readonly [number, number]): number =>
    Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
  for (const ring of rings) {
    let last = ring[ring.length - 1];
    for (const corner of ring) {
      if (
        last !== undefined &&
        side(from, to, last) !== side(from, to, corner) &&
        side(last, corner, from) !== side(last, corner, to)
      ) {
        return true;
      }
      last = corner;
    }
  }
  return false;
}
