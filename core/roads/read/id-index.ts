import { tooMuch } from './fault.ts';

/** Whole numbers from 0 on for ids, in the order in which they come. */
export type IdIndex = {
  readonly add: (id: number) => number;
  /** -1 where the id is not known. */
  readonly find: (id: number) => number;
  readonly size: () => number;
};

/** Ids at most; beyond, the memory would not do. */
const MOST_IDS = 6_000_000;

/** A hash table with open addressing, at most half full. */
export function idIndex(): IdIndex {
  let mask = 2 ** 12 - 1;
  let keys = new Float64Array(mask + 1).fill(Number.NaN);
  let places = new Int32Array(mask + 1);
  let size = 0;
  const slotOf = (id: number): number => {
    let slot = hash(id) & mask;
    while (keys[slot] !== id && !Number.isNaN(keys[slot] as number)) slot = (slot + 1) & mask;
    return slot;
  };
  const grow = (): void => {
    const [oldKeys, oldPlaces] = [keys, places];
    mask = 2 * mask + 1;
    keys = new Float64Array(mask + 1).fill(Number.NaN);
    places = new Int32Array(mask + 1);
    for (let at = 0; at < oldKeys.length; at += 1) {
      const id = oldKeys[at] as number;
      if (Number.isNaN(id)) continue;
      const slot = slotOf(id);
      keys[slot] = id;
      places[slot] = oldPlaces[at] as number;
    }
  };
  return {
    add: (id) => {
      const slot = slotOf(id);
      if (keys[slot] === id) return places[slot] as number;
      if (size >= MOST_IDS) throw tooMuch(`roads with more than ${MOST_IDS / 1e6} million points`);
      keys[slot] = id;
      places[slot] = size;
      size += 1;
      if (2 * size > mask) grow();
      return size - 1;
    },
    find: (id) => {
      const slot = slotOf(id);
      return keys[slot] === id ? (places[slot] as number) : -1;
    },
    size: () => size,
  };
}

/** Mixes both halves of the number (finaliser of MurmurHash3 by A. Appleby, public domain, from memory). */
function hash(id: number): number {
  let bits = (id | 0) ^ Math.imul(Math.floor(id / 4294967296), 0x9e3779b1);
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) >>> 0;
}
