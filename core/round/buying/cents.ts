/**
 * Cuts a whole number of cents into parts by weights, so that the parts add up to it: each gets the whole cents of its share, and the
 * cents that are left go to the largest remainders, the first of equal ones.
 *
 * @param weights not below 0; where all are 0 every part counts alike
 */
export function shareCents(cents: number, weights: readonly number[]): readonly number[] {
  const sum = weights.reduce((total, each) => total + each, 0);
  const exact = weights.map((each) => (cents * (sum > 0 ? each : 1)) / (sum > 0 ? sum : weights.length));
  const parts = exact.map(Math.floor);
  const rest = cents - parts.reduce((total, each) => total + each, 0);
  const order = exact
    .map((each, index) => ({ index, over: each - Math.floor(each) }))
    .toSorted((one, other) => other.over - one.over || one.index - other.index);
  for (const { index } of order.slice(0, rest)) parts[index] = (parts[index] ?? 0) + 1;
  return parts;
}
