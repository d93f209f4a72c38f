import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { eachPosition } from '../../core/formats/coordinates.ts';
import type { GroundSource } from '../../core/formats/index.ts';
import { readGroundFile } from '../../electron/services/ground/index.ts';
import { bundleProgram } from '../electron/support/bundle.ts';

/** Public data that lies beside the repository and is not part of it. Where it is missing these tests are skipped. */
const folder = fileURLToPath(new URL('../../../shared/geodata/', import.meta.url));

let worker: Awaited<ReturnType<typeof bundleProgram>>;
beforeAll(async () => {
  worker = await bundleProgram('electron/services/ground/ground-worker.ts');
}, 60_000);
afterAll(() => worker.remove());

type Figures = {
  readonly layer: string;
  readonly records: number;
  readonly positions: number;
  /** Sums of all longitudes and of all latitudes, degrees. */
  readonly sum: readonly [longitude: number, latitude: number];
  /** West, south, east, north. */
  readonly box: readonly [number, number, number, number];
  readonly fields: readonly string[];
  /** Attributes of the first and the last record, in the order of the fields. */
  readonly first: readonly unknown[];
  readonly last: readonly unknown[];
};

/**
 * Counts, sums and boxes of what `ogr2ogr -t_srs EPSG:4326` (GDAL 3.6.2, PROJ 9.1.1) makes of each file, with 12 decimals.
 * The first letters of codepage_cpg.zip are shown as they stand in the table; the file was made from signs that its encoding
 * does not have.
 */
const FILES: Readonly<Record<string, Figures>> = {
  'shapefile/nybb_16a_us-survey-feet.zip': {
    layer: 'nybb',
    records: 5,
    positions: 76_063,
    sum: [-5621091.113227419, 3093563.12177554],
    box: [-74.255591363152, 40.496115395171, -73.700009063871, 40.915532776],
    fields: ['BoroCode', 'BoroName', 'Shape_Leng', 'Shape_Area'],
    first: [5, 'Staten Island', 330470.010332, 1623819823.81],
    last: [2, 'Bronx', 464392.991824, 1186924686.49],
  },
  'shapefile/qgis_utf8.zip': {
    layer: 'qgis',
    records: 2,
    positions: 12,
    sum: [287.65192654266093, 335.967708567712],
    box: [1.507269505895, 3.865953380626, 53.773620517025, 50.860539669323],
    fields: ['FID'],
    first: [0],
    last: [1],
  },
  'shapefile/utf_cpg.zip': {
    layer: 'utf',
    records: 2,
    positions: 2,
    sum: [-217.612380981445, 82.497804783735],
    box: [-108.979568481445, 41.244772343082, -108.6328125, 41.253032440653],
    fields: ['field'],
    first: ['\u{1f4a9}'],
    last: ['Hn\u011bvo\u0161ick\u00fd h\u00e1j'],
  },
  'shapefile/codepage_cpg.zip': {
    layer: 'codepage',
    records: 2,
    positions: 2,
    sum: [-217.612380981445, 82.497804783735],
    box: [-108.979568481445, 41.244772343082, -108.6328125, 41.253032440653],
    fields: ['field'],
    first: ['??'],
    last: ['Hn\u011bvo\u0161ick\u00fd h\u00e1j'],
  },
  'geopackage/points_4326.gpkg': {
    layer: 'stations',
    records: 86,
    positions: 86,
    sum: [-6624.562758892149, 3346.4292889178796],
    box: [-77.272622256928, 38.76652189269, -76.842037520225, 39.119927324981],
    fields: ['name', 'marker-col', 'marker-sym', 'line'],
    first: ['Van D\u00f6rn Street', '#0000ff', 'rail-metro', 'blue'],
    last: ['Ronald Reagan Washington National Airport', '#0000ff', 'rail-metro', 'blue'],
  },
  'geopackage/polygon_projected.gpkg': {
    layer: 'hk-zones-epsg2326',
    records: 3,
    positions: 16,
    sum: [1826.230463850993, 356.30480535951096],
    box: [114.105703485326, 22.203817016791, 114.190255671651, 22.322473702273],
    fields: ['Name', 'Count'],
    first: ['Kowloon', 5],
    last: ['North Lamma', 45],
  },
};

/** A tenth of a millimetre on the ground. */
const CLOSE_DEG = 1e-9;

describe('public files against ogr2ogr', () => {
  for (const [name, figures] of Object.entries(FILES)) {
    const isThere = existsSync(`${folder}${name}`);
    if (!isThere) console.log(`skipped: ../shared/geodata/${name} is not there`);
    it.skipIf(!isThere)(`${name}${isThere ? '' : ' (skipped: the file is not beside the repository)'}`, async () => {
      const read = await readGroundFile(`${folder}${name}`, { workerFile: worker.file });
      if (!read.ok) throw new Error(`${read.error.code}: ${read.error.detail}`);
      compare(read.value, figures);
    });
  }
});

function compare(source: GroundSource, figures: Figures): void {
  expect(source.issues).toEqual([]);
  expect(source.layers.map((each) => each.name)).toEqual([figures.layer]);
  const [layer] = source.layers;
  if (layer === undefined) return;
  expect(layer.coordinates.kind).toBe('degrees');
  expect(layer.features).toHaveLength(figures.records);
  expect(layer.features.flatMap((each) => each.issues)).toEqual([]);
  expect(layer.fields).toEqual(figures.fields);
  const values = (index: number) => figures.fields.map((field) => layer.features.at(index)?.attributes[field]);
  expect(values(0)).toEqual(figures.first);
  expect(values(-1)).toEqual(figures.last);
  const { positions, sum, box } = tally(layer.features.map((each) => each.geometry));
  expect(positions).toBe(figures.positions);
  for (const [index, expected] of figures.sum.entries()) {
    expect(Math.abs((sum[index] ?? Number.NaN) - expected)).toBeLessThan(CLOSE_DEG * figures.positions);
  }
  for (const [index, expected] of figures.box.entries()) {
    expect(Math.abs((box[index] ?? Number.NaN) - expected)).toBeLessThan(CLOSE_DEG);
  }
}

function tally(geometries: readonly (GeoJSON.Geometry | null)[]) {
  let positions = 0;
  const sum = [0, 0];
  const box = [Infinity, Infinity, -Infinity, -Infinity];
  for (const geometry of geometries) {
    if (geometry === null) continue;
    eachPosition(geometry, ([x = 0, y = 0]) => {
      positions += 1;
      sum[0] = (sum[0] ?? 0) + x;
      sum[1] = (sum[1] ?? 0) + y;
      box[0] = Math.min(box[0] ?? 0, x);
      box[1] = Math.min(box[1] ?? 0, y);
      box[2] = Math.max(box[2] ?? 0, x);
      box[3] = Math.max(box[3] ?? 0, y);
    });
  }
  return { positions, sum, box };
}
