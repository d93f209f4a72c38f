import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeBook } from '../../core/book/index.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk } from './desk.ts';
import { seasonBook } from './season-book.ts';

/** In which part of the window the focus is; 'page' where nothing has it. */
const focusIn = (page: Page) =>
  page.evaluate(() => {
    const { activeElement } = document;
    if (activeElement === null || activeElement === document.body) return 'page';
    return activeElement.closest('.panel, main, header, [role="dialog"], .notice')?.className ?? 'elsewhere';
  });

describeWithChromium('habits of the window', () => {
  let desk: Desk;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'swardway-habits-'));
    const file = path.join(folder, 'season.json');
    await writeFile(file, writeBook(seasonBook('mixed-day')));
    desk = await openDesk({ words: [file] });
    await desk.page.getByRole('option').first().waitFor();
  });
  afterAll(async () => {
    await desk?.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('letters in the list of lawns find a lawn by a word of its name, or draw where they are keys of a tool', async () => {
    const { page } = desk;
    const list = page.getByRole('listbox', { name: 'Lawns' });
    await list.focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.type('wea');
    expect(await list.getByRole('option', { selected: true }).textContent()).toContain('Weavers Hall');
    // A pause ends the word. Now Z is the key of a tool, though there are words with it in some lists.
    await page.waitForTimeout(800);
    await page.keyboard.type('z');
    await page.getByRole('button', { name: 'Choose', exact: true, pressed: false }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Choose', exact: true, pressed: true }).waitFor();
  });

  test('the focus stays in the window when what had it is taken away', async () => {
    const { page } = desk;
    await goToRoom(page, 'Ground');
    await page.getByRole('option', { name: 'Weavers Hall' }).click();
    await page.getByRole('button', { name: /^Remove the selected lawn/ }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => focusIn(page)).toMatch(/^panel/);
    await page.getByRole('region', { name: 'Notice' }).getByRole('button', { name: 'Undo' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('option', { name: 'Weavers Hall' }).waitFor();
    await expect.poll(() => focusIn(page)).toMatch(/^(panel|middle)/);
    for (const room of [2, 3, 4, 1]) {
      await page.keyboard.press(`Alt+${room}`);
      await expect.poll(() => focusIn(page)).not.toBe('page');
    }
    await page.keyboard.press('?');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => focusIn(page)).not.toMatch(/page|dialog/);
    await goToRoom(page, 'Round');
    await page.getByRole('button', { name: 'Remove this round' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => focusIn(page)).toMatch(/^panel panel-left/);
    await page.keyboard.press('Control+z');
  });

  test('removing a treatment tells what still names it, and what names it can be put right', async () => {
    const { page } = desk;
    await goToRoom(page, 'Shed');
    await page.getByRole('option', { name: /^Treatments/ }).click();
    await page
      .getByRole('button', { name: /^Remove/ })
      .first()
      .click();
    const notice = page.getByRole('region', { name: 'Notice' });
    await notice.getByText(/is removed; still named by round Feed and pre-emergent and 1 more: see To check/).waitFor();
    await goToRoom(page, 'Round');
    const fix = page.getByRole('button', { name: /^Take it out of the round/ });
    await fix.first().waitFor();
    expect(await fix.count()).toBe(2);
    await fix.first().focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => fix.count()).toBe(1);
    await expect.poll(() => focusIn(page)).not.toBe('page');
    await page.keyboard.press('Control+z');
    await expect.poll(() => fix.count()).toBe(2);
    await page.keyboard.press('Control+z');
    await fix.first().waitFor({ state: 'detached' });
  });

  test.each([1440, 1280, 1024, 960, 720, 640])(
    'nothing in the header lies over anything else in a window %i px wide',
    async (width) => {
      const { page } = desk;
      // A window of 1440 by 900 is 720 by 450 for the page when it is enlarged to 200 %.
      await page.setViewportSize({ width, height: 700 });
      const faults = await page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('.header .step')].flatMap((step) => {
          const button = step.querySelector('button');
          const name = step.querySelector('.step-title')?.textContent ?? '';
          const inner = [...step.querySelectorAll('.step-title, .step-attention, .step-result')].map((each) =>
            each.getBoundingClientRect(),
          );
          const [own] = [step.getBoundingClientRect()];
          const over = inner.some((one, at) =>
            inner.some(
              (other, later) =>
                later > at &&
                one.left < other.right - 1 &&
                other.left < one.right - 1 &&
                one.top < other.bottom - 2 &&
                other.top < one.bottom - 2,
            ),
          );
          // The joint to the next step reaches eight pixels in.
          const out = inner.some(
            (each) => each.right > own.right - 6 || each.bottom > own.bottom + 1 || each.top < own.top,
          );
          return [
            ...(over ? [`${name}: words over words`] : []),
            ...(out ? [`${name}: words beyond its edge`] : []),
            ...(button !== null && button.scrollWidth > button.clientWidth ? [`${name}: cut off`] : []),
          ];
        }),
      );
      expect(faults).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    },
  );
});
