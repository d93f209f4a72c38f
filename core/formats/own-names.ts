/**
 * Gives names of their own: the first holder of a name keeps it, the next ones get "name (2)", "name (3)" and so on.
 * Linear in the number of names on the whole.
 */
export function createNamer(): (name: string) => string {
  const taken = new Set<string>();
  const counts = new Map<string, number>();
  return (name) => {
    let count = counts.get(name) ?? 1;
    let own = name;
    while (taken.has(own)) {
      count += 1;
      own = `${name} (${count})`;
    }
    counts.set(name, count);
    taken.add(own);
    return own;
  };
}
