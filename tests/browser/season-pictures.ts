import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { writeBook } from '../../core/book/index.ts';
import { goToRoom, openDesk, planRound } from './desk.ts';
import { startedSeason } from './season-book.ts';

type Take = (page: Page, name: string) => Promise<void>;

/** Today in the pictures. */
const TODAY = '2027-03-09';

/** Pictures of the views Season and Buy for the guide. */
export async function takeSeasonPictures(take: Take): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-season-'));
  const file = path.join(folder, 'bramley-fold.json');
  await writeFile(file, writeBook(startedSeason()));
  const desk = await openDesk({ words: [file], height: 960 });
  try {
    const { page } = desk;
    await page.clock.setFixedTime(new Date(`${TODAY}T12:00:00`));
    await goToRoom(page, 'Round');
    await planRound(page, 2);
    await page.locator('.notice').waitFor({ state: 'detached', timeout: 20_000 });
    await page.getByRole('tab', { name: 'Season' }).click();
    await page.getByRole('listbox', { name: 'Lawns of the season' }).getByRole('option').first().click();
    await page.waitForTimeout(600);
    await take(page, 'guide-season-1-limits');
    await page.getByRole('tab', { name: 'Buy' }).click();
    await page.getByText('Mon Mar 22, 2027').first().waitFor();
    await take(page, 'guide-season-2-buy');
  } finally {
    await desk.close();
    await rm(folder, { recursive: true, force: true });
  }
}
