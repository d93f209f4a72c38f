import { useEffect, useState } from 'react';
import type { Box } from './place-panel.ts';

/** How often it is looked where the anchor is now, ms: panels are sized, lists are scrolled, and a room takes a moment to appear. */
const LOOK_MS = 200;

/** Where on the screen the first of the selectors is that is to be seen, followed as it moves; null while there is none. */
export function useAnchor(selectors: readonly string[]): Box | null {
  const [box, setBox] = useState<Box | null>(null);
  useEffect(() => {
    let brought: Element | null = null;
    const look = () => {
      const found = anchorOf(selectors);
      if (found !== null && found !== brought) {
        brought = found;
        found.scrollIntoView({ block: 'nearest', inline: 'nearest' });
      }
      const next = found === null ? null : boxOf(found);
      setBox((before) => (JSON.stringify(before) === JSON.stringify(next) ? before : next));
    };
    look();
    const timer = window.setInterval(look, LOOK_MS);
    return () => window.clearInterval(timer);
  }, [selectors]);
  return box;
}

function anchorOf(selectors: readonly string[]): Element | null {
  for (const selector of selectors) {
    const found = document.querySelector(selector);
    if (found?.checkVisibility() === true) return found;
  }
  return null;
}

function boxOf(element: Element): Box {
  const { left, top, width, height } = element.getBoundingClientRect();
  return { left, top, width, height };
}
