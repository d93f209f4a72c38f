import { ok } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { keptFigures } from '../../../core/passes/index.ts';
import type { GoTable } from '../../../core/plan/board/index.ts';
import { type Errand, sendErrand } from './errand.ts';
import type { FitMessage, FitOrder } from './messages.ts';

/** Tells in a thread of its own who can go to which lawn of a round; null without such round or treatment. */
export function tellWhoCanGo(
  workerFile: string,
  fit: { readonly book: Book; readonly roundId: string; readonly treatmentId: string },
): Errand<GoTable | null> {
  const order: FitOrder = {
    fit,
    figures: keptFigures(),
    stopFlag: new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT),
  };
  return sendErrand(workerFile, order, ({ table }: FitMessage) => ok(table));
}
