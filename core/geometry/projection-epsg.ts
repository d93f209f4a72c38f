import { DEGREES } from './projection-maker.ts';
import { statePlane } from './projection-state-plane.ts';

/** A system in words for people and in those of PROJ. */
type EpsgSystem = { readonly title: string; readonly definition: string };

/** Longitude and latitude in degrees on datums that lie within two metres of WGS84 (EPSG dataset). */
const DEGREE_CODES: Readonly<Record<number, string>> = {
  4326: 'WGS84',
  4269: 'NAD83',
  4152: 'NAD83(HARN)',
  4759: 'NAD83(NSRS2007)',
  6318: 'NAD83(2011)',
  4617: 'NAD83(CSRS)',
  4258: 'ETRS89',
  4979: 'WGS84 with heights',
};

/** Web Mercator: EPSG's own code, two of Esri's for the same, and the one in use before it had any. */
const WEB_MERCATOR = [3857, 102100, 102113, 900913];

/** UTM by formula: the code less `less` is the zone (EPSG dataset). */
const UTM_CODES = [
  { from: 32601, to: 32660, less: 32600, datum: 'WGS84', south: false },
  { from: 32701, to: 32760, less: 32700, datum: 'WGS84', south: true },
  { from: 26901, to: 26923, less: 26900, datum: 'NAD83', south: false },
  { from: 6330, to: 6348, less: 6329, datum: 'NAD83(2011)', south: false },
] as const;

const UNIT_WORDS = { m: 'metres', 'us-ft': 'US survey feet', ft: 'international feet' } as const;

/** The system of an EPSG code; null where it is none of those that are known here. */
export function epsgDefinition(code: number): EpsgSystem | null {
  const degrees = DEGREE_CODES[code];
  if (degrees !== undefined) return { title: `${degrees}, degrees`, definition: DEGREES };
  if (WEB_MERCATOR.includes(code)) return { title: 'Web Mercator, metres', definition: webMercator() };
  if (code === 5070) return { title: 'Albers, contiguous states, metres', definition: albers() };
  const zone = statePlane(code);
  if (zone !== null) {
    return {
      title: `State Plane, ${zone.zone}, ${UNIT_WORDS[zone.unit]}`,
      definition: `${zone.definition} +towgs84=0,0,0`,
    };
  }
  return utm(code);
}

function utm(code: number): EpsgSystem | null {
  const range = UTM_CODES.find(({ from, to }) => code >= from && code <= to && Number.isInteger(code));
  if (range === undefined) return null;
  const zone = code - range.less;
  const shape = range.datum === 'WGS84' ? '+datum=WGS84' : '+ellps=GRS80 +towgs84=0,0,0';
  const definition = `+proj=utm +zone=${zone}${range.south ? ' +south' : ''} ${shape} +units=m +no_defs`;
  return { title: `${range.datum}, UTM zone ${zone}${range.south ? 'S' : 'N'}, metres`, definition };
}

/** The sphere's Mercator on the ellipsoid's degrees (EPSG method 1024). */
function webMercator(): string {
  return '+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m +nadgrids=@null +no_defs';
}

/** EPSG:5070. */
function albers(): string {
  return '+proj=aea +lat_0=23 +lon_0=-96 +lat_1=29.5 +lat_2=45.5 +x_0=0 +y_0=0 +ellps=GRS80 +towgs84=0,0,0 +units=m +no_defs';
}
