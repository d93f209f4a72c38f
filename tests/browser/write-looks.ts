import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { goToRoom, planRound } from './desk.ts';
import { openPlaces } from './places.ts';

/**
 * Writes pictures of the rooms as they look to people who see colours in another way, and in grey: `npm run looks -- FOLDER`. What they
 * show is judged by eye; docs/accessibility.md says what was seen. Chromium reckons the colours.
 */
const VISIONS = ['none', 'deuteranopia', 'protanopia', 'tritanopia', 'achromatopsia'] as const;

const folder = path.resolve(process.argv[2] ?? 'dist/looks');
await mkdir(folder, { recursive: true });
const desk = await openPlaces();
try {
  const { page } = desk;
  await page.getByRole('option', { name: 'Weavers Hall' }).click();
  await takeAll(page, 'ground');
  await planRound(page, 2);
  await takeAll(page, 'round');
  for (const view of ['When', 'Calendar', 'Season', 'Fleets']) {
    await page.getByRole('tab', { name: view, exact: true }).click();
    await takeAll(page, view.toLowerCase());
  }
  await goToRoom(page, 'Day');
  await page.getByRole('slider').waitFor();
  await page.keyboard.press('Alt+ArrowDown');
  await takeAll(page, 'day');
  await page.getByRole('tab', { name: 'Rigs' }).click();
  await takeAll(page, 'rigs');
  await page.getByRole('tab', { name: 'Who can go' }).click();
  await page.getByText('Being reckoned').waitFor({ state: 'detached', timeout: 60_000 });
  await takeAll(page, 'who-can-go');
  await page.getByRole('tab', { name: 'How sure' }).click();
  await takeAll(page, 'how-sure');
  await goToRoom(page, 'Paper');
  await page.locator('iframe').waitFor();
  await takeAll(page, 'paper');
} finally {
  await desk.close();
}

/** One picture of the page for each way of seeing, in light and in dark. */
async function takeAll(page: Page, name: string): Promise<void> {
  await page.waitForTimeout(600);
  const session = await page.context().newCDPSession(page);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const type of VISIONS) {
      await session.send('Emulation.setEmulatedVisionDeficiency', { type });
      const file = path.join(folder, `${name}-${colorScheme}-${type}.png`);
      await writeFile(file, await page.screenshot());
    }
  }
  await session.send('Emulation.setEmulatedVisionDeficiency', { type: 'none' });
  await session.detach();
  await page.emulateMedia({ colorScheme: 'light' });
}
