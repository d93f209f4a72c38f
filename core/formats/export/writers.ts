import type { Property } from '../../book/index.ts';
import { writeCsv } from './csv.ts';
import { writeGeojson } from './geojson.ts';
import { writeGpx } from './gpx.ts';
import { writeKml } from './kml.ts';
import type { WriteOptions } from './options.ts';

/** A kind of file that properties can be written as. */
export type GroundWriter = {
  readonly id: string;
  readonly title: string;
  /** Of the file's name, without the dot. */
  readonly extension: string;
  /** What the file does not hold, for whoever chooses. */
  readonly leavesOut: string;
  /** How such a file begins, so that one may be written over an earlier one. */
  readonly begins: RegExp;
  /** The text of the file, UTF-8. The same properties always give the same text. */
  readonly write: (properties: readonly Property[], options: WriteOptions) => string;
};

/** Every kind of file that ground can be written as. A new one is a file and a line here. */
export const WRITERS: readonly GroundWriter[] = [
  {
    id: 'geojson',
    title: 'Outlines (GeoJSON)',
    extension: 'geojson',
    leavesOut: 'Hours, cautions, notes and earlier measurements stay in the book.',
    begins: /^\s*\{\s*"type"\s*:\s*"FeatureCollection"/,
    write: writeGeojson,
  },
  {
    id: 'kml',
    title: 'Outlines and places (KML)',
    extension: 'kml',
    leavesOut: 'Hours, cautions, notes and earlier measurements stay in the book.',
    begins: /<kml[\s>]/,
    write: writeKml,
  },
  {
    id: 'gpx',
    title: 'Parking points and gates for receivers (GPX)',
    extension: 'gpx',
    leavesOut: 'Only points are written: where to park, and gates with a place.',
    begins: /<gpx[\s>]/,
    write: writeGpx,
  },
  {
    id: 'csv',
    title: 'Zones with areas (CSV)',
    extension: 'csv',
    leavesOut: 'Exclusions and gates are left out; their effect is in the treatable area.',
    begins: /^property,property name,/,
    write: writeCsv,
  },
];
