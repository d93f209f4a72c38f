import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { writeBook } from '../../core/book/index.ts';
import { sampleBook } from '../support/samples.ts';
import { goToRoom, openDesk, planRound } from './desk.ts';
import { withTwoFleets } from './two-fleets.ts';

type Take = (page: Page, name: string) => Promise<void>;

/** Pictures of the dispatcher's views and of two fleets for the guide. */
export async function takeDayPictures(take: Take): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-day-'));
  const file = path.join(folder, 'bramley-fold.json');
  await writeFile(file, writeBook(withTwoFleets(sampleBook('mixed-day'))));
  const desk = await openDesk({ words: [file], height: 960 });
  try {
    const { page } = desk;
    await planRound(page, 3);
    await page.locator('.notice').waitFor({ state: 'detached', timeout: 20_000 });
    await goToRoom(page, 'Day');
    await page.getByRole('tab', { name: 'Rigs' }).click();
    await page.waitForTimeout(4000);
    await take(page, 'guide-day-1-rigs');
    await page.getByRole('tab', { name: 'How sure' }).click();
    await page.waitForTimeout(1500);
    await take(page, 'guide-day-2-sure');
    await page.getByRole('tab', { name: 'Under way' }).click();
    for (let stop = 0; stop < 3; stop += 1) {
      await page
        .getByRole('button', { name: /: done$/ })
        .first()
        .click();
    }
    await page.waitForTimeout(800);
    await take(page, 'guide-day-3-under-way');
    await goToRoom(page, 'Round');
    await page.getByRole('tab', { name: 'Fleets' }).click();
    await page.getByRole('button', { name: 'Plan both' }).click();
    await page.locator('.fleet-season').waitFor({ timeout: 120_000 });
    await page.locator('.notice').waitFor({ state: 'detached', timeout: 20_000 });
    await page.locator('.fleet-wishes').scrollIntoViewIfNeeded();
    await take(page, 'guide-fleets');
  } finally {
    await desk.close();
    await rm(folder, { recursive: true, force: true });
  }
}
