import axe from 'axe-core';
import type { Page } from 'playwright-core';

type Axe = typeof axe;
type WithAxe = { axe?: Axe; textSeen?: Map<string, Set<string>>; textNew?: HTMLElement[] };

/** What axe finds on the page as it is now, one line for each place; checks WCAG 2.0 to 2.2, A and AA, and its best practices. */
export async function accessFaults(page: Page): Promise<readonly string[]> {
  await bringAxe(page);
  return page.evaluate(async () => {
    const found = await (window as unknown as { axe: Axe }).axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      resultTypes: ['violations'],
      iframes: false,
    });
    const text = (element: Element | null) => (element?.textContent ?? '').replace(/\s+/g, '');
    const parts = (element: Element | null, attribute: string) =>
      (element?.getAttribute(attribute) ?? '').split(' ').map((id) => text(document.getElementById(id)));
    // A row whose key and reason are its description shows more words than its name has, and begins with its name.
    const isDescribed = (element: Element | null) => {
      const [name, more] = [parts(element, 'aria-labelledby').join(''), parts(element, 'aria-describedby')];
      const left = more.reduce((rest, part) => rest.replace(part, ''), text(element).replace(name, ''));
      return name !== '' && text(element).startsWith(name) && left === '';
    };
    // A list that a field controls is scrolled by the arrow keys of that field.
    const isControlled = (element: Element | null) =>
      element?.role === 'listbox' && document.querySelector(`input[aria-controls="${element.id}"]`) !== null;
    const isSound = (rule: string, element: Element | null) =>
      (rule === 'label-content-name-mismatch' && isDescribed(element)) ||
      (rule === 'scrollable-region-focusable' && isControlled(element));
    const places = found.violations.map((each) => ({
      ...each,
      nodes: each.nodes.filter((node) => !isSound(each.id, document.querySelector(String(node.target)))),
    }));
    return places.flatMap((each) =>
      each.nodes.map((node) => `${each.id}: ${String(node.target)}: ${node.failureSummary ?? ''}`.replace(/\s+/g, ' ')),
    );
  });
}

/** How the page can be asked to look, besides light. */
export const LOOKS = [
  { name: 'dark', media: { colorScheme: 'dark' } },
  { name: 'more contrast', media: { contrast: 'more' } },
  { name: 'colours of the system', media: { forcedColors: 'active' } },
  { name: 'more contrast, dark', media: { contrast: 'more', colorScheme: 'dark' } },
  { name: 'colours of the system, dark', media: { forcedColors: 'active', colorScheme: 'dark' } },
] as const;
const AS_IT_IS = { colorScheme: 'light', contrast: 'no-preference', forcedColors: 'none' } as const;

/**
 * Text without enough contrast in other looks. The page is the same in all of them but for its colours, so only these are asked for, and
 * only where text stands that is of another kind than all that was asked about before in that look.
 */
export async function contrastFaults(page: Page, looks: readonly (typeof LOOKS)[number][]): Promise<readonly string[]> {
  await bringAxe(page);
  const faults: string[] = [];
  for (const { name, media } of looks) {
    if ((await page.evaluate(findNewText, name)) === 0) continue;
    await page.emulateMedia({ ...AS_IT_IS, ...media });
    const found = await page.evaluate(async () => {
      const { axe: runner, textNew = [] } = window as unknown as WithAxe;
      if (runner === undefined || textNew.length === 0) return [];
      const { violations } = await runner.run(
        { include: textNew },
        { runOnly: { type: 'rule', values: ['color-contrast'] }, resultTypes: ['violations'], iframes: false },
      );
      return violations.flatMap(({ nodes }) =>
        nodes.map((node) => `${String(node.target)}: ${node.any[0]?.message ?? ''}`),
      );
    });
    faults.push(...found.map((fault) => `${name}: ${fault}`));
  }
  await page.emulateMedia(AS_IT_IS);
  return faults;
}

async function bringAxe(page: Page): Promise<void> {
  if (await page.evaluate(() => !('axe' in window))) await page.evaluate(axe.source);
}

/** Runs in the page: keeps the elements with text of a kind that is new to a look, told by class and state of it and what it stands in. */
function findNewText(look: string): number {
  const known = window as unknown as WithAxe;
  known.textSeen ??= new Map();
  const seen = known.textSeen.get(look) ?? new Set();
  known.textSeen.set(look, seen);
  const kindOf = (element: Element | null, levels: number): string => {
    if (element === null || levels === 0) return '';
    const states = ['aria-selected', 'aria-pressed', 'aria-current', 'aria-disabled', 'aria-invalid', 'data-focused'];
    const shown = states.filter((state) => element.hasAttribute(state)).map((s) => `${s}=${element.getAttribute(s)}`);
    const own = `${element.tagName}.${element.getAttribute('class') ?? ''}${shown.join()}`;
    return `${own}<${kindOf(element.parentElement, levels - 1)}`;
  };
  const fresh: HTMLElement[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const element = node.parentElement;
    if (element === null || (node.textContent ?? '').trim() === '' || !element.checkVisibility()) continue;
    const kind = kindOf(element, 5);
    if (seen.has(kind)) continue;
    seen.add(kind);
    fresh.push(element);
  }
  known.textNew = fresh;
  return fresh.length;
}
