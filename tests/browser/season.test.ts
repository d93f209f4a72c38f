import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeBook } from '../../core/book/index.ts';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, doCommand, goToRoom, openDesk, planRound } from './desk.ts';
import { seasonBook, startedSeason } from './season-book.ts';

/** Figures in US units, and dates in figures, that the page shows, without names of the sample that hold one. */
function usFigures(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const names = /Hose reel 200 ft|Hand spreader 40 lb/g;
    const figures =
      /[^.;]{0,30}\d ?(?:ft²|ft2|gal|fl oz|lb|oz|mph|°F|mi|am|pm)(?![\w²])|per 1,000 ft²|[^.;]{0,30}\d{4}-\d\d-\d\d/g;
    const texts = [...document.querySelectorAll<HTMLElement>('body *')].flatMap((element) => [
      ...[...element.childNodes].flatMap((node) => (node.nodeType === Node.TEXT_NODE ? [node.textContent ?? ''] : [])),
      ...['title', 'aria-label', 'aria-valuetext'].map((name) => element.getAttribute(name) ?? ''),
      element instanceof HTMLInputElement && element.type !== 'date' ? element.value : '',
    ]);
    return texts.flatMap((text) => text.replace(names, 'NAME').match(figures) ?? []);
  });
}

describeWithChromium('a season with records', () => {
  test('tells in the arithmetic of a limit on which day each share went down, in the order of dates that is chosen', async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'swardway-season-'));
    const file = path.join(folder, 'season.json');
    await writeFile(file, writeBook(startedSeason()));
    const desk = await openDesk({ words: [file] });
    try {
      const { page } = desk;
      await goToRoom(page, 'Round');
      await page.getByRole('tab', { name: 'Season' }).click();
      await page.getByRole('listbox', { name: 'Lawns of the season' }).getByRole('option').first().click();
      const arithmetic = page.getByText('in round Feed and pre-emergent (recorded Mon Mar 8, 2027)');
      await arithmetic.first().waitFor();
      await doCommand(page, 'dates with the day first');
      await page.getByText('in round Feed and pre-emergent (recorded Mon 8 Mar 2027)').first().waitFor();
      expect(await page.locator('main').textContent()).not.toMatch(/\d{4}-\d\d-\d\d/);
    } finally {
      await desk.close();
      await rm(folder, { recursive: true, force: true });
    }
  });
});

describeWithChromium('the season and what to buy', () => {
  let desk: Desk;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'swardway-season-'));
    const file = path.join(folder, 'season.json');
    await writeFile(file, writeBook(seasonBook()));
    desk = await openDesk({ words: [file] });
  });
  afterAll(async () => {
    await desk?.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('the ledger shows lawns by limits, and the arithmetic of the lawn that is chosen by keys', async () => {
    const { page } = desk;
    await goToRoom(page, 'Round');
    await page.getByRole('tab', { name: 'Season' }).click();
    const lawns = page.getByRole('listbox', { name: 'Lawns of the season' });
    await lawns.waitFor();
    const filter = page.getByLabel('Lawns that are shown');
    await filter.selectOption({ label: 'over a limit' });
    await page.getByText('No lawn is so far along.').waitFor();
    await filter.selectOption({ label: 'over 80 % of a limit' });
    await lawns.focus();
    await page.keyboard.press('Home');
    expect(await lawns.getByRole('option', { selected: true }).textContent()).toMatch(/, a year 90 %/);
    await page
      .getByText(
        /0\.45 fl oz in round .* \+ 0\.45 fl oz in round Late = 0\.9 fl oz per 1,000 ft² in 2027, its label allows 1 fl oz/,
      )
      .first()
      .waitFor();
    expect(await accessFaults(page)).toEqual([]);
  });

  test('a cap is typed in, counts at once, and can be taken back', async () => {
    const { page } = desk;
    // 0.9 fl oz hold 0.028125 lb: over a cap of 0.025.
    const cap = page.getByLabel('Most of Holdanil, lb per 1,000 ft² in a year');
    expect(await cap.inputValue()).toBe('0.04');
    await cap.fill('0.025');
    await cap.press('Enter');
    const chosen = page.getByRole('listbox', { name: 'Lawns of the season' }).getByRole('option', { selected: true });
    await chosen.getByText(/over: 113 %/).waitFor();
    await page.getByLabel('Most of a new cap, lb per 1,000 ft² in a year').fill('3');
    await page.getByLabel('Most of a new cap, lb per 1,000 ft² in a year').press('Enter');
    await page.getByRole('button', { name: 'Add this cap' }).click();
    await page.getByLabel('Most of nitrogen, lb per 1,000 ft² in a year').waitFor();
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await chosen.getByText(/^70 %/).waitFor();
  });

  test('what to buy comes from the plan with the store taken off, and costs add up', async () => {
    const { page } = desk;
    await page.getByRole('tab', { name: 'Plan' }).click();
    await planRound(page, 1);
    await page.getByRole('tab', { name: 'Buy' }).click();
    await page.getByLabel('Needed from').fill('2027-03-01');
    const lines = page.getByRole('region', { name: /^By round and week/ });
    await lines.getByText('Mon Mar 15, 2027').waitFor();
    expect(await lines.getByText('not planned yet', { exact: true }).count()).toBe(1);
    expect(await lines.getByRole('row').nth(1).textContent()).toMatch(/20 fl oz/);
    const cost = page.getByRole('region', { name: /^Cost of/ });
    const figures = (await cost.locator('dl dd').allTextContents()).map((each) =>
      Math.round(Number(each.replace(/[$,]/g, '')) * 100),
    );
    const total = figures.at(-1);
    expect(figures.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBe(total);
    expect(await cost.getByRole('option').count()).toBeGreaterThan(5);
    expect(await accessFaults(page)).toEqual([]);
  });

  test('in metric units no view of Round and Day has a figure in US units, apart from names that hold one, nor a date in figures', async () => {
    const { page } = desk;
    await doCommand(page, 'metric units');
    await doCommand(page, 'clock of 24 hours');
    const found: string[] = [];
    const look = async (of: string, name: string) => {
      await page.getByRole('tab', { name, exact: true }).click();
      await page.waitForTimeout(250);
      found.push(...(await usFigures(page)).map((each) => `${of} ${name}: ${each}`));
    };
    await page.getByRole('tab', { name: 'Season' }).click();
    await page.getByRole('listbox', { name: 'Lawns of the season' }).getByRole('option').first().click();
    // The cap of 0.04 lb on 1,000 ft2 is 0.04 x 488.243 g on 100 m2.
    expect(await page.getByLabel('Most of Holdanil, g per 100 m² in a year').inputValue()).toBe('19.5297');
    for (const name of ['Plan', 'When', 'Calendar', 'Programmes', 'Season', 'Buy', 'Fleets']) await look('Round', name);
    await goToRoom(page, 'Day');
    await page.locator('.stop-item').nth(1).click();
    for (const name of ['Levels', 'Who can go', 'How sure', 'Morning']) await look('Day', name);
    expect([...new Set(found)]).toEqual([]);
  });

  test('a license that ends before a planned day is said in the shed', async () => {
    const { page } = desk;
    await goToRoom(page, 'Shed');
    await page
      .getByText(
        /On Mon May 17, 2027 \(round Late\) none of its applicators has a valid license: Ann until Sat May 1, 2027/,
      )
      .waitFor();
    expect(desk.complaints).toEqual([]);
  });
});
