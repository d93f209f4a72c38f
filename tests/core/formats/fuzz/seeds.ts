import { zipSync } from 'fflate';
import { block, corners, drawing, entity } from '../dxf/samples.ts';
import { kml, polygon, square } from '../kml/samples.ts';
import type { Seed } from './fuzz.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);

const KML_BODY = `<name>Town</name><Schema id="s"><SimpleField name="acres" type="double"/></Schema>
<Folder><name>East &amp; west</name>
<Placemark id="p1"><name>Oak</name><description><![CDATA[<b>north</b>]]></description>
<ExtendedData><Data name="gate"><value>34 in</value></Data><SchemaData><SimpleData name="acres">0.25</SimpleData></SchemaData></ExtendedData>
${polygon(square(-83, 40), square(-82.9996, 40.0004))}</Placemark>
<Placemark><MultiGeometry>${polygon(square(-83, 40.01))}<Point><coordinates>-83,40,12</coordinates></Point></MultiGeometry></Placemark>
<Placemark><gx:Track><gx:coord>-83 40 200</gx:coord><gx:coord>-83.001 40 200</gx:coord></gx:Track></Placemark>
</Folder><GroundOverlay><name>Plan</name></GroundOverlay>`;

const trackpoints = Array.from({ length: 80 }, (_, step) => {
  const angle = (step / 79) * 2 * Math.PI;
  const [longitude, latitude] = [-83 + 0.0005 * Math.cos(angle), 40 + 0.0004 * Math.sin(angle)];
  return `<trkpt lat="${latitude.toFixed(7)}" lon="${longitude.toFixed(7)}"><ele>210.5</ele></trkpt>`;
});

const GPX = `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><wpt lat="40" lon="-83"><name>Gate</name></wpt>
<rte><rtept lat="40" lon="-83"/><rtept lat="41" lon="-83"/></rte>
<trk><name>Front</name><trkseg>${trackpoints.slice(0, 40).join('')}</trkseg><trkseg>${trackpoints.slice(40).join('\n')}</trkseg></trk></gpx>`;

const knots = [0, 0, 0, 1, 2, 2, 2].flatMap((knot) => [40, knot]);
const DRAWING = drawing(
  [
    entity('LWPOLYLINE', 'turf', 5, 'A1', 70, 1, ...corners([0, 0], [20, 0, 1], [20, 10], [0, 10, -0.4])),
    entity('INSERT', 'beds', 2, 'bed', 10, 5, 20, 5, 41, 2, 42, -1, 50, 30, 70, 3, 71, 2, 44, 4, 45, 4),
    entity('ELLIPSE', 'beds', 10, 5, 20, 5, 11, 3, 21, 4, 40, 0.5, 41, 0, 42, 6.283185),
    entity('SPLINE', 'beds', 71, 2, ...knots, ...corners([0, 0], [1, 2], [3, 1], [4, 0])),
    entity('ARC', 'edge', 10, 0, 20, 0, 40, 2, 50, 270, 51, 0),
    [
      ...entity('POLYLINE', 'turf', 70, 1),
      ...entity('VERTEX', 'turf', 10, 1, 20, 1),
      ...entity('VERTEX', 'turf', 10, 2, 20, 1),
      0,
      'SEQEND',
    ],
    entity('TEXT', 'note', 1, 'BLOCK', 10, 0, 20, 0),
  ],
  [
    block('bed', 1, 1, entity('CIRCLE', '0', 10, 1, 20, 1, 40, 2), entity('INSERT', '0', 2, 'stone', 10, 1, 20, 1)),
    block('stone', 0, 0, entity('LINE', '0', 10, 0, 20, 0, 11, 1, 21, 1)),
  ],
);

const rows = (make: (row: number) => string) => Array.from({ length: 30 }, (_, row) => make(row)).join('\n');
const TABLES: readonly Seed[] = [
  {
    name: 'outlines.csv',
    bytes: utf8(
      `id,wkt,name\n${rows((row) => `${row},"POLYGON((-83 40,-82.9 40,-82.9 40.1,-83 40))","Oak ""${row}"""`)}\n`,
    ),
  },
  {
    name: 'places.csv',
    bytes: utf8(`\ufeffname;lat;lon;area\n${rows((row) => `Elm ${row};40,0${row};-83,02;12.500 sq ft`)}\n`),
  },
  {
    name: 'mixed.csv',
    bytes: utf8(`id;geom\n${rows((row) => `${row};SRID=3857;MULTIPOLYGON(((0 0,9 0,9 9,0 0)))`)}\n`),
  },
];

export const KML_SEEDS: readonly Seed[] = [
  { name: 'lots.kml', bytes: kml(KML_BODY) },
  { name: 'lots.kmz', bytes: zipSync({ 'doc.kml': kml(KML_BODY), 'files/a.kml': kml('') }) },
  { name: 'plain.kmz', bytes: zipSync({ 'doc.kml': [kml(KML_BODY), { level: 0 }] }) },
];
export const GPX_SEEDS: readonly Seed[] = [{ name: 'walk.gpx', bytes: utf8(GPX) }];
export const DXF_SEEDS: readonly Seed[] = [{ name: 'plan.dxf', bytes: DRAWING }];
export const CSV_SEEDS: readonly Seed[] = TABLES;
