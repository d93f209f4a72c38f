import type { Geometry } from 'geojson';
import { geojsonSeqReader } from '../../../../core/formats/geojson-seq/index.ts';
import {
  type GeoPackageContent,
  type GroundReader,
  geojsonReader,
  geopackageReader,
  shapefileReader,
} from '../../../../core/formats/index.ts';
import { blob } from '../geopackage/build.ts';
import {
  archive,
  type Corner,
  dbfFile,
  partsShape,
  patchShape,
  pointShape,
  shpFile,
  square,
  WGS84_PRJ,
} from '../shapefile/build.ts';
import type { Seed } from './fuzz.ts';

const hole = (x: number, y: number, side: number): Corner[] => [...square(x, y, side)].reverse();

const SHP = shpFile([
  partsShape(5, [square(-83, 40, 0.01), hole(-82.998, 40.002, 0.002), square(-82.9, 40, 0.01)]),
  partsShape(15, [square(-83, 41, 0.01)], new Uint8Array(16 + 40)),
  partsShape(3, [square(-83, 42, 0.01)]),
  pointShape([-83, 40]),
  patchShape([
    { kind: 2, ring: square(-83, 43, 0.01) },
    { kind: 3, ring: hole(-82.998, 43.002, 0.002) },
  ]),
]);
const DBF = dbfFile(
  [
    { name: 'NAME', type: 'C', bytes: 12 },
    { name: 'ACRES', type: 'N', bytes: 8 },
    { name: 'SOLD', type: 'L', bytes: 1 },
    { name: 'WHEN', type: 'D', bytes: 8 },
  ],
  Array.from({ length: 5 }, (_, index) => [`lot ${index}`, `${index}.25`, 'T', '20240315']),
);
const STATE_PLANE_PRJ =
  'PROJCS["NAD_1983_StatePlane_Ohio_South_FIPS_3402_Feet",GEOGCS["GCS_North_American_1983",DATUM["D_North_American_1983",SPHEROID["GRS_1980",6378137.0,298.257222101]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Lambert_Conformal_Conic"],PARAMETER["False_Easting",1968500.0],PARAMETER["False_Northing",0.0],PARAMETER["Central_Meridian",-82.5],PARAMETER["Standard_Parallel_1",38.73333333333333],PARAMETER["Standard_Parallel_2",40.03333333333333],PARAMETER["Latitude_Of_Origin",38.0],UNIT["Foot_US",0.3048006096012192]]';
const PARTS = { 'lots.shp': SHP, 'lots.dbf': DBF, 'lots.prj': WGS84_PRJ };
const FEET_SHP = shpFile([partsShape(5, [square(1_830_000, 730_000, 200)]), pointShape([1_830_000, 730_000])]);

/** Reads the bytes as one of the files inside an archive, which is sound itself: check sums would keep most changes out. */
const inside = (part: string, others: Readonly<Record<string, Uint8Array | string>>): GroundReader => ({
  ...shapefileReader,
  id: `shapefile, ${part}`,
  read: (bytes, name, options) => shapefileReader.read(archive({ ...others, [part]: bytes }), name, options),
});

const GEOMETRIES: readonly Geometry[] = [
  { type: 'Point', coordinates: [-83, 40] },
  { type: 'LineString', coordinates: square(-83, 40, 0.01).map((corner) => [...corner]) },
  { type: 'Polygon', coordinates: [square(-83, 40, 0.01).map((corner) => [...corner])] },
  { type: 'MultiPolygon', coordinates: [[square(-83, 40, 0.01).map((corner) => [...corner])]] },
  { type: 'GeometryCollection', geometries: [{ type: 'MultiPoint', coordinates: [[-83, 40]] }] },
];

/** Reads the bytes as the geometry of a row of a GeoPackage. */
const asBlob: GroundReader = {
  ...geopackageReader,
  id: 'geopackage, geometry',
  read: (bytes, name, options) => geopackageReader.read(bytes, name, { ...options, geopackage: rowsOf(bytes) }),
};

function rowsOf(bytes: Uint8Array): GeoPackageContent {
  const system = { id: 4326, organization: 'EPSG', code: 4326, definition: '' };
  const table = { name: 'lots', geometryColumn: 'geom', keyColumn: null, systemId: 4326, columns: ['geom'] };
  return { tables: [{ ...table, rows: [[bytes]] }], systems: [system], issues: [] };
}

const FEATURES = GEOMETRIES.map((geometry, index) => ({
  type: 'Feature',
  id: index,
  properties: { name: `lot ${index}`, gate: 36.5, tags: ['a', { b: null }] },
  geometry,
}));
const GEOJSON = JSON.stringify({
  type: 'FeatureCollection',
  crs: { type: 'name', properties: { name: 'urn:ogc:def:crs:OGC:1.3:CRS84' } },
  features: FEATURES,
});
const SEQUENCE = FEATURES.map((each) => `\u001e${JSON.stringify(each)}\n`).join('');

export const BINARY_CASES: readonly (readonly [GroundReader, readonly Seed[]])[] = [
  [geojsonReader, [{ name: 'lots.geojson', bytes: new TextEncoder().encode(GEOJSON) }]],
  [geojsonSeqReader, [{ name: 'lots.geojsons', bytes: new TextEncoder().encode(SEQUENCE) }]],
  [shapefileReader, [{ name: 'lots.zip', bytes: archive(PARTS) }]],
  [inside('lots.shp', PARTS), [{ name: 'lots.zip', bytes: SHP }]],
  [inside('lots.dbf', PARTS), [{ name: 'lots.zip', bytes: DBF }]],
  [
    inside('lots.prj', { 'lots.shp': FEET_SHP }),
    [{ name: 'lots.zip', bytes: new TextEncoder().encode(STATE_PLANE_PRJ) }],
  ],
  [asBlob, GEOMETRIES.map((geometry) => ({ name: 'lots.gpkg', bytes: blob(geometry, { envelope: 1 }) }))],
];
