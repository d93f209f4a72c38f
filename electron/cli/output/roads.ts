import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { figure, format, text } from './parts.ts';

/** Answer of `roads import`: what was read of the extract and written into the road file. */
const importedSchema = v.strictObject({
  ...format('swardway-roads'),
  action: v.literal('import'),
  attribution: text,
  licence: text,
  /** Of the roads; the same extract gives the same one. */
  fingerprint: text,
  /** Moment of the data (ISO 8601) and the program that wrote the extract, as it tells them; empty where it does not. */
  dataOf: text,
  writtenBy: text,
  /** West, south, east, north, degrees. */
  bounds: v.array(figure),
  counts: v.record(text, figure),
});

/** Answer of `roads table`: drive times between all places of a book, null where no way by road is known. */
const tableSchema = v.strictObject({
  ...format('swardway-roads'),
  action: v.literal('table'),
  bookId: text,
  credit: text,
  /** Pairs of different places, both ways, and how many of them are by road. */
  pairs: figure,
  byRoad: figure,
  places: v.array(v.strictObject({ id: text, name: text, lon: figure, lat: figure })),
  /** [from][to], whole seconds and metres. */
  durationSec: v.array(v.array(v.nullable(figure))),
  distanceM: v.array(v.array(v.nullable(figure))),
  offRoad: v.array(v.strictObject({ id: text, name: text, words: text })),
});

/** Answer of `roads`: what was imported, or the times and lengths of ways. */
export const roadsSchema = v.variant('action', [importedSchema, tableSchema]);

/** What `roads --json` prints. */
export type RoadsOutput = Frozen<v.InferOutput<typeof roadsSchema>>;
