import type { Position } from 'geojson';

/** A shell, then its holes. */
type Rings = Position[][];
type Box = { readonly west: number; readonly south: number; readonly east: number; readonly north: number };
type Shell = { readonly rings: Rings; readonly box: Box; readonly area: number };

/** Kinds of patches (Esri, "ESRI Shapefile Technical Description", page 20): 0 and 1 are triangles. */
const OUTER_RING = 2;
const FIRST_RING = 4;

/**
 * The polygons of a record's rings. Shells run clockwise, holes the other way (Esri, "ESRI Shapefile Technical Description",
 * page 8); a hole goes to the smallest shell that it begins in. A hole in no shell is a shell that was drawn the wrong way round.
 */
export function polygonsFromRings(parts: readonly (readonly Position[])[]): Rings[] {
  const rings = parts
    .map(closeRing)
    .filter((ring) => ring !== null)
    .map((ring) => ({ ring, area: doubleArea(ring) }));
  const shells: Shell[] = rings
    .filter(({ area }) => area <= 0)
    .map(({ ring, area }) => ({ rings: [ring], box: boxOf(ring), area: -area }));
  const strays: Rings[] = [];
  for (const { ring, area } of rings) {
    if (area <= 0) continue;
    const home = findShell(shells, ring, area);
    if (home === null) strays.push([ring]);
    else home.rings.push(ring);
  }
  return [...shells.map((shell) => shell.rings), ...strays];
}

/** Patches say themselves which rings are shells. Null where one of them is made of triangles. */
export function polygonsFromPatches(parts: readonly (readonly Position[])[], kinds: readonly number[]): Rings[] | null {
  if (kinds.some((kind) => kind < OUTER_RING)) return null;
  const polygons: Rings[] = [];
  for (const [index, part] of parts.entries()) {
    const ring = closeRing(part);
    if (ring === null) continue;
    const kind = kinds[index];
    const last = polygons.at(-1);
    if (kind === OUTER_RING || kind === FIRST_RING || last === undefined) polygons.push([ring]);
    else last.push(ring);
  }
  return polygons;
}

/** Null for what has no three corners. */
function closeRing(part: readonly Position[]): Position[] | null {
  const [first] = part;
  const last = part.at(-1);
  if (first === undefined || last === undefined) return null;
  const ring = first[0] === last[0] && first[1] === last[1] ? [...part] : [...part, [...first]];
  return ring.length < 4 ? null : ring;
}

/** Twice the signed area, positive where the ring runs anticlockwise. */
function doubleArea(ring: readonly Position[]): number {
  const [originX = 0, originY = 0] = ring[0] ?? [];
  let sum = 0;
  for (let index = 1; index < ring.length; index += 1) {
    const [x1 = 0, y1 = 0] = ring[index - 1] ?? [];
    const [x2 = 0, y2 = 0] = ring[index] ?? [];
    sum += (x1 - originX) * (y2 - originY) - (x2 - originX) * (y1 - originY);
  }
  return sum;
}

function findShell(shells: readonly Shell[], hole: readonly Position[], area: number): Shell | null {
  const box = boxOf(hole);
  let best: Shell | null = null;
  for (const shell of shells) {
    const isAround =
      shell.area >= area &&
      shell.box.west <= box.west &&
      shell.box.east >= box.east &&
      shell.box.south <= box.south &&
      shell.box.north >= box.north;
    if (isAround && (best === null || shell.area < best.area) && holds(shell.rings[0] ?? [], hole)) best = shell;
  }
  return best;
}

/** True where the middle of some side of the hole lies inside the ring; corners may lie on it. */
function holds(ring: readonly Position[], hole: readonly Position[]): boolean {
  const sides = Math.min(hole.length - 1, 3);
  for (let index = 0; index < sides; index += 1) {
    const [x1 = 0, y1 = 0] = hole[index] ?? [];
    const [x2 = 0, y2 = 0] = hole[index + 1] ?? [];
    if (isInside(ring, (x1 + x2) / 2, (y1 + y2) / 2)) return true;
  }
  return false;
}

/** Even-odd, by a ray to the east. */
function isInside(ring: readonly Position[], x: number, y: number): boolean {
  let inside = false;
  for (let index = 1; index < ring.length; index += 1) {
    const [x1 = 0, y1 = 0] = ring[index - 1] ?? [];
    const [x2 = 0, y2 = 0] = ring[index] ?? [];
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
  }
  return inside;
}

function boxOf(ring: readonly Position[]): Box {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x = 0, y = 0] of ring) {
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  return { west, south, east, north };
}
