import type { Links } from './types.ts';

/**
 * Marks the nodes of the largest part in which every node can be reached from every other (R. Tarjan, SIAM J. Comput. 1(2),
 * 1972, with a stack of its own instead of recursion). Of parts of one size the first found.
 */
export function largestPart({ start, node }: Links): Uint8Array {
  const count = start.length - 1;
  const order = new Int32Array(count).fill(-1);
  const low = new Int32Array(count);
  const link = start.slice(0, count);
  const isWaiting = new Uint8Array(count);
  const waiting = new Uint32Array(count);
  const way = new Uint32Array(count);
  const part = new Int32Array(count).fill(-1);
  let [found, waits, parts, best, bestSize] = [0, 0, 0, -1, 0];
  for (let root = 0; root < count; root += 1) {
    if (order[root] !== -1) continue;
    let depth = 0;
    way[depth++] = root;
    while (depth > 0) {
      const here = way[depth - 1] as number;
      if (order[here] === -1) {
        order[here] = low[here] = found++;
        waiting[waits++] = here;
        isWaiting[here] = 1;
      }
      const at = link[here] as number;
      if (at < (start[here + 1] as number)) {
        link[here] = at + 1;
        const next = node[at] as number;
        if (order[next] === -1) way[depth++] = next;
        else if (isWaiting[next] === 1) low[here] = Math.min(low[here] as number, order[next] as number);
        continue;
      }
      depth -= 1;
      if (depth > 0) {
        const before = way[depth - 1] as number;
        low[before] = Math.min(low[before] as number, low[here] as number);
      }
      if (low[here] !== order[here]) continue;
      let size = 0;
      for (let last = -1; last !== here; size += 1) {
        last = waiting[--waits] as number;
        isWaiting[last] = 0;
        part[last] = parts;
      }
      if (size > bestSize) [best, bestSize] = [parts, size];
      parts += 1;
    }
  }
  return Uint8Array.from(part, (each) => (each === best ? 1 : 0));
}
