/** Calls back once, when some work has had its time. */
export type Watch = { readonly stop: () => void };

/** How often it is looked, milliseconds. */
const LOOK_EVERY_MS = 100;
/** On a busy machine work may take this many times its limit by the clock, as long as it does not use it up on the processor. */
const MOST_WAITING = 10;

/** Work that is watched at this moment; all of it shares the processor time of the program. */
let watched = 0;

/**
 * Ends work that takes too long: after so much time on the processor, counted for the whole program and shared by the work
 * that runs at the same time, or after ten times as long by the clock. A machine that is busy with other things is no fault
 * of a file.
 */
export function watchTime(limitMs: number, onOver: () => void): Watch {
  const startedAt = performance.now();
  const startedWith = process.cpuUsage();
  let isOn = true;
  watched += 1;
  const stop = (): void => {
    if (!isOn) return;
    isOn = false;
    watched -= 1;
    clearInterval(timer);
  };
  const look = (): void => {
    const { user, system } = process.cpuUsage(startedWith);
    const isOver = (user + system) / 1000 > limitMs * watched || performance.now() - startedAt > limitMs * MOST_WAITING;
    if (!isOver) return;
    stop();
    onOver();
  };
  const timer = setInterval(look, LOOK_EVERY_MS);
  return { stop };
}
