/** Takes the pictures of the guide from the real program: `npm run docs:pictures`. Needs a Chromium. */
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { takeBehindPictures } from './behind-pictures.ts';
import { takeCalendarPictures } from './calendar-pictures.ts';
import { takeDayPictures } from './day-pictures.ts';
import { openDesk } from './desk.ts';
import { takeGuidePictures } from './guide-pictures.ts';
import { takeMapPictures } from './map-pictures.ts';
import { takeRecordPictures } from './record-pictures.ts';
import { takeRoadsPictures } from './roads-pictures.ts';
import { takeSeasonPictures } from './season-pictures.ts';
import { takeSheetPictures } from './sheet-pictures.ts';
import { takeWhenPictures } from './when-pictures.ts';

const FOLDER = path.resolve('docs/pictures');

async function enter(page: Page, room: string): Promise<void> {
  await page.locator('.step button', { has: page.getByText(room, { exact: true }) }).click();
  await page.waitForTimeout(600);
}

async function take(page: Page, name: string): Promise<void> {
  await page.screenshot({ path: path.join(FOLDER, `${name}.png`) });
  process.stdout.write(`docs/pictures/${name}.png\n`);
}

await mkdir(FOLDER, { recursive: true });
const desk = await openDesk({ words: ['--sample', 'residential-day'] });
try {
  const { page } = desk;
  await page.getByRole('option', { name: '6 Teasel Lane' }).click();
  await page.waitForTimeout(600);
  await take(page, 'ground');
  await enter(page, 'Shed');
  await take(page, 'shed');
  await enter(page, 'Round');
  await page.getByRole('button', { name: 'Plan this round' }).click();
  await page.getByRole('button', { name: 'Plan again' }).waitFor({ timeout: 60_000 });
  // The notice of the finished plan goes by itself.
  await page.locator('.notice').waitFor({ state: 'detached', timeout: 20_000 });
  await take(page, 'round');
  await enter(page, 'Day');
  await page.getByText('3 Teasel Lane', { exact: true }).first().click();
  await page.waitForTimeout(600);
  await take(page, 'day');
  await enter(page, 'Paper');
  await take(page, 'paper');
} finally {
  await desk.close();
}
await takeGuidePictures(take);
await takeBehindPictures(take);
await takeWhenPictures(take);
await takeCalendarPictures(take);
await takeSeasonPictures(take);
await takeDayPictures(take);
await takeMapPictures(take);
await takeRecordPictures(take);
await takeRoadsPictures(take);
await takeSheetPictures(FOLDER);
