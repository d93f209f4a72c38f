import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeWithChromium } from './chromium.ts';
import { type Desk, openDesk } from './desk.ts';
import { handsOn } from './ground-hands.ts';

const note = (page: Page) => page.getByLabel('Note', { exact: true });
const scaleBar = (page: Page) => page.locator('.scale-plate path').getAttribute('d');

describeWithChromium('habits that the Ground room keeps', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'residential-day'] });
    await desk.page.getByRole('option', { name: '6 Teasel Lane' }).click();
    await note(desk.page).waitFor();
  });
  afterAll(() => desk?.close());

  test('the page itself never scrolls', async () => {
    const beyond = await desk.page.evaluate(() => document.documentElement.scrollHeight - window.innerHeight);
    expect(beyond).toBeLessThanOrEqual(0);
  });

  test('what was typed is taken when a key leads to another room', async () => {
    const { page } = desk;
    await note(page).fill('beware of the dog');
    await page.keyboard.press('Alt+2');
    await page.getByRole('heading', { name: 'Shed' }).first().waitFor();
    await page.keyboard.press('Alt+1');
    await note(page).waitFor();
    expect(await note(page).inputValue()).toBe('beware of the dog');
  });

  test('the map shows what it showed before', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'Closer' }).click();
    await page.getByRole('button', { name: 'Closer' }).click();
    const before = await scaleBar(page);
    await page.keyboard.press('Alt+5');
    await page.getByRole('heading', { name: 'Sheets' }).waitFor();
    await page.keyboard.press('Alt+1');
    await note(page).waitFor();
    expect(await scaleBar(page)).toBe(before);
  });

  test('a hose stand is seen where it was placed', async () => {
    const { page } = desk;
    await page.keyboard.press('Alt+9');
    await page.getByRole('button', { name: 'back', exact: true }).click();
    const hands = handsOn(page);
    await hands.click(/^Place the hose stand/);
    await hands.clickMap(400, 300);
    const mark = page.locator('.hose-mark');
    await mark.waitFor();
    expect(await mark.getAttribute('title')).toBe('hose stand of back');
  });

  test('an offer to undo goes when something else is done', async () => {
    const { page } = desk;
    const offer = page.locator('.notice').getByRole('button', { name: 'Undo' });
    await offer.waitFor();
    await page.getByLabel('Clear width of side gate').fill('31');
    await page.getByLabel('Clear width of side gate').press('Enter');
    await offer.waitFor({ state: 'detached' });
  });

  test('Esc lets go of the lawn, and what is to be checked in the whole book shows', async () => {
    const { page } = desk;
    await page.locator('.map').click({ position: { x: 600, y: 20 } });
    for (let press = 0; press < 4; press += 1) await page.keyboard.press('Escape');
    await page.getByText('No lawn selected').waitFor();
    expect(desk.complaints).toEqual([]);
  });
});
