/** Time for one part of the work, so that the window stays quick, ms. */
const SLICE_MS = 12;
/** Least time between two reports of how far it is, ms. */
const TELL_MS = 90;

/**
 * Runs work that is made of small steps in short parts, between which the window can draw. The returned function stops it.
 * @param tell how far it is, at most eleven times a second
 */
export function inSlices<Told, Value>(
  steps: Generator<Told, Value, undefined>,
  tell: (told: Told) => void,
  end: (value: Value) => void,
): () => void {
  let stopped = false;
  let told = Number.NEGATIVE_INFINITY;
  const part = () => {
    const until = performance.now() + SLICE_MS;
    while (!stopped) {
      const step = steps.next();
      if (step.done === true) {
        end(step.value);
        return;
      }
      const now = performance.now();
      if (now - told >= TELL_MS) {
        told = now;
        tell(step.value);
      }
      if (now >= until) break;
    }
    if (!stopped) afterDrawing(part);
  };
  afterDrawing(part);
  return () => {
    stopped = true;
  };
}

/** Calls back as soon as the window has had its turn. */
function afterDrawing(work: () => void): void {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    port1.close();
    work();
  };
  port2.postMessage(null);
}
