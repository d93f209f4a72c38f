import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { describeWithChromium } from './chromium.ts';
import { type Desk, doCommand, goToRoom, openDesk, planRound } from './desk.ts';
import { tabTo, tabToButton } from './tab-to.ts';

/** The owner's and the dispatcher's story from start to printed sheet; the estimator's is in ground-story.test.ts. */

let desk: Desk | null = null;
afterEach(async () => {
  await desk?.close();
  desk = null;
});

async function open(sample: string): Promise<Page> {
  desk = await openDesk({ words: ['--sample', sample] });
  await desk.page.getByRole('option').first().waitFor();
  return desk.page;
}

/** Plans without a mouse, and ends the search when it has found something. */
async function plan(page: Page, words: string): Promise<void> {
  await doCommand(page, words);
  await page.getByText(/best so far: ./).waitFor({ timeout: 60_000 });
  await page.keyboard.press('Control+.');
  await page.getByRole('button', { name: 'Plan again' }).waitFor({ timeout: 60_000 });
  await page.getByRole('progressbar', { name: 'Planning' }).waitFor({ state: 'detached', timeout: 60_000 });
}

/** Shows another view of a room from the keyboard. */
async function view(page: Page, name: string): Promise<void> {
  await tabTo(page, '[role="tab"][aria-selected="true"]');
  for (let press = 0; press < 12; press += 1) {
    if ((await page.evaluate(() => document.activeElement?.textContent)) === name) return;
    await page.keyboard.press('ArrowRight');
  }
  throw new Error(`no view ${name}`);
}

async function sheetPrinted(page: Page, press: () => Promise<void>): Promise<string> {
  await page.frameLocator('iframe').getByRole('heading', { level: 1 }).first().waitFor();
  const download = page.waitForEvent('download', { timeout: 60_000 });
  await press();
  return (await download).suggestedFilename();
}

describeWithChromium('the owner', () => {
  test('gives a round its days, plans it, looks at limits and at what to buy, and prints the run sheet', async () => {
    const page = await open('four-day-round');
    await goToRoom(page, 'Round');
    await page.getByRole('tab', { name: 'Calendar' }).click();
    await page.getByRole('button', { name: 'Add the next working day' }).first().click();
    await page.getByText('5 working days').first().waitFor();
    await page.getByRole('tab', { name: 'Plan', exact: true }).click();
    await planRound(page, 2);
    await page.getByText('Every zone of the round has a place.').waitFor();
    await page.getByRole('tab', { name: 'Season' }).click();
    await page
      .getByRole('heading', { name: /Season|limits/i })
      .first()
      .waitFor();
    await page.getByRole('tab', { name: 'Buy' }).click();
    await page.getByRole('heading', { name: 'What to buy' }).waitFor();
    expect(await page.getByText('Forecrop 3 (invented)').count()).toBeGreaterThan(0);
    await goToRoom(page, 'Paper');
    const name = await sheetPrinted(page, () => page.getByRole('button', { name: 'Save as PDF' }).click());
    expect(name).toMatch(/^Run sheet.*\.pdf$/);
  });

  test('does the same without a mouse', async () => {
    const page = await open('residential-day');
    await page.keyboard.press('Alt+3');
    await view(page, 'Calendar');
    await tabToButton(page, 'Add the next working day');
    await page.keyboard.press('Enter');
    await page.getByText('2 working days').first().waitFor();
    await view(page, 'Plan');
    await plan(page, 'plan spring');
    await view(page, 'Season');
    await page
      .getByRole('heading', { name: /Season|limits/i })
      .first()
      .waitFor();
    await view(page, 'Buy');
    await page.getByRole('heading', { name: 'What to buy' }).waitFor();
    await page.keyboard.press('Alt+5');
    const name = await sheetPrinted(page, () =>
      tabToButton(page, 'Save as PDF').then(() => page.keyboard.press('Enter')),
    );
    expect(name).toMatch(/\.pdf$/);
  });
});

describeWithChromium('the dispatcher', () => {
  test('looks through the morning, takes a machine out, marks a stop done, and prints the run sheet', async () => {
    const page = await open('mixed-day');
    await planRound(page, 2);
    await goToRoom(page, 'Day');
    await page.getByRole('tab', { name: 'Morning' }).click();
    expect(await page.getByRole('heading', { name: /leaves .* home/ }).count()).toBe(2);
    await page.getByRole('tab', { name: 'Rigs' }).click();
    await page.getByText('Nothing: every rule holds.').waitFor();
    await page.getByRole('button', { name: 'Out of order…' }).click();
    await page.getByRole('dialog').getByRole('table', { name: 'Who can take over which lawn' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('tab', { name: 'Under way' }).click();
    await page
      .getByRole('button', { name: /: done$/ })
      .first()
      .click();
    await page.getByText(/^1 stop done/).waitFor();
    await goToRoom(page, 'Paper');
    const name = await sheetPrinted(page, () => page.getByRole('button', { name: 'Save as PDF' }).click());
    expect(name).toMatch(/^Run sheet.*\.pdf$/);
  });

  test('moves a stop besides, and does the same, without a mouse', async () => {
    const page = await open('mixed-day');
    await page.keyboard.press('Alt+3');
    await plan(page, 'plan feed');
    await page.keyboard.press('Alt+4');
    await view(page, 'Morning');
    expect(await page.getByRole('heading', { name: /leaves .* home/ }).count()).toBe(2);
    await view(page, 'Rigs');
    await page.getByText('Nothing: every rule holds.').waitFor();
    const names = () => page.locator('.board-row').first().locator('.board-name').allTextContents();
    const before = await names();
    await tabTo(page, '[data-stop]');
    await page.keyboard.press('Enter');
    await page.locator('[data-place]:focus').waitFor();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await expect.poll(names).toEqual([before[1], before[0], ...before.slice(2)]);
    await tabToButton(page, 'Out of order…');
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').getByRole('table', { name: 'Who can take over which lawn' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await view(page, 'Under way');
    await tabTo(page, '[aria-label$=": done"]');
    await page.keyboard.press('Enter');
    await page.getByText(/^1 stop done/).waitFor();
    await page.keyboard.press('Alt+5');
    const name = await sheetPrinted(page, () =>
      tabToButton(page, 'Save as PDF').then(() => page.keyboard.press('Enter')),
    );
    expect(name).toMatch(/\.pdf$/);
  });
});
