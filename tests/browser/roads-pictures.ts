import type { Page } from 'playwright-core';
import { openDesk } from './desk.ts';

type Take = (page: Page, name: string) => Promise<void>;

/** Takes the pictures of "Drive by real roads". */
export async function takeRoadsPictures(take: Take): Promise<void> {
  const desk = await openDesk({ words: ['--sample', 'creek-town'] });
  try {
    const { page } = desk;
    await page.getByRole('button', { name: /^Shed/ }).click();
    await page.getByRole('option', { name: 'Roads' }).click();
    await page.getByText(/^All 870 ways between 30 places/).waitFor();
    await take(page, 'roads-1-shed');
    await page.getByRole('button', { name: /^Round/ }).click();
    await page.getByRole('button', { name: 'Plan this round' }).click();
    await page.getByRole('button', { name: 'Plan again' }).waitFor({ timeout: 90_000 });
    // The notice of the finished plan goes by itself.
    await page.locator('.notice').waitFor({ state: 'detached', timeout: 20_000 });
    await page.getByRole('button', { name: /^Day/ }).click();
    await page.getByText(/^along roads/).waitFor();
    for (let step = 0; step < 3; step += 1) {
      await page.getByRole('button', { name: 'Map farther', exact: true }).click();
      await page.waitForTimeout(400);
    }
    await take(page, 'roads-2-day');
  } finally {
    await desk.close();
  }
}
