import { BOOK_FORMAT, BOOK_VERSION, type Book, type Position, readBookValue } from '../../../core/book/index.ts';

/** A small book in its JSON form with one record of every kind, as plain data that a test may change. Invented, not for use. */
export function sampleValue() {
  return {
    format: BOOK_FORMAT as string,
    version: BOOK_VERSION as number,
    id: 'b',
    name: 'Test book (invented)',
    invented: true,
    properties: [
      {
        id: 'p-1',
        name: 'Elm Court 4',
        parking: [-83, 40],
        gates: [{ id: 'g', name: 'side gate', clearWidthIn: 36 }],
        zones: [
          {
            id: 'front',
            name: 'front',
            shape: { kind: 'drawn', geometry: { type: 'Polygon', coordinates: [square([-83, 40], 2e-4)] } },
          },
          { id: 'back', name: 'back', shape: { kind: 'stated', areaSqFt: 4000 }, gateIds: ['g'], slopeDeg: 8 },
        ],
        exclusions: [
          { id: 'house', what: 'building', geometry: { type: 'Polygon', coordinates: [square([-83, 40], 5e-5)] } },
        ],
      },
    ],
    machines: [
      {
        id: 'm',
        name: 'Stand-on 35',
        what: 'stand-on',
        transitWidthIn: 35,
        emptyWeightLb: 700,
        maxSlopeDeg: 15,
        compartments: [{ kind: 'tank', id: 'tank', name: 'tank', capacityGal: 20, sumpGal: 0.5 }],
        heads: [{ id: 'boom', name: 'boom', purpose: 'spray', swathFt: 9, speedMph: 4, compartmentIds: ['tank'] }],
      },
    ],
    fillPoints: [{ id: 'shop', name: 'Shop', what: 'shop', at: [-83.01, 40.01], waterGpm: 30 }],
  };
}

/** A closed square ring about a point, sides of twice `half` degrees. */
export function square([x, y]: Position, half: number): readonly Position[] {
  const corners: readonly Position[] = [
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ];
  return [...corners, [x - half, y - half]];
}

export function sampleBook(): Book {
  const read = readBookValue(sampleValue(), 'sample');
  if (!read.ok) throw new Error(read.error.detail);
  return read.value.book;
}
