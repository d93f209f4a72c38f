import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { AreaGeometry } from '../../../core/book/index.ts';
import {
  boxCentre,
  degreesBox,
  difference,
  localPlane,
  type Region,
  readOutline,
} from '../../../core/geometry/index.ts';
import type { PassHead } from '../../../core/passes/index.ts';

/** Public outlines that lie beside the repository, and the heads that go over them. */
const folder = fileURLToPath(new URL('../shared/geodata/', `file://${process.cwd()}/`));

export type GroundSet = {
  readonly name: string;
  readonly file: string;
  /** Outlines that are taken away: drives, walks, patios, houses. */
  readonly less?: string;
};

export const SETS: readonly GroundSet[] = [
  { name: 'sports areas', file: 'cambridge/sports_areas.geojson' },
  { name: 'open space', file: 'cambridge/open_space_dev.geojson' },
  { name: 'lots', file: 'cambridge/parcels.geojson', less: 'cambridge/exclusions.geojson' },
  { name: 'turf, Columbus', file: 'turf/columbus_oh_turf.geojson' },
  { name: 'turf, Felton', file: 'turf/felton_ca_turf.geojson' },
  { name: 'turf, Liechtenstein', file: 'turf/liechtenstein_turf.geojson' },
];

export const OVERLAP_M = 0.1;
export type BenchHead = {
  readonly name: string;
  readonly swathM: number;
  readonly trimM: number;
  readonly squareCorners?: boolean;
};
export const HEADS: readonly BenchHead[] = [
  { name: 'swath 0.53 m', swathM: 0.53, trimM: 0.53 },
  { name: 'swath 1.22 m', swathM: 1.22, trimM: 1.22 },
  { name: 'swath 1.83 m', swathM: 1.83, trimM: 1.83 },
  { name: 'boom 2.74 m, trim 1.22 m', swathM: 2.74, trimM: 1.22 },
  { name: 'boom 3.05 m, trim 1.22 m', swathM: 3.05, trimM: 1.22 },
  { name: 'spreader 3.66 m', swathM: 3.66, trimM: 3.66 },
  { name: 'corners driven out, 0.53 m', swathM: 0.53, trimM: 0.53, squareCorners: true },
  { name: 'corners driven out, 1.22 m', swathM: 1.22, trimM: 1.22, squareCorners: true },
  { name: 'corners driven out, 1.83 m', swathM: 1.83, trimM: 1.83, squareCorners: true },
];

const FEET_PER_METRE = 1 / 0.3048;

/** Two trim passes, 0.10 m overlap, 3 s a turn, 3.5 mph. */
export function headOf({ swathM, trimM, squareCorners = false }: BenchHead): PassHead {
  return {
    swathFt: swathM * FEET_PER_METRE,
    overlapFt: OVERLAP_M * FEET_PER_METRE,
    trimPasses: 2,
    trimSwathFt: trimM * FEET_PER_METRE,
    squareCorners,
    turnSec: 3,
    speedMph: 3.5,
  };
}

export const isThere = ({ file }: GroundSet): boolean => existsSync(`${folder}${file}`);

function outlinesOf(file: string): readonly AreaGeometry[] {
  const { features } = JSON.parse(readFileSync(`${folder}${file}`, 'utf8')) as {
    readonly features: readonly { readonly geometry: AreaGeometry }[];
  };
  return features.map((each) => each.geometry).filter(({ type }) => type === 'Polygon' || type === 'MultiPolygon');
}

/** Every outline of a set in a plane of its own, less what is taken away from it. */
export function regionsOf({ file, less }: GroundSet): readonly Region[] {
  const away = less === undefined ? [] : outlinesOf(less);
  return outlinesOf(file).flatMap((geometry) => {
    const checked = degreesBox(geometry);
    if ('fault' in checked) return [];
    const plane = localPlane(boxCentre(checked.box));
    const read = (outline: AreaGeometry): readonly Region[] => {
      const found = readOutline(outline, plane);
      return found.kind === 'outline' ? [found.net] : [];
    };
    const near = away.filter((each) => {
      const other = degreesBox(each);
      return !('fault' in other) && boxesTouch(checked.box, other.box);
    });
    return read(geometry).map((ground) => difference(ground, near.flatMap(read)));
  });
}

type Box = { readonly west: number; readonly east: number; readonly south: number; readonly north: number };
const boxesTouch = (one: Box, other: Box): boolean =>
  one.west <= other.east && other.west <= one.east && one.south <= other.north && other.south <= one.north;
