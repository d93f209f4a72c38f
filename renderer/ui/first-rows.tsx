import { useState } from 'react';
import { counted } from '../format/index.ts';
import { uiWords } from '../texts/index.ts';
import { Button } from './button.tsx';

type FirstRows<Item> = {
  readonly shown: readonly Item[];
  readonly hidden: number;
  readonly showMore: () => void;
};

/**
 * The first rows of a list whose rows are too unlike in height for a virtual one. Thousands of rows that nobody reads cost the window
 * more time than it has for one gesture.
 * @param atOnce how many more are shown at a time
 */
export function useFirstRows<Item>(items: readonly Item[], atOnce = 40): FirstRows<Item> {
  const [most, setMost] = useState(atOnce);
  const shown = items.slice(0, most);
  return { shown, hidden: items.length - shown.length, showMore: () => setMost(most + atOnce) };
}

type MoreRowsProps = { readonly hidden: number; readonly what: string; readonly onMore: () => void };

/** Leads to the rows that are not shown yet; nothing where all are. */
export function MoreRows({ hidden, what, onMore }: MoreRowsProps) {
  if (hidden <= 0) return null;
  return (
    <p className="more-rows">
      <Button onPress={onMore}>{uiWords.firstRows.showMore(counted(hidden, what))}</Button>
    </p>
  );
}
