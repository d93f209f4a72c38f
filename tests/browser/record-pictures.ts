import type { Page } from 'playwright-core';
import { goToRoom, openDesk, planRound } from './desk.ts';

type Take = (page: Page, name: string) => Promise<void>;

const ON_SITE = [
  ['Wind', '5 mph'],
  ['Wind from', 'NW'],
  ['Air temperature', '58'],
  ['Sky', 'clear'],
] as const;

/** Pictures of a visit with what was read on site, of its record, and of a notice, for the guide. */
export async function takeRecordPictures(take: Take): Promise<void> {
  const desk = await openDesk({ words: ['--sample', 'residential-day'], height: 960 });
  try {
    const { page } = desk;
    await planRound(page, 3);
    await page.locator('.notice').waitFor({ state: 'detached', timeout: 20_000 });
    await goToRoom(page, 'Day');
    await page.getByRole('tab', { name: 'Under way' }).click();
    await page
      .getByRole('button', { name: /: done$/ })
      .first()
      .click();
    const used = page.getByLabel(/: used, planned/).first();
    await used.fill('5.6 gal');
    await used.press('Enter');
    for (const [label, text] of ON_SITE) {
      const field = page.getByLabel(label, { exact: true });
      await field.fill(text);
      await field.press('Enter');
    }
    await page.waitForTimeout(800);
    await take(page, 'guide-records-1-site');
    await goToRoom(page, 'Paper');
    await page.getByRole('option', { name: 'Application records' }).click();
    await page.getByRole('button', { name: 'Keep 1 record' }).click();
    await page.locator('.notice').waitFor({ state: 'detached', timeout: 20_000 });
    await page.waitForTimeout(800);
    await take(page, 'guide-records-2-kept');
    await page.getByRole('option', { name: 'Notices' }).click();
    await page.waitForTimeout(800);
    await take(page, 'guide-records-3-notice');
  } finally {
    await desk.close();
  }
}
