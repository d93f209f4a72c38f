import type { Page } from 'playwright-core';

/** Presses Tab until what has the focus matches a selector; fails when that takes too long, as a trap would. */
export function tabTo(page: Page, wanted: string, most = 120): Promise<void> {
  return tabUntil(page, wanted, most, () =>
    page.evaluate((selector) => document.activeElement?.matches(selector) ?? false, wanted),
  );
}

/** The same for a button with these words. */
export function tabToButton(page: Page, words: string, most = 120): Promise<void> {
  return tabUntil(page, words, most, async () => {
    const has = await page.evaluate(() => document.activeElement?.textContent?.trim());
    return has === words;
  });
}

async function tabUntil(page: Page, wanted: string, most: number, isThere: () => Promise<boolean>): Promise<void> {
  for (let press = 0; press < most; press += 1) {
    if (await isThere()) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`${most} presses of Tab did not reach ${wanted}`);
}
