/** Whole numbers that are added one by one, held without an object each. */
export type Growing = {
  readonly push: (value: number) => void;
  readonly size: () => number;
  /** The numbers so far, without a copy; valid until the next `push`. */
  readonly view: () => Int32Array;
};

export function growing(): Growing {
  let room = new Int32Array(1024);
  let size = 0;
  return {
    push: (value) => {
      if (size === room.length) {
        const wider = new Int32Array(2 * size);
        wider.set(room);
        room = wider;
      }
      room[size] = value;
      size += 1;
    },
    size: () => size,
    view: () => room.subarray(0, size),
  };
}
