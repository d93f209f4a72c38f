import { DOMParser, type Element } from '@xmldom/xmldom';

/** Parses XML and throws for whatever is not well formed. The parser warns of U+FFFD, which stands for what XML cannot hold. */
export function xmlOf(text: string) {
  return new DOMParser({
    onError: (level, message) => {
      if (level !== 'warning') throw new Error(`${level}: ${message}`);
    },
  }).parseFromString(text, 'text/xml');
}

/** The children that a schema allows of an element, in its order. */
export type Orders = Readonly<Record<string, readonly string[]>>;

/** What breaks the orders of a schema anywhere in a document; empty where all is in order. */
export function orderFaults(root: Element, orders: Orders): readonly string[] {
  const order = orders[root.localName ?? ''];
  const children = Array.from(root.childNodes).filter((each): each is Element => each.nodeType === 1);
  const faults: string[] = [];
  let last = -1;
  for (const child of children) {
    const at = order?.indexOf(child.localName ?? '') ?? -1;
    if (order === undefined || at < 0) faults.push(`${root.localName} may not hold ${child.localName}`);
    else if (at < last) faults.push(`${child.localName} comes too late in ${root.localName}`);
    last = Math.max(last, at);
  }
  return [...faults, ...children.flatMap((child) => orderFaults(child, orders))];
}
