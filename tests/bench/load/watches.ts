/** What the page notes of itself, milliseconds each. */
export type Watched = {
  readonly tasks: readonly number[];
  readonly searches: readonly number[];
  readonly saves: readonly number[];
};

/**
 * Runs in the page before the program does: notes tasks of more than 50 ms, how long it is from a key in the search to the frame with its
 * results, and from Enter to the word "saved". It has to stand for itself, since its text alone goes to the page.
 */
export function installWatches(): void {
  const watches = { tasks: [] as number[], searches: [] as number[], saves: [] as number[] };
  Object.assign(window, { watches });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) watches.tasks.push(entry.duration);
  }).observe({ type: 'longtask', buffered: true });
  let keyAt: number | null = null;
  let enterAt: number | null = null;
  let isSaving = false;
  const afterFrame = (then: () => void): void => {
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = then;
      port2.postMessage(null);
    });
  };
  addEventListener(
    'keydown',
    (event) => {
      const isSearch = event.target instanceof HTMLInputElement && event.target.type === 'search';
      if (isSearch) keyAt = event.timeStamp;
      else if (event.key === 'Enter') enterAt = event.timeStamp;
    },
    true,
  );
  const head = (): string => document.querySelector('.list-head h2')?.textContent ?? '';
  let before = '';
  new MutationObserver(() => {
    const now = head();
    if (now !== before) {
      before = now;
      const from = keyAt;
      keyAt = null;
      if (from !== null) afterFrame(() => watches.searches.push(performance.now() - from));
    }
    const save = document.querySelector('.save-state')?.textContent ?? '';
    if (save.includes('saving')) isSaving = true;
    else if (isSaving && save.includes('saved')) {
      isSaving = false;
      if (enterAt !== null) watches.saves.push(performance.now() - enterAt);
      enterAt = null;
    }
  }).observe(document, { subtree: true, childList: true, characterData: true });
}
