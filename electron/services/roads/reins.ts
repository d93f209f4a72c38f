import type { StopSignal } from '../../../core/base/index.ts';

const STOP = 0;
const SIGN_OF_LIFE = 1;

/** How a host holds its worker: it tells it to stop, and sees whether it still looks. */
export type Reins = {
  /** Goes to the worker, which makes a signal of it (`signalOf`). */
  readonly shared: SharedArrayBuffer;
  readonly stop: () => void;
  /** A number that changes whenever the worker has looked whether it is to stop. */
  readonly looks: () => number;
};

/** Two 32-bit integers that host and worker share. */
export function createReins(): Reins {
  const shared = new SharedArrayBuffer(2 * Int32Array.BYTES_PER_ELEMENT);
  const flags = new Int32Array(shared);
  return {
    shared,
    stop: () => void Atomics.store(flags, STOP, 1),
    looks: () => Atomics.load(flags, SIGN_OF_LIFE),
  };
}

/** The worker's end of the reins. */
export function signalOf(shared: SharedArrayBuffer): StopSignal {
  const flags = new Int32Array(shared);
  return {
    stopped: () => {
      Atomics.add(flags, SIGN_OF_LIFE, 1);
      return Atomics.load(flags, STOP) !== 0;
    },
  };
}
