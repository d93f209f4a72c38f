import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { emptyBook, writeBook } from '../../core/book/index.ts';
import { sampleBook } from '../support/samples.ts';
import { describeWithChromium } from './chromium.ts';
import { chooseCommand, type Desk, goToRoom, openDesk } from './desk.ts';

const LIST = `id,name,address,area (sq ft),gate (in)
a-1,Sorrel 1,1 Sorrel Way,8000,36
a-2,Sorrel 2,2 Sorrel Way,9500,48
`;

describeWithChromium('the first start', () => {
  let desk: Desk;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'swardway-first-'));
    await writeFile(path.join(folder, 'Spring_list.csv'), LIST);
    await writeFile(path.join(folder, 'nothing.csv'), 'id,name\n');
    await writeFile(path.join(folder, 'broken.kml'), '<kml><Document>');
    desk = await openDesk({ words: [] });
    await desk.page.getByRole('button', { name: 'Look at the sample' }).waitFor();
  });
  afterAll(async () => {
    await desk?.close();
    if (folder !== undefined) await rm(folder, { recursive: true, force: true });
  });

  const choose = async (file: string) => {
    const chooser = desk.page.waitForEvent('filechooser');
    await desk.page.getByRole('button', { name: 'Import my list' }).click();
    await (await chooser).setFiles(path.join(folder, file));
  };
  const toWelcome = async () => {
    await chooseCommand(desk.page, 'Book', 'Start or open a book');
    await desk.page.getByRole('button', { name: 'Look at the sample' }).waitFor();
  };

  test('a list that holds no lawns says why and leaves the welcome page as it is', async () => {
    const { page } = desk;
    for (const file of ['nothing.csv', 'broken.kml']) {
      await choose(file);
      const words = await page.getByRole('alert').textContent();
      expect(words?.length, file).toBeGreaterThan(20);
      expect(words, file).toMatch(/Nothing (of it was taken over|was changed)\./);
      await page.getByRole('button', { name: 'Look at the sample' }).waitFor();
      expect(await page.getByText('No book has been opened').count(), file).toBe(1);
      await page.getByRole('button', { name: 'Close this notice' }).click();
    }
  });

  test('a list begins a book that is called like it, and shows what would go in', async () => {
    const { page } = desk;
    await choose('Spring_list.csv');
    await page.getByRole('dialog', { name: 'Spring_list.csv' }).waitFor();
    expect(await page.locator('.book-title').textContent()).toBe('Spring list');
    await page.keyboard.press('Escape');
    await toWelcome();
  });

  test('an empty book opens in Ground and says what to do', async () => {
    const { page } = desk;
    await page.getByLabel('Name of the new book').fill('Mine');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'No lawns yet' }).waitFor();
    await toWelcome();
  });

  test('a lawn is drawn in an empty book without looking for a place first', async () => {
    const { page } = desk;
    await page.getByLabel('Name of the new book').fill('Drawn');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'No lawns yet' }).waitFor();
    await page.keyboard.press('l');
    const map = page.locator('.map');
    for (const [x, y] of [
      [300, 200],
      [420, 200],
      [420, 320],
    ] as const) {
      await map.click({ position: { x, y } });
    }
    await map.dblclick({ position: { x: 300, y: 320 } });
    await page.getByRole('option').first().waitFor();
    // 120 by 120 px at zoom 18.5 and 40 degrees north are about 39 m by 39 m: 16,000 ft2 and not a county.
    const text = (await page.getByRole('option').first().textContent()) ?? '';
    const area = Number(/([\d,]+) ft²/.exec(text)?.[1]?.replaceAll(',', ''));
    expect(area).toBeGreaterThan(10_000);
    expect(area).toBeLessThan(25_000);
    await toWelcome();
  });

  test('the sample plans itself, and the tour goes through it by the keyboard and is left by Esc', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'Look at the sample' }).click();
    const tour = page.getByRole('region', { name: 'Tour' });
    await tour.waitFor({ timeout: 60_000 });
    for (const title of ['Ground', 'Shed', 'Round', 'Day: where', 'Day: who']) {
      await tour.getByRole('heading', { name: new RegExp(`^${title}`) }).waitFor();
      await page.locator('.tour-ring').waitFor();
      if (title === 'Day: where') expect(await tour.textContent()).toMatch(/at \d+:\d\d [ap]m, .* in the middle of /);
      await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Next');
      await page.keyboard.press('Enter');
    }
    await tour.getByRole('heading', { name: /^Paper/ }).waitFor();
    // It blocks nothing, and what it points at may be gone.
    await goToRoom(page, 'Ground');
    await page.getByRole('option').first().click();
    expect(await tour.isVisible()).toBe(true);
    await page.keyboard.press('Escape');
    await tour.waitFor({ state: 'detached' });
    expect(await page.locator('.list-item[aria-selected="true"]').count()).toBe(1);
  });

  test('it is not taken again by itself, but from the menu', async () => {
    const { page } = desk;
    await toWelcome();
    await page.getByRole('button', { name: 'Look at the sample' }).click();
    // The stop in whose middle a compartment runs dry, its fit table, and the levels at that moment are on the screen at once.
    await page.locator('.ribbon .cursor-time').waitFor();
    await page.locator('.fit-table').waitFor();
    expect(await page.locator('.ribbon-readout').textContent()).toMatch(/refill .* after [\d,]+ ft²/);
    expect(await page.getByRole('region', { name: 'Tour' }).count()).toBe(0);
    await chooseCommand(page, 'Help', 'Take the tour');
    await page.getByRole('button', { name: 'Leave the tour' }).click();
    await page.getByRole('region', { name: 'Tour' }).waitFor({ state: 'detached' });
  });
});

const whole = sampleBook('residential-day');
const bare = emptyBook('bare', 'Bare');
const shed = {
  machines: whole.machines,
  handMethods: whole.handMethods,
  fillPoints: whole.fillPoints,
  rigs: whole.rigs,
  products: whole.products,
  mixes: whole.mixes,
  treatments: whole.treatments,
};
const BOOKS = [
  ['an empty book', bare],
  ['lawns alone', { ...bare, properties: whole.properties }],
  ['lawns and machines', { ...bare, properties: whole.properties, ...shed }],
  ['a round without a plan', whole],
  // A shift of a minute: no lawn finds a place.
  ['a plan without a stop', { ...whole, rigs: whole.rigs.map((rig) => ({ ...rig, shiftMin: 1, overtimeMin: 0 })) }],
] as const;
/** Rooms, and the views of the Round room, whose middle shows nothing before there is something to show. */
const PLACES = ['Ground', 'Round', 'Day', 'Paper'] as const;
const VIEWS = ['Plan', 'When', 'Calendar', 'Programmes', 'Season', 'Buy', 'Fleets'] as const;

describeWithChromium('empty places', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'swardway-empty-'));
  });
  afterAll(async () => {
    await rm(folder, { recursive: true, force: true });
  });

  /** Every message of emptiness on the screen has words and a button that can be used. */
  async function look(page: Page, where: string): Promise<number> {
    const empties = page.locator('.empty:visible');
    const count = await empties.count();
    for (let at = 0; at < count; at += 1) {
      const empty = empties.nth(at);
      expect((await empty.getByRole('heading').textContent())?.length, where).toBeGreaterThan(5);
      const buttons = empty.locator('button:not([aria-disabled])');
      expect(await buttons.count(), `${where}: ${await empty.textContent()}`).toBeGreaterThan(0);
    }
    return count;
  }

  test('say in every room what belongs there, and have a button that leads on', async () => {
    const file = path.join(folder, 'book.json');
    await writeFile(file, writeBook({ ...bare, id: 'first' }));
    const desk = await openDesk({ words: [file] });
    const { page } = desk;
    try {
      await page.locator('.book-title').waitFor();
      for (const [name, book] of BOOKS) {
        const next = path.join(folder, `${name.replaceAll(' ', '-')}.json`);
        await writeFile(next, writeBook({ ...book, name }));
        const chooser = page.waitForEvent('filechooser');
        await page.keyboard.press('Control+o');
        await (await chooser).setFiles(next);
        await page.locator('.book-title', { hasText: name }).waitFor();
        if (name === 'a plan without a stop') {
          await goToRoom(page, 'Day');
          await page.getByRole('button', { name: 'Plan this round' }).click();
          await page.getByRole('heading', { name: 'No stop is left in this plan' }).waitFor({ timeout: 60_000 });
        }
        const found = new Map<string, number>();
        for (const place of PLACES) {
          await goToRoom(page, place);
          found.set(place, await look(page, `${name}, ${place}`));
          for (const view of place === 'Round' ? VIEWS : []) {
            await page.getByRole('tab', { name: view, exact: true }).click();
            found.set(view, await look(page, `${name}, ${view}`));
          }
        }
        await goToRoom(page, 'Shed');
        for (const shelf of await page.getByRole('listbox', { name: 'Shelves' }).getByRole('option').all()) {
          await shelf.click();
          const title = (await shelf.textContent()) ?? '';
          // What holds for the whole book is a form, not a list.
          if (!/^(Money|Roads)/.test(title)) await look(page, `${name}, ${title}`);
        }
        if (name !== 'a plan without a stop' && name !== 'a round without a plan')
          for (const view of ['Plan', 'When', 'Calendar', 'Buy', 'Fleets'])
            expect(found.get(view), `${name}: ${view}`).toBeGreaterThan(0);
        for (const place of ['Day', 'Paper']) expect(found.get(place), `${name}: ${place}`).toBeGreaterThan(0);
      }
    } finally {
      await desk.close();
    }
  }, 120_000);
});
