import type { Clock, Progress } from '../../../core/base/index.ts';

/** Least time between two progress events of one job, milliseconds. */
export const PROGRESS_EVERY_MS = 100;

/** Passes progress on at most once in `everyMs`, and never lets `done` of a step fall. */
export function throttleProgress(
  send: (progress: Progress) => void,
  clock: Clock,
  everyMs: number = PROGRESS_EVERY_MS,
): (progress: Progress) => void {
  let lastAt = Number.NEGATIVE_INFINITY;
  let step = '';
  let done = 0;
  return (progress) => {
    const isNew = progress.step !== step;
    done = isNew ? progress.done : Math.max(done, progress.done);
    step = progress.step;
    const now = clock.nowMs();
    if (now - lastAt < everyMs) return;
    lastAt = now;
    send({ ...progress, done });
  };
}
