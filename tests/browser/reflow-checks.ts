import type { Page } from 'playwright-core';

/** Where two directions of scrolling are in the nature of the thing (WCAG 2.2, 1.4.10: maps, tables, time lines), or a page of paper. */
const WIDE = [
  '.map-panel',
  '.ribbon',
  '.board-scroll',
  '.paper-page',
  '.levels-table',
  '.table-scroll',
  '.virtual-table',
  '.figure-list',
  '.picture-sheet',
  '.when-chart',
  ':has(> table)',
];

/**
 * What is out of reach or cut off at the present size of the window: boxes that lie outside of it to the side, parts that scroll
 * sideways though they hold no table, map or time line, and words that are cut off without standing in a tip as a whole.
 */
export function reflowFaults(page: Page): Promise<readonly string[]> {
  return page.evaluate((wide) => {
    const faults: string[] = [];
    const nameOf = (element: Element) =>
      `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} "${(element.textContent ?? '').trim().slice(0, 40)}"`;
    const isWide = (element: Element) => element.closest(wide.join()) !== null;
    const width = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth > width + 1)
      faults.push(`the page is ${document.documentElement.scrollWidth} px wide of ${width}`);
    const scrolls = (value: string) => value === 'auto' || value === 'scroll';
    for (const element of document.body.querySelectorAll<HTMLElement>('*')) {
      if (element.closest('.only-spoken, .only-printed, [aria-hidden="true"], svg, template') !== null) continue;
      if (!element.checkVisibility({ visibilityProperty: true })) continue;
      const style = getComputedStyle(element);
      const box = element.getBoundingClientRect();
      const tooWide = element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0;
      if (tooWide && scrolls(style.overflowX) && !isWide(element) && element.querySelector('table') === null)
        faults.push(`scrolls sideways, ${element.scrollWidth} of ${element.clientWidth} px: ${nameOf(element)}`);
      const hasText = [...element.childNodes].some(
        (node) => node.nodeType === Node.TEXT_NODE && (node.textContent ?? '').trim() !== '',
      );
      const isTool = element.matches('button, input, select, textarea, a, summary');
      if (!(hasText || isTool) || isWide(element)) continue;
      if (box.width > 0 && (box.right > width + 1 || box.left < -1))
        faults.push(`outside the window, ${Math.round(box.left)} to ${Math.round(box.right)} px: ${nameOf(element)}`);
      const isTold = element.closest('[title]') !== null;
      const cutAside = tooWide && style.overflowX === 'hidden';
      const cutBelow = style.overflowY === 'hidden' && element.scrollHeight > element.clientHeight + 2;
      if ((cutAside || cutBelow) && hasText && !isTold && element.clientHeight > 0)
        faults.push(`cut off ${cutAside ? 'to the side' : 'below'}: ${nameOf(element)}`);
    }
    return faults;
  }, WIDE);
}

/** Spacing of text as WCAG 2.2, 1.4.12 names it, for as long as a check takes. */
export async function withWideText<T>(page: Page, check: () => Promise<T>): Promise<T> {
  const sheet = await page.addStyleTag({
    content:
      '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }',
  });
  try {
    return await check();
  } finally {
    await sheet.evaluate((element) => (element as Element).remove());
  }
}
