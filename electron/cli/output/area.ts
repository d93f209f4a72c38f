import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { figure, format, text } from './parts.ts';

/** Answer of `area`. */
export const areaSchema = v.strictObject({
  ...format('swardway-area'),
  kind: text,
  /** area-ft2, area-acre, area-m2. */
  answers: v.array(v.strictObject({ name: text, value: figure, unit: text })),
  /** The arithmetic, a line for each step. */
  working: v.array(text),
  source: text,
});

/** What `area --json` prints. */
export type AreaOutput = Frozen<v.InferOutput<typeof areaSchema>>;
