import type { MeasureProperty } from '../geojson/index.ts';

/** What writing a file of ground needs beside the properties. */
export type WriteOptions = {
  /** What the properties are together, usually the book's name. */
  readonly title: string;
  /** The measure step, handed in: a format knows only its types. */
  readonly measure: MeasureProperty;
};
