/**
 * What went wrong outside any call of the test: an exception of the preload script, a rejection in the main process. Whoever
 * waits for something is told at once, instead of running into a time limit.
 */
export type Trouble = {
  readonly report: (error: Error) => void;
  /** The promise, or the trouble, whichever comes first. */
  readonly within: <T>(promise: Promise<T>) => Promise<T>;
  /** All that was reported; the list is emptied. */
  readonly take: () => readonly Error[];
  readonly stop: () => void;
};

/** Takes over unhandled rejections and exceptions of this process until it is stopped. */
export function watchTrouble(): Trouble {
  const errors: Error[] = [];
  const waiting = new Set<(error: Error) => void>();
  const report = (error: Error): void => {
    errors.push(error);
    for (const fail of waiting) fail(error);
    waiting.clear();
  };
  const hear = (reason: unknown): void => report(reason instanceof Error ? reason : new Error(String(reason)));
  const restores = (['unhandledRejection', 'uncaughtException'] as const).map((name) => {
    const others = process.listeners(name as 'uncaughtException');
    process.removeAllListeners(name);
    process.on(name, hear);
    return () => {
      process.off(name, hear);
      for (const other of others) process.on(name as 'uncaughtException', other);
    };
  });
  return {
    report,
    within: (promise) => {
      const [first] = errors;
      if (first !== undefined) return Promise.reject(first);
      return new Promise((done, fail) => {
        waiting.add(fail);
        const leave = () => waiting.delete(fail);
        promise.then(done, fail).finally(leave);
      });
    },
    take: () => errors.splice(0),
    stop: () => {
      for (const restore of restores) restore();
    },
  };
}
