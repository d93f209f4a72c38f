import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeWithChromium } from './chromium.ts';
import { type Desk, doCommand, openDesk } from './desk.ts';
import { drawOutline, feetPerPixel, handsOn, NEW_LAWN, readArea } from './ground-hands.ts';
import { heard } from './heard.ts';
import { tabTo, tabToButton } from './tab-to.ts';

/** From the tool to the printed sheet, clicks and keys together. */
const MOST_ACTIONS = 60;
/** A pixel is about a foot, and a corner lies within half of one: for outlines of 40 to 300 px that is under 2 %. */
const CLOSE = 0.02;

async function openGround(): Promise<Desk> {
  const desk = await openDesk({ words: ['--sample', 'residential-day'] });
  const { page } = desk;
  await page.getByRole('option', { name: '6 Teasel Lane' }).click();
  await page.keyboard.press('Alt+9');
  await page.locator('.turf-selected').first().waitFor({ state: 'attached' });
  return desk;
}

const panel = (page: Page) => page.getByRole('complementary', { name: 'Selected lawn' });

const expectClose = (actual: number, expected: number) => {
  expect(Math.abs(actual - expected) / expected).toBeLessThan(CLOSE);
};

describeWithChromium('an estimator measures a new lawn with the mouse', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openGround();
  });
  afterAll(() => desk?.close());

  test('draws it with house and drive cut out, gate and slope, and prints the sheet', async () => {
    const { page } = desk;
    const hands = handsOn(page);
    const feet = await feetPerPixel(page);

    await drawOutline(hands, 'Draw a new lawn', NEW_LAWN);
    await hands.type('12 Elm');
    await hands.press('Enter');

    await drawOutline(hands, 'Draw a building to keep out', [
      [500, 630],
      [590, 630],
      [590, 700],
      [500, 700],
    ]);

    await drawOutline(hands, 'Draw paving to keep out', [
      [640, 600],
      [680, 600],
      [680, 740],
      [640, 740],
    ]);

    await hands.click('Place a gate');
    await hands.clickMap(600, 770);
    await hands.type('34');
    await hands.press('Enter');
    await hands.click('leads to lawn', 'checkbox');
    await hands.focus('Slope of lawn');
    await hands.press('Control+a');
    await hands.type('6');
    await hands.press('Enter');

    const [lawn, house, drive] = [300 * 200, 90 * 70, 40 * 140].map((px) => px * feet * feet) as [
      number,
      number,
      number,
    ];
    const figures = panel(page).locator('.figures');
    // Slope of 6 degrees: the ground is larger than the plan by 1 / cos 6 degrees = 1.0055.
    expectClose(readArea(await figures.locator('dd').first().textContent()), (lawn - house - drive) * 1.0055);
    expectClose(readArea(await figures.locator('dd').nth(1).textContent()), house + drive);
    expect(await page.getByLabel('Clear width of Gate 1').inputValue()).toBe('34 in');

    await hands.press('Alt+5');
    await hands.click(/^Measure sheet/, 'option');
    await page.frameLocator('iframe').getByText('12 Elm').first().waitFor();
    const sheet = (await page.frameLocator('iframe').locator('body').textContent()) ?? '';
    expect(sheet).toContain('34 in');
    const download = page.waitForEvent('download', { timeout: 45_000 });
    await hands.click('Save as PDF');
    expect((await download).suggestedFilename()).toMatch(/^Measure sheet.*\.pdf$/);
    console.log(`with the mouse: ${hands.count()} clicks and keys (most ${MOST_ACTIONS})`);
    expect(hands.count()).toBeLessThanOrEqual(MOST_ACTIONS);
    expect(desk.complaints).toEqual([]);
  }, 120_000);
});

describeWithChromium('an estimator measures a new lawn without a mouse', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'residential-day'] });
    await desk.page.getByRole('option').first().waitFor();
  });
  afterAll(() => desk?.close());

  const arrows = async (page: Page, key: string, times: number) => {
    for (let time = 0; time < times; time += 1) await page.keyboard.press(key);
  };

  test('draws it with the crosshair and by typed sides, and prints the sheet', async () => {
    const { page } = desk;
    await tabTo(page, '.list, .list-item');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Alt+9');
    await doCommand(page, 'draw a new lawn', 'F1');
    const feet = await feetPerPixel(page);

    // The crosshair starts in the middle and goes 12 px a press: a lawn of 25 by 15 presses below the houses.
    await page.waitForFunction(() => document.activeElement?.classList.contains('map'));
    await arrows(page, 'ArrowDown', 14);
    await page.keyboard.press('Enter');
    await arrows(page, 'ArrowRight', 25);
    await page.keyboard.press('Enter');
    await arrows(page, 'ArrowDown', 15);
    await page.keyboard.press('Enter');
    await arrows(page, 'ArrowLeft', 25);
    await page.keyboard.press('Enter');
    // What the panel shows is told as well: the corners and the area so far.
    await expect.poll(() => heard(page)).toContainEqual(expect.stringMatching(/^4 corners.* ft²/));
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => document.activeElement?.getAttribute('aria-label') === 'Name of the new lawn');
    await page.keyboard.type('14 Elm');
    await page.keyboard.press('Enter');

    // The house: its first corner by the crosshair, its sides typed: 40 by 30 ft.
    await doCommand(page, 'draw a building', 'F1');
    await page.waitForFunction(() => document.activeElement?.classList.contains('map'));
    await arrows(page, 'ArrowDown', 18);
    await arrows(page, 'ArrowRight', 6);
    await page.keyboard.press('Enter');
    await tabTo(page, '[aria-label="Length of the next side"]');
    for (const [length, turn] of [
      ['40 ft', '90'],
      ['30 ft', '90'],
      ['40 ft', '90'],
    ] as const) {
      await page.keyboard.type(length);
      await page.keyboard.press('Tab');
      await page.keyboard.type(turn);
      await page.keyboard.press('Enter');
    }
    await doCommand(page, 'finish the outline', 'F1');
    await page.waitForFunction(() => document.activeElement?.getAttribute('aria-label') === 'Name of what is kept out');

    await doCommand(page, 'place a gate', 'F1');
    await page.waitForFunction(() => document.activeElement?.classList.contains('map'));
    await arrows(page, 'ArrowDown', 14);
    await page.keyboard.press('Enter');
    await page.waitForFunction(
      () => document.activeElement?.getAttribute('aria-label') === 'Clear width of the new gate',
    );
    await page.keyboard.type('34');
    await page.keyboard.press('Enter');
    await tabTo(page, '.draw-finished input[type="checkbox"]');
    await page.keyboard.press('Space');
    await tabTo(page, '[aria-label="Slope of lawn"]');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('6');
    await page.keyboard.press('Enter');

    const figures = panel(page).locator('.figures');
    const lawn = 25 * 12 * 15 * 12 * feet * feet;
    expectClose(readArea(await figures.locator('dd').first().textContent()), (lawn - 1200) * 1.0055);
    // Typed sides are exact: 40 ft x 30 ft.
    expect(readArea(await figures.locator('dd').nth(1).textContent())).toBe(1200);

    await page.keyboard.press('Alt+5');
    await tabTo(page, '.list, .list-item');
    await page.keyboard.press('Home');
    const sheet = page.getByRole('option', { name: 'Measure sheet' });
    for (let down = 0; down < 20 && (await sheet.getAttribute('aria-selected')) !== 'true'; down += 1) {
      await page.keyboard.press('ArrowDown');
    }
    await page.frameLocator('iframe').getByText('14 Elm').first().waitFor();
    const download = page.waitForEvent('download', { timeout: 45_000 });
    await tabToButton(page, 'Save as PDF');
    await page.keyboard.press('Enter');
    expect((await download).suggestedFilename()).toMatch(/^Measure sheet.*\.pdf$/);
    expect(desk.complaints).toEqual([]);
  }, 120_000);
});
