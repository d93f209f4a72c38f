/** Runs pieces of work one after the other, in the order in which they are asked for. One that fails does not stop the next. */
export type Turn = <T>(work: () => Promise<T>) => Promise<T>;

/** A queue with nothing in it. */
export function createTurn(): Turn {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const next = last.then(work);
    last = next.catch(() => undefined);
    return next;
  };
}
