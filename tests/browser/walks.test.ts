import type { Locator, Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { describeWithChromium } from './chromium.ts';
import { type Desk, openDesk } from './desk.ts';

/**
 * The ways of the three people from the README's command to a sheet of paper, as docs/guide/first-ten-minutes.md tells them. Every press of
 * a button, of a key and every text that is typed counts, the command too; what the program does by itself does not.
 */
const MOST_ACTIONS = 12;

let desk: Desk | null = null;
afterEach(async () => {
  await desk?.close();
  desk = null;
});

type Walk = {
  readonly page: Page;
  readonly press: (what: Locator) => Promise<void>;
  readonly button: (name: string | RegExp) => Promise<void>;
  readonly room: (name: string) => Promise<void>;
  readonly key: (name: string) => Promise<void>;
  /** A press at a place of the map, in parts of its width and height. */
  readonly map: (x: number, y: number) => Promise<void>;
  readonly actions: () => number;
};

/** npm ci && npm start */
async function start(): Promise<Walk> {
  desk = await openDesk({ words: [] });
  const { page } = desk;
  let count = 1;
  const counted = async (work: Promise<void>): Promise<void> => {
    count += 1;
    await work;
  };
  return {
    page,
    press: (what) => counted(what.click()),
    button: (name) => counted(page.getByRole('button', { name }).first().click()),
    room: (name) =>
      counted(
        page
          .getByRole('button', { name: new RegExp(`^${name}`) })
          .first()
          .click(),
      ),
    key: (name) => counted(page.keyboard.press(name)),
    map: async (x, y) => {
      const box = await page.locator('.map').boundingBox();
      if (box === null) throw new Error('no map');
      await counted(page.mouse.click(box.x + x * box.width, box.y + y * box.height));
    },
    actions: () => count,
  };
}

/** Presses for the PDF, which has to come. */
async function paper({ page, button, actions }: Walk, name: RegExp): Promise<void> {
  await page.frameLocator('iframe').getByRole('heading', { level: 1 }).first().waitFor();
  const download = page.waitForEvent('download', { timeout: 60_000 });
  await button('Save as PDF');
  expect((await download).suggestedFilename()).toMatch(name);
  expect(actions()).toBeLessThanOrEqual(MOST_ACTIONS);
}

const sheet = (page: Page, name: string): Locator =>
  page.getByRole('listbox', { name: /Sheets/ }).getByRole('option', { name: new RegExp(`^${name}`) });

describeWithChromium('from the command to a sheet of paper', () => {
  test('the owner: a spring round, when it is of use, planned anew, what to order', async () => {
    const walk = await start();
    const { page } = walk;
    await walk.button('Look at the sample');
    await page.getByRole('region', { name: 'Tour' }).waitFor({ timeout: 60_000 });
    await walk.key('Escape');
    await walk.room('Round');
    await walk.press(page.getByRole('tab', { name: 'When' }));
    await walk.press(page.getByRole('tab', { name: 'Plan', exact: true }));
    await walk.button('Plan again');
    await page.getByRole('progressbar', { name: 'Planning' }).waitFor({ state: 'detached', timeout: 60_000 });
    await walk.press(page.getByRole('tab', { name: 'Buy' }));
    await page.getByRole('heading', { name: 'What to buy' }).waitFor();
    await walk.room('Paper');
    await walk.press(sheet(page, 'Round summary'));
    await paper(walk, /^Round summary.*\.pdf$/);
  });

  test('the dispatcher: where a fill runs out, who can go, a stop moved, the run sheet', async () => {
    const walk = await start();
    const { page } = walk;
    await walk.button('Look at the sample');
    await page.getByRole('region', { name: 'Tour' }).waitFor({ timeout: 60_000 });
    await walk.key('Escape');
    await walk.room('Day');
    await walk.press(page.getByRole('tab', { name: 'Who can go' }));
    await page.locator('table').first().waitFor();
    await walk.press(page.getByRole('tab', { name: 'Rigs' }));
    await walk.press(page.locator('.board-stop').nth(1));
    await walk.button(/^Take out$/);
    await walk.room('Paper');
    await paper(walk, /^Run sheet.*\.pdf$/);
  });

  test('the estimator: a new lawn drawn, its turf, the measure sheet', async () => {
    const walk = await start();
    const { page } = walk;
    await walk.button('Look at the sample');
    // The tour begins in Ground, and need not be left for it.
    await page.getByRole('region', { name: 'Tour' }).waitFor({ timeout: 60_000 });
    await walk.key('l');
    // Four corners, and the first once more.
    await walk.map(0.7, 0.38);
    await walk.map(0.8, 0.38);
    await walk.map(0.8, 0.48);
    await walk.map(0.7, 0.48);
    await walk.map(0.7, 0.38);
    await page.getByRole('heading', { name: '17 lawns' }).waitFor();
    await walk.room('Paper');
    await walk.press(sheet(page, 'Measure sheet'));
    await paper(walk, /^Measure sheet.*\.pdf$/);
  });
});
