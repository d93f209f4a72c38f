import { createRandom, type Random } from '../../core/base/index.ts';
import type { Position, Property } from '../../core/book/index.ts';
import { localPlane } from '../../core/geometry/index.ts';

/** Invented lawns for the benchmarks: an uneven outline of `corners` corners and three exclusions, two of them grown. */
export function inventLawns(count: number, corners: number, seed: number): readonly Property[] {
  const random = createRandom(seed);
  return Array.from({ length: count }, (_, index) => inventLawn(index, corners, random));
}

function inventLawn(index: number, corners: number, random: Random): Property {
  const centre: Position = [-83 + (index % 50) * 0.001, 40 + Math.floor(index / 50) * 0.001];
  const radius = 10 + 25 * random.unit();
  const bed = (east: number, north: number, size: number): Position[] =>
    outline(centre, 8, () => size * (0.8 + 0.4 * random.unit()), east, north);
  return {
    id: `lawn-${index}`,
    name: `Lawn ${index}`,
    address: '',
    parking: centre,
    noTrailer: false,
    gates: [],
    zones: [
      {
        id: 'all',
        name: 'all',
        shape: {
          kind: 'drawn',
          geometry: {
            type: 'Polygon',
            coordinates: [outline(centre, corners, () => radius * (0.75 + 0.5 * random.unit()), 0, 0)],
          },
        },
        slopeDeg: index % 4,
        gateIds: [],
      },
    ],
    exclusions: [
      exclusion('house', 'building', bed(0, 0, 6), 0),
      exclusion('bed', 'bed', bed(radius * 0.5, 0, 2), 1),
      exclusion('drive', 'paving', bed(-radius * 0.7, radius * 0.4, 4), 0.5),
    ],
    cautions: [],
    note: '',
  };
}

function exclusion(id: string, what: 'building' | 'bed' | 'paving', ring: Position[], keepAwayFt: number) {
  return { id, name: '', what, keepAwayFt, geometry: { type: 'Polygon' as const, coordinates: [ring] } };
}

function outline(centre: Position, corners: number, radius: () => number, east: number, north: number): Position[] {
  const plane = localPlane(centre);
  const ring = Array.from({ length: corners }, (_, corner) => {
    const angle = (2 * Math.PI * corner) / corners;
    const distance = radius();
    return plane.toDegrees({ x: east + distance * Math.cos(angle), y: north + distance * Math.sin(angle) });
  });
  return [...ring, ring[0]!];
}
