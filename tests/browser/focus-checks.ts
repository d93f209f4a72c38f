import type { Page } from 'playwright-core';

/**
 * What can have the focus and does not show it: neither it nor what it marks has an outline of at least 2 px then
 * (WCAG 2.2, 2.4.7; the width is that of 2.4.13). Each kind of element is tried once on a page.
 */
export function focusFaults(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const known = window as unknown as { focusSeen?: Set<string> };
    known.focusSeen ??= new Set();
    const before = document.activeElement;
    // As after a key: what is focused by the mouse alone need not show it.
    document.dispatchEvent(new KeyboardEvent('keydown', { key: 'F8', bubbles: true }));
    const faults: string[] = [];
    const wanted = 'a[href], button, input, select, textarea, summary, [tabindex]:not([tabindex="-1"])';
    for (const element of document.querySelectorAll<HTMLElement>(wanted)) {
      if (element.closest('[inert], [aria-hidden="true"]') !== null || !element.checkVisibility()) continue;
      if (element.matches(':disabled, [data-focus-scope-start], [data-focus-scope-end]')) continue;
      const kind = `${element.tagName}.${element.className}<${element.parentElement?.className ?? ''}`;
      if (known.focusSeen.has(kind)) continue;
      known.focusSeen.add(kind);
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
      element.focus({ focusVisible: true, preventScroll: true } as FocusOptions);
      const active = document.activeElement;
      if (active === null || active === document.body) continue;
      const shows = [active, ...active.querySelectorAll('[aria-selected="true"], [data-focus-visible]')].some(
        (each) => {
          const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(each);
          return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2 && outlineColor !== 'rgba(0, 0, 0, 0)';
        },
      );
      if (!shows) faults.push(`${kind} ${element.textContent?.slice(0, 30) ?? ''}`);
    }
    if (before instanceof HTMLElement) before.focus({ preventScroll: true });
    return faults;
  });
}

/** What moves by itself though the system asks for none of it: transitions and animations of style sheets, of elements and of scripts. */
export function motionFaults(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const faults = document
      .getAnimations()
      .map((each) => `runs: ${(each.effect as KeyframeEffect | null)?.target?.className ?? ''}`);
    for (const element of document.querySelectorAll('*')) {
      for (const part of [undefined, '::before', '::after']) {
        const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(element, part);
        const moves = transitionDuration.split(', ').some((each) => Number.parseFloat(each) > 0);
        if (moves || animationName !== 'none' || scrollBehavior === 'smooth')
          faults.push(`${element.tagName}.${element.getAttribute('class') ?? ''}${part ?? ''}`);
      }
    }
    return faults;
  });
}

/**
 * Whether the focus has fallen to the page itself, from where who works by the keyboard begins again at the menu. What closes may take a
 * moment to hand it on. Where a dialog is open, the focus has to be within it.
 */
export async function focusLost(page: Page): Promise<string | null> {
  let found = '';
  for (let look = 0; look < 15; look += 1) {
    found = await page.evaluate(() => {
      const active = document.activeElement;
      if (active === null || active === document.body) return 'the focus is on the page itself';
      const dialog = [...document.querySelectorAll('[role="dialog"], [role="menu"]')].at(-1);
      if (dialog === undefined || dialog.contains(active)) return '';
      return `the focus is not within what is open, but on ${active.tagName} ${active.textContent?.slice(0, 40) ?? ''}`;
    });
    if (found === '') return null;
    await page.waitForTimeout(100);
  }
  return found;
}
