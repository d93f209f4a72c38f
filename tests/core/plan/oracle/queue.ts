/** A binary heap that gives back what has the least cost first. */
export class Queue<Item extends { readonly least: number }> {
  readonly #items: Item[] = [];

  push(item: Item): void {
    const items = this.#items;
    let at = items.length;
    items.push(item);
    while (at > 0) {
      const parent = (at - 1) >> 1;
      const other = items[parent] as Item;
      if (other.least <= item.least) break;
      items[at] = other;
      at = parent;
    }
    items[at] = item;
  }

  pop(): Item | undefined {
    const items = this.#items;
    const first = items[0];
    const last = items.pop();
    if (first === undefined || last === undefined || items.length === 0) return first;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= items.length) break;
      if (child + 1 < items.length && (items[child + 1] as Item).least < (items[child] as Item).least) child += 1;
      const other = items[child] as Item;
      if (other.least >= last.least) break;
      items[at] = other;
      at = child;
    }
    items[at] = last;
    return first;
  }
}
