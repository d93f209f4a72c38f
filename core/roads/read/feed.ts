import { joinBytes } from '../../base/index.ts';
import { damaged } from './fault.ts';
import type { RoadSource } from './types.ts';

/** Bytes of a source in exact helpings. */
export type ByteFeed = {
  /** So many bytes; null where the source ends before the first of them. A source that ends in the middle is damaged. */
  readonly take: (count: number) => Promise<Uint8Array | null>;
  /** Whatever comes next, of any size; null at the end. */
  readonly any: () => Promise<Uint8Array | null>;
  /** Bytes handed out so far. */
  readonly taken: () => number;
};

export function feedOf(source: RoadSource): ByteFeed {
  const pieces = source instanceof Uint8Array ? once(source) : source()[Symbol.asyncIterator]();
  let held: Uint8Array[] = [];
  let size = 0;
  let taken = 0;
  const more = async (): Promise<boolean> => {
    const next = await pieces.next();
    if (next.done === true) return false;
    if (next.value.length > 0) held.push(next.value);
    size += next.value.length;
    return true;
  };
  const cut = (count: number): Uint8Array => {
    const [first] = held;
    const whole = first !== undefined && first.length >= count ? first : joinBytes(held);
    const others = whole === first ? held.slice(1) : [];
    held = whole.length > count ? [whole.subarray(count), ...others] : others;
    size -= count;
    taken += count;
    return whole.subarray(0, count);
  };
  return {
    take: async (count) => {
      while (size < count) {
        if (await more()) continue;
        if (size === 0) return null;
        throw damaged('it ends in the middle of a block');
      }
      return cut(count);
    },
    any: async () => {
      while (size === 0) if (!(await more())) return null;
      return cut(size);
    },
    taken: () => taken,
  };
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}
