/** The middle one of some figures. */
export function middle(figures: readonly number[]): number {
  return share(figures, 0.5);
}

/** The figure below which a share of them lies. */
export function share(figures: readonly number[], part: number): number {
  const sorted = [...figures].sort((left, right) => left - right);
  const found = sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))];
  if (found === undefined) throw new Error('there are no figures');
  return found;
}
