/** Which rows of a long list are drawn: from `first` to before `end`. */
export type RowRange = { readonly first: number; readonly end: number };

/** Rows drawn above and below what is seen, so that a quick scroll meets no gap. */
const SPARE_ROWS = 8;

/** The rows that are seen at a scroll position, and a few more. */
export function rowsInView(count: number, rowPx: number, scrollPx: number, heightPx: number): RowRange {
  const first = Math.max(0, Math.floor(scrollPx / rowPx) - SPARE_ROWS);
  const end = Math.min(count, Math.ceil((scrollPx + heightPx) / rowPx) + SPARE_ROWS);
  return { first: Math.min(first, end), end };
}

/** Where to scroll so that a row is wholly seen; the position as it is when it is seen already. */
export function scrollToShow(index: number, rowPx: number, scrollPx: number, heightPx: number): number {
  const top = index * rowPx;
  if (top < scrollPx) return top;
  return top + rowPx > scrollPx + heightPx ? top + rowPx - heightPx : scrollPx;
}

/** The keys that lead from row to row. */
export const LIST_KEYS = ['ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', 'Home', 'End'] as const;

/** The row that a key leads to from a row (-1 for none); null for a key with another meaning. */
export function rowForKey(key: string, index: number, count: number, pageRows: number): number | null {
  if (count === 0) return null;
  const within = (wanted: number) => Math.min(count - 1, Math.max(0, wanted));
  switch (key) {
    case 'ArrowDown':
      return within(index + 1);
    case 'ArrowUp':
      return within(index < 0 ? count - 1 : index - 1);
    case 'PageDown':
      return within(index + pageRows);
    case 'PageUp':
      return within(index - pageRows);
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return null;
  }
}

/**
 * The next row whose name begins with what was typed, looking on from the row after `index` and round again; where none does, the next one
 * with a word that begins so, as in "6 Teasel Lane". -1 for none.
 */
export function rowForText(name: (index: number) => string, count: number, index: number, typed: string): number {
  const sought = typed.toLowerCase();
  // While the same word is being typed on, the present row may still be the one; a single letter goes on to the next.
  const start = typed.length > 1 ? Math.max(0, index) : index + 1;
  const next = (fits: (text: string) => boolean): number => {
    for (let step = 0; step < count; step += 1) {
      const row = (start + step) % count;
      if (fits(name(row).toLowerCase())) return row;
    }
    return -1;
  };
  const first = next((text) => text.startsWith(sought));
  return first < 0 ? next((text) => text.includes(` ${sought}`)) : first;
}
