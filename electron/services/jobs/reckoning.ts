import type { Progress, Result } from '../../../core/base/index.ts';
import { keepFigures, keptFigures } from '../../../core/passes/index.ts';
import { type Errand, sendErrand } from './errand.ts';
import { gaveNoPlan } from './failures.ts';
import type { ReckonMessage, ReckonOrder, ReckonWish } from './messages.ts';

/** Whether one of the problems asked about has the fingerprint. */
export type Fits = { readonly fits: boolean };

/** How long a reckoning that was told to end may take to hand over what it has, milliseconds. */
const PATIENCE_MS = 2000;

/**
 * Reckons the work of a round in a thread of its own, and keeps the figures of its passes in this process: whoever plans it next, or
 * asks again, starts with them. Told to end, it answers at once; its figures so far still come in where it hands them over in time.
 */
export function startReckoning(
  workerFile: string,
  wish: ReckonWish,
  onProgress: (progress: Progress) => void = () => undefined,
): Errand<Fits> {
  const stopFlag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  const order: ReckonOrder = { reckon: wish, figures: keptFigures(), stopFlag };
  let isEnded = false;
  const errand = sendErrand(workerFile, order, (message: ReckonMessage): Result<Fits> | null => {
    if (message.kind === 'reckoned') {
      keepFigures(message.figures);
      return message.result;
    }
    if (message.kind === 'progress' && !isEnded) onProgress(message.progress);
    return null;
  });
  let giveUp: () => void = () => undefined;
  const cancelled = new Promise<Result<Fits>>((settle) => {
    giveUp = () => settle(gaveNoPlan());
  });
  const end = (): void => {
    if (isEnded) return;
    isEnded = true;
    Atomics.store(new Int32Array(stopFlag), 0, 1);
    giveUp();
    const killer = setTimeout(errand.end, PATIENCE_MS);
    void errand.answer.then(() => clearTimeout(killer));
  };
  return { answer: Promise.race([errand.answer, cancelled]), end };
}
