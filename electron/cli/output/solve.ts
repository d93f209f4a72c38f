import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { figure, format, text } from './parts.ts';

/** Answer of `solve`. */
export const solveSchema = v.strictObject({
  ...format('swardway-routes'),
  name: text,
  /** In the unit of the file, added up anew from the routes. */
  cost: figure,
  /** Customers of each route in order, numbered from 1; the depot is not listed, 0 is a reload there. */
  routes: v.array(v.array(figure)),
  /** Customers in no route. */
  absent: v.array(figure),
  /** What the check of the routes found wrong; empty where nothing is. */
  faults: v.array(text),
  seconds: figure,
  iterations: figure,
  seed: figure,
});

/** What `solve --json` prints. */
export type SolveOutput = Frozen<v.InferOutput<typeof solveSchema>>;
