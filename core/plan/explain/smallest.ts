/**
 * The smallest whole number from 1 to `most` that does, where every larger one does too; `most` is taken on trust.
 * Asks about log2(most) times.
 */
export function smallest(most: number, does: (number: number) => boolean): number {
  let fails = 0;
  let works = most;
  while (works - fails > 1) {
    const middle = Math.floor((fails + works) / 2);
    if (does(middle)) works = middle;
    else fails = middle;
  }
  return works;
}
