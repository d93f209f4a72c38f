import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeWithChromium } from './chromium.ts';
import { type Desk, openDesk } from './desk.ts';
import { drawOutline, feetPerPixel, handsOn, NEW_LAWN } from './ground-hands.ts';

/** Lengths are shown in whole feet, about two pixels; what sticks to its old place within 12 pixels does not move at all. */
const PIXELS_OFF = 3;

async function openGround(): Promise<Desk> {
  const desk = await openDesk({ words: ['--sample', 'residential-day'] });
  const { page } = desk;
  await page.getByRole('option', { name: '6 Teasel Lane' }).click();
  await page.keyboard.press('Alt+9');
  await page.locator('.turf-selected').first().waitFor({ state: 'attached' });
  return desk;
}

/** Length of a side as the table shows it. */
const lengthOf = (page: Page, side: number): Promise<string> =>
  page.getByLabel(`Length of side ${side}`, { exact: true }).inputValue();

async function typeSide(page: Page, length: string, angle: string): Promise<void> {
  await page.getByLabel('Length of the next side').fill(length);
  await page.getByLabel(/^(Bearing of the first side|Turn before the next side)$/).fill(angle);
  await page.getByRole('button', { name: 'Add side' }).click();
}

describeWithChromium('the sides of an outline', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openGround();
  });
  afterAll(() => desk?.close());

  test('typed as a walk that ends 3 ft short of its start is closed over all sides', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'Draw a new lawn', exact: true }).click();
    await page.getByRole('button', { name: 'the middle of the map' }).click();
    for (const [length, angle] of [
      ['100', '90'],
      ['60', '-90'],
      ['100', '-90'],
      ['57', '-90'],
    ] as const)
      await typeSide(page, length, angle);
    await page.getByText('The last corner lies 3').waitFor();
    await page.getByRole('button', { name: 'Close, sharing the gap out' }).click();
    expect(await page.getByLabel(/^Length of side \d$/).count()).toBe(4);
    // each side gives or takes its share of 3 ft: the one to the north 60 of 317 parts, 59.4 ft, the one to the south 57.5
    expect(await lengthOf(page, 2)).toBe('59.4 ft');
    expect(await lengthOf(page, 4)).toBe('57.5 ft');
  }, 60_000);

  test('a corner that is dragged a few pixels goes there, the first one too', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'Throw away' }).click();
    await page.locator('.button-danger', { hasText: 'Throw away' }).click();
    const hands = handsOn(page);
    await drawOutline(hands, 'Draw a new lawn', NEW_LAWN);
    await hands.type('12 Elm');
    await hands.press('Enter');
    await hands.click('Move corners');
    const feet = await feetPerPixel(page);
    const before = Number.parseInt(await lengthOf(page, 1), 10);
    expect(Math.abs(before - 300 * feet)).toBeLessThan(PIXELS_OFF * feet);
    const box = await page.locator('.map').boundingBox();
    if (box === null) throw new Error('there is no map on the page');
    await page.mouse.move(box.x + 420, box.y + 570);
    await page.mouse.down();
    await page.mouse.move(box.x + 416, box.y + 570, { steps: 3 });
    await page.mouse.move(box.x + 412, box.y + 570, { steps: 3 });
    await page.mouse.up();
    const moved = Number.parseInt(await lengthOf(page, 1), 10) - before;
    expect(Math.abs(moved - 8 * feet)).toBeLessThan(PIXELS_OFF * feet);
    expect(desk.complaints).toEqual([]);
  }, 60_000);
});
