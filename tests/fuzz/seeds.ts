import { readStreets, writeStreets } from '../../core/places/index.ts';
import { writeRoadMap } from '../../core/roads/index.ts';
import { type DriveTable, writeDriveTable } from '../../core/travel/index.ts';
import { mapOf } from '../core/roads/town.ts';

/** Small sound files, all invented, that mutations are made of. */
const square = (near: number, far: number): readonly (readonly number[])[] => [
  [near, far],
  [far, near],
];

const DRIVES: DriveTable = {
  madeFrom: 'abc',
  credit: 'Whose roads they are',
  at: [
    [-83, 40],
    [-83.01, 40],
    [-83, 40.01],
  ],
  durationSec: Int32Array.from([0, 60, -1, 60, 0, 90, -1, 90, 0]),
  distanceM: Int32Array.from([0, 800, -1, 800, 0, 1100, -1, 1100, 0]),
  offRoad: [],
};
export const DRIVE_TABLE: Uint8Array = writeDriveTable(DRIVES);

export const ROAD_MAP: Uint8Array = writeRoadMap(
  await mapOf({ nodes: { A: [0, 0], B: [500, 0], C: [500, 400] }, ways: [['A B C', { highway: 'residential' }]] }),
);

const street = (index: number) => ({
  type: 'Feature',
  properties: {
    FULLNAME: `Oak ${index} St`,
    LFROMADD: '101',
    LTOADD: '199',
    RFROMADD: 100,
    RTOADD: 198,
    ZIPL: '45501',
  },
  geometry: {
    type: 'LineString',
    coordinates: [
      [-83, 40 + index / 1000],
      [-82.99, 40 + index / 1000],
    ],
  },
});
const STREETS = { type: 'FeatureCollection', features: [0, 1, 2, 3].map(street) };
export const STREETS_TEXT: string = JSON.stringify(STREETS);
export const KEPT_STREETS: string = keptStreets();

function keptStreets(): string {
  const read = readStreets(STREETS, 'x');
  if (!read.ok) throw new Error(read.error.detail);
  return writeStreets('town', read.value.pieces);
}

const spot = (longitude: number) => ({ location: [longitude, 0], distance: 1 });
/** Answers of the two kinds of table engine about two places. */
export const ENGINE_ANSWERS = {
  osrm: JSON.stringify({
    code: 'Ok',
    durations: square(0, 100),
    distances: square(0, 1200),
    sources: [spot(0), spot(0.01)],
    destinations: [spot(0), spot(0.01)],
  }),
  valhalla: JSON.stringify({
    units: 'kilometers',
    sources_to_targets: { durations: square(0, 100), distances: square(0, 1.2) },
  }),
} as const;

export const DRAFT: string = JSON.stringify({
  purpose: { kind: 'zone', propertyId: 'p1', zoneId: 'z1', name: 'Front' },
  tool: 'polygon',
  corners: [
    [-83, 40],
    [-83.001, 40],
    [-83.001, 40.001],
  ],
  undo: [{ kind: 'add', at: [-83, 40] }],
  redo: [],
});

const hour = (index: number) => `2026-05-0${1 + Math.floor(index / 24)},${index % 24}:00,7.5,61,0`;
export const WEATHER = `date,time,wind (mph),air temp (F),rain (in)\n${times(30, hour)}\n`;
const day = (index: number) => `2026-04-${String(index + 1).padStart(2, '0')},${60 + index},${40 + index}`;
export const TEMPERATURES = `Date,TMAX (F),TMIN (F)\n${times(28, day)}\n`;

export const VRPLIB = `NAME : small
TYPE : CVRP
DIMENSION : 4
EDGE_WEIGHT_TYPE : EUC_2D
CAPACITY : 10
NODE_COORD_SECTION
1 0 0
2 3 4
3 6 8
4 1 1
DEMAND_SECTION
1 0
2 3
3 4
4 5
DEPOT_SECTION
1
-1
EOF
`;
const customer = (index: number) => `${index} ${index * 3} ${index * 4} ${index * 2} 0 1000 ${index === 0 ? 0 : 10}`;
export const SOLOMON = `S1

VEHICLE
NUMBER CAPACITY
4 20

CUSTOMER
CUST NO. XCOORD. YCOORD. DEMAND READY TIME DUE DATE SERVICE TIME

${times(4, customer)}
`;

/** The first bytes of pictures, put together by the standards that readImageHead names. */
export const PNG_HEAD: Uint8Array = Uint8Array.from([
  0x89, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82, 0, 0, 1, 0, 0, 0, 1, 0, 8, 6,
]);
export const JPEG_HEAD: Uint8Array = Uint8Array.from([
  0xff, 0xd8, 0xff, 0xe0, 0, 16, 74, 70, 73, 70, 0, 1, 1, 0, 0, 1, 0, 1, 0, 0, 0xff, 0xc0, 0, 17, 8, 0, 64, 0, 64, 3, 1,
  34, 0, 2, 17, 1, 3, 17, 1,
]);

function times(count: number, make: (index: number) => string): string {
  return Array.from({ length: count }, (_, index) => make(index)).join('\n');
}
