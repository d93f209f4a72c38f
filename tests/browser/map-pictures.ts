import type { Page } from 'playwright-core';
import { goToRoom, openDesk, planRound } from './desk.ts';

type Take = (page: Page, name: string) => Promise<void>;

/** Takes the pictures of "Take plans elsewhere": map pages, and files for other programs. */
export async function takeMapPictures(take: Take): Promise<void> {
  const desk = await openDesk({ words: ['--sample', 'residential-day'] });
  try {
    const { page } = desk;
    await planRound(page, 5);
    await page.locator('.notice').waitFor({ state: 'detached', timeout: 20_000 });
    await goToRoom(page, 'Paper');
    await page.getByRole('option', { name: 'Map pages' }).click();
    const maps = page.frameLocator('iframe[title^="Map pages"]').locator('h2');
    // The whole way, the places in order, the stops; then the lawns.
    await maps.nth(3).waitFor({ timeout: 60_000 });
    await maps.nth(3).evaluate((heading) => heading.scrollIntoView({ block: 'start' }));
    await page.waitForTimeout(600);
    await take(page, 'guide-elsewhere-1-maps');
    await page.getByRole('option', { name: 'Files' }).click();
    await page.waitForTimeout(600);
    await take(page, 'guide-elsewhere-2-files');
  } finally {
    await desk.close();
  }
}
