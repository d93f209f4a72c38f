import { type AreaGeometry, type Book, emptyBook, type Property } from '../../../core/book/index.ts';
import type { Corner } from '../geometry/shapes.ts';
import { exclusion, polygonFt, property, stated, zone } from '../measure/lawns.ts';

/** Invented ground with one fault each, for the rules about lawns. */

/** A rectangle by its south-west corner and its sides, ft. */
export function box(east: number, north: number, wide: number, high: number): AreaGeometry {
  return polygonFt(corners(east, north, wide, high));
}

function corners(east: number, north: number, wide: number, high: number): readonly Corner[] {
  return [
    [east, north],
    [east + wide, north],
    [east + wide, north + high],
    [east, north + high],
  ];
}

/** A place in degrees, ft east and north of the lawns' origin. */
export function spot(east: number, north: number): readonly [number, number] {
  const geometry = box(east, north, 1, 1);
  const at = geometry.type === 'Polygon' ? geometry.coordinates[0]?.[0] : undefined;
  if (at === undefined) throw new Error('a box has corners');
  return at;
}

export function book(...properties: readonly Property[]): Book {
  return { ...emptyBook('ground', 'Invented ground'), properties };
}

export const lawn = (id: string, geometry: AreaGeometry, more: Partial<Property> = {}): Property =>
  property([zone('lawn', geometry)], [], { id, name: `${id} house`, ...more });

/** A lawn of two parts, the second 3 ft by 3. */
export const crumbs: AreaGeometry = {
  type: 'MultiPolygon',
  coordinates: [box(0, 0, 100, 50), box(200, 0, 3, 3)].flatMap((each) =>
    each.type === 'Polygon' ? [each.coordinates] : [],
  ),
};

export const gateAt = (east: number, north: number) => [
  { id: 'side', name: 'side', clearWidthIn: 36, locked: false, at: spot(east, north) },
];

const elmBox = box(0, 0, 100, 50);
const elm = lawn('elm', elmBox);

export const BROKEN_GROUND: Readonly<Record<string, readonly Book[]>> = {
  'properties-overlap': [book(elm, lawn('oak', box(90, 0, 100, 50)))],
  'zone-outside-parcel': [
    book({ ...elm, parcel: box(0, 0, 80, 60) }),
    // All of it outside.
    book({ ...elm, parcel: box(300, 0, 80, 60) }),
  ],
  'exclusion-cuts-nothing': [
    // In the notch of an L.
    book(
      property(
        [
          zone(
            'lawn',
            polygonFt([
              [0, 0],
              [100, 0],
              [100, 20],
              [20, 20],
              [20, 100],
              [0, 100],
            ]),
          ),
        ],
        [exclusion('house', box(40, 40, 40, 40))],
      ),
    ),
  ],
  'gate-off-zone': [book({ ...elm, gates: gateAt(130, 20) })],
  'parking-on-turf': [book({ ...elm, parking: gateAt(50, 25)[0]?.at ?? elm.parking })],
  'duplicate-property': [
    book(elm, { ...elm, id: 'copy' }),
    book(
      { ...elm, address: '1 Elm Row' },
      lawn('other', box(300, 0, 90, 50), { name: 'ELM house', address: '1, Elm  row' }),
    ),
    book(property([stated('card', 800)]), property([stated('other', 800)], [], { id: 'p2', name: 'Another name' })),
  ],
  'part-tiny': [book(lawn('elm', crumbs)), book(lawn('elm', box(0, 0, 3, 3)))],
  'area-off-working': [
    book(
      property([
        zone('lawn', elmBox, {
          shape: {
            kind: 'stated',
            areaSqFt: 1400,
            method: '',
            working: {
              kind: 'shapes',
              shapes: [{ kind: 'rectangle', lengthFt: 50, widthFt: 30, take: 'add', note: '' }],
            },
          },
        }),
      ]),
    ),
  ],
  'area-off-stated': [
    book(property([zone('lawn', box(0, 0, 100, 50), { statedAreaSqFt: 4000 })])),
    book(property([zone('lawn', box(0, 0, 100, 50), { statedAreaSqFt: 5400 })])),
  ],
};
