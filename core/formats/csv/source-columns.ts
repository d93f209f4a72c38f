import { createNamer } from '../own-names.ts';
import { findColumn, plain, type Table } from './table.ts';
import { looksLikeWkt } from './wkt.ts';

/** What the columns of a table of ground are for; places are -1 where there is none. */
export type SourceColumns = {
  readonly wkt: number;
  readonly longitude: number;
  readonly latitude: number;
  /** The other columns, in the file's order, with names of their own. */
  readonly others: readonly { readonly column: number; readonly name: string }[];
};

const WKT_NAMES = [
  'wkt',
  'wktgeom',
  'geomwkt',
  'geometrywkt',
  'wktgeometry',
  'thegeom',
  'geom',
  'geometry',
  'shape',
  'outline',
];
/** Names of latitude and longitude, the plainest first. */
const PLACE_NAMES = [
  [
    ['lat', 'latitude', 'latdeg', 'gpslat'],
    ['lon', 'lng', 'long', 'longitude', 'londeg', 'gpslon'],
  ],
  [
    ['y', 'ycoord'],
    ['x', 'xcoord'],
  ],
] as const;

export function sourceColumns({ columns, rows }: Table): SourceColumns {
  const wkt = findWkt(columns, rows);
  const place = findPlace(columns);
  const used = [wkt, place.longitude, place.latitude];
  const own = createNamer();
  const others = columns.flatMap((name, column) =>
    used.includes(column) ? [] : [{ column, name: own(name === '' ? `column ${column + 1}` : name) }],
  );
  return { wkt, ...place, others };
}

/** A column with outlines: one with a fitting name that holds some, else the first that does. */
function findWkt(columns: Table['columns'], rows: Table['rows']): number {
  const holds = (column: number): boolean => {
    const first = rows.find(({ cells }) => (cells[column] ?? '') !== '');
    return looksLikeWkt(first?.cells[column] ?? '');
  };
  const named = columns.findIndex((name, column) => WKT_NAMES.includes(plain(name)) && holds(column));
  return named >= 0 ? named : columns.findIndex((_, column) => holds(column));
}

/** Both or neither. */
function findPlace(columns: Table['columns']): { readonly longitude: number; readonly latitude: number } {
  for (const [north, east] of PLACE_NAMES) {
    const latitude = findColumn(columns, north);
    const longitude = findColumn(columns, east);
    if (longitude >= 0 && latitude >= 0) return { longitude, latitude };
  }
  return { longitude: -1, latitude: -1 };
}
