import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** What axe finds on the page as it is now, one line for each place; checks WCAG 2.0 to 2.2, A and AA, and its best practices. */
export async function accessFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const found = await (window as unknown as { axe: typeof axe }).axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      iframes: false,
    });
    return found.violations.flatMap((each) =>
      each.nodes.map((node) => `${each.id}: ${String(node.target)}: ${node.failureSummary ?? ''}`.replace(/\s+/g, ' ')),
    );
  });
}
