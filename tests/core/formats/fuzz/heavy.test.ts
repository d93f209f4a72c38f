import { describe, expect, it } from 'vitest';
import { findGroundReader, GROUND_READ_OPTIONS } from '../../../../core/formats/index.ts';
import { corners, drawing, entity, type Groups } from '../dxf/samples.ts';
import { kml } from '../kml/samples.ts';

/** Processor time that no file may take, ms; wall time would count what else the machine does. */
const MOST_MS = 2000;

const utf8 = (text: string) => new TextEncoder().encode(text);
const times = (count: number, make: (index: number) => Groups): Groups =>
  Array.from({ length: count }, (_, index) => make(index)).flat();
const wave = (index: number): Groups => [10, index, 20, Math.sin(index)];

/** Files that took long, or asked for masses of memory, in the readers' first form. */
const FILES: Readonly<Record<string, () => Uint8Array>> = {
  'commas.kml': () =>
    kml(`<Placemark><LineString><coordinates>${'1, '.repeat(1_000_000)}</coordinates></LineString></Placemark>`),
  'names.kml': () => kml(`<Placemark><ExtendedData>${'<Data name="a"/>'.repeat(100_000)}</ExtendedData></Placemark>`),
  'folders.kml': () => kml('<Folder><name>a</name><Placemark/></Folder>'.repeat(50_000)),
  'references.kml': () => utf8(`<kml>${'&'.repeat(4_000_000)}</kml>`),
  'lines.kml': () => utf8(`<kml>${'\n'.repeat(2_000_000)}<a/>${' '.repeat(2_000_000)}<b>`),
  'points.gpx': () =>
    utf8(
      `<gpx><trk><trkseg>${Array.from({ length: 100_000 }, (_, at) => `<trkpt lat="40" lon="${at / 1e6}"/>`).join('')}</trkseg></trk></gpx>`,
    ),
  'bulges.dxf': () => drawing([entity('LWPOLYLINE', 'a', 70, 1, ...times(13_000, (at) => [...wave(at), 42, 50]))]),
  'spline.dxf': () =>
    drawing([entity('SPLINE', 'a', 71, 12, ...times(20_013, (at) => [40, at]), ...times(20_000, wave))]),
  'circles.dxf': () => drawing(Array.from({ length: 20_000 }, () => entity('CIRCLE', 'a', 10, 1, 20, 1, 40, 1))),
  'layers.dxf': () =>
    drawing(Array.from({ length: 20_000 }, (_, at) => entity('LWPOLYLINE', `l${at}`, ...corners([0, 0], [1, at])))),
  'columns.csv': () => utf8(`lat${',a'.repeat(100_000)}\n${'1,2\n'.repeat(100)}`),
  'cells.csv': () => utf8(`lat${',a'.repeat(900)}\n${'1,2\n'.repeat(10_000)}`),
  'brackets.csv': () => utf8(`id,wkt\na,${'POLYGON((1 2,'.repeat(300_000)}\n`),
  'nested.csv': () => utf8(`id,wkt\na,"${'GEOMETRYCOLLECTION('.repeat(100_000)}"\n`),
  'corners.csv': () => utf8(`id,wkt\na,"POLYGON((${'-83.123456 40.123456,'.repeat(200_000)}-83 40))"\n`),
  'quotes.csv': () => utf8(`id,lat,lon\n${'"a\n'.repeat(500_000)}`),
};

describe('heavy files', () => {
  it.each(Object.entries(FILES))('%s is read or refused in time', { timeout: 60_000 }, async (name, make) => {
    const bytes = make();
    const reader = findGroundReader(bytes, name);
    if (!reader.ok) throw new Error('no reader');
    const before = process.cpuUsage();
    const result = await reader.value.read(bytes, name, GROUND_READ_OPTIONS);
    expect(process.cpuUsage(before).user / 1000).toBeLessThan(MOST_MS);
    if (result.ok) expect(result.value.layers.length).toBeGreaterThan(0);
    else expect(result.error.where.startsWith(name)).toBe(true);
  });
});
