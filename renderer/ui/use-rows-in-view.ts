import { type RefObject, type UIEvent, useLayoutEffect, useRef, useState } from 'react';
import { type RowRange, rowsInView } from './virtual-rows.ts';

type RowsInView<Box extends HTMLElement> = {
  /** Goes to the element that scrolls. */
  readonly box: RefObject<Box | null>;
  readonly onScroll: (event: UIEvent<Box>) => void;
  readonly heightPx: number;
  readonly range: RowRange;
};

/** Guess of the height until it is measured, px. */
const FIRST_PX = 600;

/** Which of many rows of one height have to be drawn, kept up as their box is scrolled and sized. */
export function useRowsInView<Box extends HTMLElement>(count: number, rowPx: number): RowsInView<Box> {
  const box = useRef<Box>(null);
  const [view, setView] = useState({ scrollPx: 0, heightPx: FIRST_PX });
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const observer = new ResizeObserver(() =>
      setView(({ scrollPx }) => ({ scrollPx, heightPx: element.clientHeight })),
    );
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return {
    box,
    onScroll: ({ currentTarget }) =>
      setView({ scrollPx: currentTarget.scrollTop, heightPx: currentTarget.clientHeight }),
    heightPx: view.heightPx,
    range: rowsInView(count, rowPx, view.scrollPx, view.heightPx),
  };
}
