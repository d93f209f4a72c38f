import * as v from 'valibot';
import type { Frozen } from '../../../core/book/index.ts';
import { figure, format, text } from './parts.ts';

/** Answer of `judge`. The codes of violations are listed in docs/cli.md. */
export const judgeSchema = v.strictObject({
  ...format('swardway-verdict'),
  bookId: text,
  roundId: text,
  feasible: v.boolean(),
  violations: v.array(v.strictObject({ code: text, where: text, message: text })),
  totals: v.strictObject({
    days: figure,
    stops: figure,
    treatedSqFt: figure,
    coveredSqFt: figure,
    handTrimSqFt: figure,
    notReachedSqFt: figure,
    paidSec: figure,
    overtimeSec: figure,
    driveSec: figure,
    distanceM: figure,
    refills: figure,
    costUsd: figure,
    /** Pieces of work that the plan leaves undone. */
    unplaced: figure,
  }),
});

/** What `judge --json` prints. */
export type JudgeOutput = Frozen<v.InferOutput<typeof judgeSchema>>;
