import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import sqlite3 from 'sqlite3';
import { blob } from '../../../core/formats/geopackage/build.ts';

/** A GeoPackage with one layer of three lots in degrees, and whatever else the statements make. */
export function writeGeopackage(file: string, more = ''): Promise<void> {
  const square = (x: number) =>
    blob({
      type: 'Polygon',
      coordinates: [
        [
          [x, 42],
          [x + 0.001, 42],
          [x + 0.001, 42.001],
          [x, 42],
        ],
      ],
    });
  const hex = (bytes: Uint8Array) => `X'${Buffer.from(bytes).toString('hex')}'`;
  return run(
    file,
    `PRAGMA application_id = 0x47504B47;
     CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT, srs_id INTEGER PRIMARY KEY, organization TEXT,
       organization_coordsys_id INTEGER, definition TEXT, description TEXT);
     INSERT INTO gpkg_spatial_ref_sys VALUES ('WGS 84', 4326, 'EPSG', 4326, 'undefined', '');
     CREATE TABLE gpkg_contents (table_name TEXT PRIMARY KEY, data_type TEXT, identifier TEXT, srs_id INTEGER);
     CREATE TABLE gpkg_geometry_columns (table_name TEXT, column_name TEXT, geometry_type_name TEXT, srs_id INTEGER);
     INSERT INTO gpkg_contents VALUES ('lots', 'features', 'All the lots', 4326);
     INSERT INTO gpkg_geometry_columns VALUES ('lots', 'geom', 'POLYGON', 4326);
     CREATE TABLE lots (fid INTEGER PRIMARY KEY, geom BLOB, "street ""name""" TEXT);
     INSERT INTO lots VALUES (1, ${hex(square(-71.1))}, 'Elm'), (2, ${hex(square(-71.2))}, NULL), (7, NULL, 'Oak');
     ${more}`,
  );
}

function run(file: string, sql: string): Promise<void> {
  return new Promise((done, fail) => {
    const database = new sqlite3.Database(file);
    database.exec(sql, (error) => database.close(() => (error === null ? done() : fail(error))));
  });
}

/** A GeoTIFF of one band of 32-bit numbers without compression, written field by field (TIFF 6.0; OGC 19-008). */
export type HeightFile = {
  readonly width: number;
  readonly height: number;
  readonly values: readonly number[];
  /** EPSG code of a projected system, or of degrees. */
  readonly projected?: number;
  readonly degrees?: number;
  readonly verticalUnit?: number;
  readonly noData?: string;
  /** Either tie point and pixel size, or a matrix of sixteen. */
  readonly corner?: readonly [x: number, y: number];
  readonly pixel?: readonly [width: number, height: number];
  readonly matrix?: readonly number[];
  readonly isPoint?: boolean;
  readonly bands?: number;
  /** Pixels packed by deflate, compression 8 of Adobe's supplement to TIFF 6.0. */
  readonly isPacked?: boolean;
};

type Field = readonly [tag: number, type: 2 | 3 | 4 | 12, values: readonly number[]];
const SIZES = { 2: 1, 3: 2, 4: 4, 12: 8 } as const;

export function heightBytes(file: HeightFile): Uint8Array {
  const { width, height, values, bands = 1 } = file;
  const plain = new Uint8Array(Float32Array.from(values).buffer);
  const pixels = file.isPacked === true ? new Uint8Array(deflateSync(plain)) : plain;
  const keys: number[] = [];
  const key = (id: number, value: number | undefined) => value !== undefined && keys.push(id, 0, 1, value);
  key(1024, file.projected === undefined ? 2 : 1);
  key(1025, file.isPoint === true ? 2 : 1);
  key(2048, file.degrees);
  key(3072, file.projected);
  key(4099, file.verticalUnit);
  const fields: Field[] = [
    [256, 4, [width]],
    [257, 4, [height]],
    [258, 3, Array<number>(bands).fill(32)],
    [259, 3, [file.isPacked === true ? 8 : 1]],
    [262, 3, [1]],
    [273, 4, [0]],
    [277, 3, [bands]],
    [278, 4, [height]],
    [279, 4, [pixels.length]],
    [339, 3, Array<number>(bands).fill(3)],
  ];
  if (file.pixel !== undefined) fields.push([33550, 12, [...file.pixel, 0]]);
  if (file.corner !== undefined) fields.push([33922, 12, [0, 0, 0, ...file.corner, 0]]);
  if (file.matrix !== undefined) fields.push([34264, 12, file.matrix]);
  fields.push([34735, 3, [1, 1, 0, keys.length / 4, ...keys]]);
  if (file.noData !== undefined) fields.push([42113, 2, [...Buffer.from(`${file.noData}\0`, 'latin1')]]);
  return layOut(fields, pixels);
}

function layOut(fields: readonly Field[], pixels: Uint8Array): Uint8Array {
  const headBytes = 8 + 2 + fields.length * 12 + 4;
  const extra = fields.reduce((sum, [, type, values]) => sum + inside(type, values), 0);
  const view = new DataView(new ArrayBuffer(headBytes + extra + pixels.length));
  view.setUint16(0, 0x4949, true);
  view.setUint16(2, 42, true);
  view.setUint32(4, 8, true);
  view.setUint16(8, fields.length, true);
  let free = headBytes;
  for (const [index, [tag, type, values]] of fields.entries()) {
    const at = 10 + index * 12;
    view.setUint16(at, tag, true);
    view.setUint16(at + 2, type, true);
    view.setUint32(at + 4, values.length, true);
    const bytes = inside(type, values);
    if (bytes > 0) view.setUint32(at + 8, free, true);
    const start = bytes > 0 ? free : at + 8;
    const written = tag === 273 ? [headBytes + extra] : values;
    for (const [place, value] of written.entries()) put(view, start + place * SIZES[type], type, value);
    free += bytes;
  }
  const file = new Uint8Array(view.buffer);
  file.set(pixels, headBytes + extra);
  return file;
}

/** Bytes that do not fit into the field itself, on an even number. */
function inside(type: Field[1], values: readonly number[]): number {
  const bytes = values.length * SIZES[type];
  return bytes <= 4 ? 0 : bytes + (bytes % 2);
}

function put(view: DataView, at: number, type: Field[1], value: number): void {
  if (type === 2) view.setUint8(at, value);
  else if (type === 3) view.setUint16(at, value, true);
  else if (type === 4) view.setUint32(at, value, true);
  else view.setFloat64(at, value, true);
}

export async function writeInto(folder: string, name: string, bytes: Uint8Array | string): Promise<string> {
  const file = path.join(folder, name);
  await writeFile(file, bytes);
  return file;
}
