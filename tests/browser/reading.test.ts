import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeWithChromium } from './chromium.ts';
import { chooseCommand, type Desk, doCommand, goToRoom, openDesk, planRound } from './desk.ts';

/** The text of the run sheet that the Paper room shows. */
async function runSheet(page: Page): Promise<string> {
  await goToRoom(page, 'Paper');
  await page.getByRole('listbox', { name: 'Sheets' }).getByRole('option', { name: 'Run sheet' }).click();
  const frame = page.frameLocator('iframe.paper-page');
  await frame.getByText('Invented data').first().waitFor();
  return (await frame.locator('body').ariaSnapshot()).replace(/\s+/g, ' ');
}

/** Times of day, as minutes after midnight, in the order of the sheet. */
function minutesIn(text: string): readonly number[] {
  return [...text.matchAll(/(?<![\d:])(\d{1,2}):(\d\d)(?:\s(am|pm))?/g)].map(([, hour, minute, half]) => {
    const ofDay = half === undefined ? Number(hour) : (Number(hour) % 12) + (half === 'pm' ? 12 : 0);
    return ofDay * 60 + Number(minute);
  });
}

/**
 * One book in two windows on the two sides of the date line: a clock of the machine that is up to 21 hours apart, and other habits of
 * writing. Habits of the locales: Unicode CLDR, as the browser has them.
 */
describeWithChromium('one book read in two places', () => {
  let desk: Desk;
  let far: Page;
  beforeAll(async () => {
    desk = await openDesk({ locale: 'en-US', zone: 'America/Los_Angeles' });
    await planRound(desk.page, 1);
    const context = await desk.context.browser()?.newContext({ locale: 'en-GB', timezoneId: 'Pacific/Auckland' });
    if (context === undefined) throw new Error('there is no browser');
    far = await context.newPage();
    await far.goto(desk.address);
  }, 120_000);
  afterAll(() => desk?.close());

  test('the sheet says the same day and the same times in both, each in its own way', async () => {
    const [here, there] = [await runSheet(desk.page), await runSheet(far)];
    expect(here).toContain('Tuesday, March 16, 2027');
    expect(there).toContain('Tuesday, 16 March 2027');
    expect(here).toMatch(/\d:\d\d\sam/);
    expect(there).not.toMatch(/\d:\d\d\s[ap]m/);
    const times = minutesIn(here);
    expect(times.length).toBeGreaterThan(20);
    expect(minutesIn(there)).toEqual(times);
  });

  test('weeks begin as the place has it, and as it is chosen', async () => {
    const firstDay = async (page: Page) => {
      await goToRoom(page, 'Round');
      await page.getByRole('tab', { name: 'Calendar' }).click();
      return page.locator('table.month th').first().textContent();
    };
    expect([await firstDay(desk.page), await firstDay(far)]).toEqual(['Sun', 'Mon']);
    await chooseCommand(desk.page, 'View', 'Begin weeks on Monday');
    await expect.poll(() => firstDay(desk.page)).toBe('Mon');
  });

  test('a clock, an order of dates and units that are chosen are those of screens and sheets at once', async () => {
    const { page } = desk;
    await doCommand(page, 'clock of 24 hours');
    await doCommand(page, 'dates with the day first');
    await doCommand(page, 'metric units');
    const sheet = await runSheet(page);
    expect(sheet).toContain('Tuesday, 16 March 2027');
    expect(sheet).not.toMatch(/\d:\d\d\s[ap]m/);
    // Names of the sample hold feet and pounds themselves.
    const names = /Hose reel 200 ft|Hand spreader 40 lb/g;
    const usFigures = sheet.replace(names, '').match(/[^.;]{0,30}\d\s?(?:ft²|ft2|gal|fl oz|lb|oz|mph|mi)(?![\w²])/g);
    expect(usFigures).toBeNull();
    // Records last, so that their units are the book's until that is changed.
    await page.getByRole('option', { name: 'Application records' }).click();
    const record = page.frameLocator('iframe.paper-page').locator('body');
    await expect.poll(() => record.textContent()).toMatch(/\d\sft²/);
    const unitsOfRecords = page.getByLabel('Records are told in');
    await page.locator('details', { has: unitsOfRecords }).locator('summary').click();
    await unitsOfRecords.selectOption('metric');
    await expect.poll(() => record.textContent()).not.toMatch(/\d\sft²/);
    expect(await record.textContent()).toMatch(/\d\sm²/);
    await goToRoom(page, 'Day');
    await page.locator('.stop-item').first().waitFor();
    expect(await page.locator('main').ariaSnapshot()).not.toMatch(/\d:\d\d\s[ap]m/);
    expect(desk.complaints).toEqual([]);
  });
});
