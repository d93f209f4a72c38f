import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { accessFaults, contrastFaults, LOOKS } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import type { Desk } from './desk.ts';
import { focusFaults, focusLost, motionFaults } from './focus-checks.ts';
import { openPlaces, PLACES } from './places.ts';
import { reflowFaults, withWideText } from './reflow-checks.ts';

/** With SWARDWAY_EVERY_LOOK=1 every place is looked at in every look and every size of window; else looks and sizes take turns. */
const everyLook = process.env.SWARDWAY_EVERY_LOOK === '1';

/** 1100 by 700 is the least that is comfortable, 550 by 350 the same at 200 % (WCAG 2.2, 1.4.4), 320 wide is 1.4.10. */
const SIZES = [
  { width: 1100, height: 700 },
  { width: 550, height: 350 },
  { width: 320, height: 640 },
] as const;
const USUAL = { width: 1440, height: 900 } as const;

async function reflowAt(page: Page, sizes: readonly { readonly width: number; readonly height: number }[]) {
  const faults: string[] = [];
  for (const size of sizes) {
    await page.setViewportSize(size);
    // What follows the size by a script does so before the next picture.
    await page.evaluate(() => new Promise(requestAnimationFrame));
    faults.push(...(await reflowFaults(page)).map((fault) => `${size.width} px: ${fault}`));
  }
  await page.setViewportSize(USUAL);
  return faults;
}

/** Whether the region in which the program says things is shut off by something that is open. */
const isStatusHeard = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('.window > div > [role="status"]')].some(
      (each) => each.closest('[inert], [aria-hidden="true"]') === null,
    ),
  );

/** Titles of views, shelves and sheets that the page shows, to be found in the list. */
const titlesShown = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('[role="tab"], [role="option"]:has(.shelf-row) .row-title')].map(
      (each) => each.textContent?.trim() ?? '',
    ),
  );

describeWithChromium('every place of the program', () => {
  let desk: Desk;
  const titles = new Set<string>();
  beforeAll(async () => {
    desk = await openPlaces(USUAL);
    await desk.page.getByRole('option').first().waitFor();
  });
  afterAll(async () => {
    await desk?.close();
  });

  describe.each(PLACES)('$name', ({ name, go, leave }) => {
    test('can be read, reached and seen', async () => {
      const { page } = desk;
      await go(page);
      expect.soft(await focusLost(page), 'focus on coming').toBeNull();
      for (const title of await titlesShown(page)) titles.add(title);
      const turn = PLACES.findIndex((each) => each.name === name);
      const looks = LOOKS.filter((_, index) => everyLook || index === turn % LOOKS.length);
      const sizes = SIZES.filter((_, index) => everyLook || index === turn % SIZES.length);
      expect.soft(await accessFaults(page), 'axe').toEqual([]);
      expect.soft(await contrastFaults(page, looks), 'contrast').toEqual([]);
      expect.soft(await reflowAt(page, sizes), 'small windows').toEqual([]);
      expect.soft(await withWideText(page, () => reflowFaults(page)), 'wide text').toEqual([]);
      expect.soft(await motionFaults(page), 'motion').toEqual([]);
      expect.soft(await focusFaults(page), 'focus').toEqual([]);
      expect.soft(await isStatusHeard(page), 'what the program says is heard').toBe(true);
      await leave?.(page);
      expect.soft(await focusLost(page), 'focus on leaving').toBeNull();
    });
  });

  test('the list leaves out no view, shelf or sheet', () => {
    const named = new Set(PLACES.map(({ name }) => name.replace(/^\w+: /, '')));
    expect(titles.size).toBeGreaterThan(25);
    expect([...titles].filter((title) => !named.has(title))).toEqual([]);
  });

  test('nothing complained on the way', () => {
    expect(desk.complaints).toEqual([]);
  });
});
