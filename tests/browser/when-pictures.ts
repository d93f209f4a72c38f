import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { createRandom } from '../../core/base/index.ts';
import { addDays, dayNumber } from '../../core/units/index.ts';
import { goToRoom, openDesk } from './desk.ts';

type Take = (page: Page, name: string) => Promise<void>;

/** Today in the pictures. */
const TODAY = '2027-03-09';

/** An invented station with three earlier years: a sine through the year with some days warmer and some cooler. */
function station(): string {
  const random = createRandom(5);
  const rows = ['Date,High,Low'];
  let drift = 0;
  for (let date = '2024-01-01'; date < TODAY; date = addDays(date, 1)) {
    drift = 0.8 * drift + 7 * (random.unit() - 0.5);
    const mean = 52 + 24 * Math.sin((2 * Math.PI * (dayNumber(date) - dayNumber('2027-04-14'))) / 365.25) + drift;
    const [year, month, day] = date.split('-');
    if (date >= '2027-02-24' && date <= '2027-02-25') continue;
    rows.push(`${Number(month)}/${Number(day)}/${year},${Math.round(mean + 9)},${Math.round(mean - 10)}`);
  }
  return rows.join('\n');
}

/** The invented round of four days, with some lawns at paved edges and in shade, over three weeks. */
async function bookText(): Promise<string> {
  const book = JSON.parse(await readFile(path.resolve('sample-routes/four-day-round.json'), 'utf8'));
  for (const [index, lawn] of book.properties.entries()) {
    if (index % 6 === 0) lawn.sites = ['paved-edge'];
    if (index % 5 === 1) lawn.sites = ['shade'];
  }
  book.siteOffsets = { 'paved-edge': 4, shade: -3 };
  book.rounds[0].dates = ['2027-03-16', '2027-03-17', '2027-03-18', '2027-04-15'];
  return JSON.stringify(book);
}

/** Pictures of the view When for the guide. */
export async function takeWhenPictures(take: Take): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-when-'));
  const book = path.join(folder, 'bramley-fold.json');
  const days = path.join(folder, 'county-station.csv');
  await writeFile(book, await bookText());
  await writeFile(days, station());
  const desk = await openDesk({ words: [book], height: 960 });
  try {
    const { page } = desk;
    await page.clock.setFixedTime(new Date(`${TODAY}T12:00:00`));
    await goToRoom(page, 'Round');
    await page.getByRole('tab', { name: 'When' }).click();
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Read a file' }).click();
    await (await chooser).setFiles(days);
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Unit of the air').waitFor();
    await take(page, 'guide-when-1-file');
    await dialog.getByLabel('Unit of the air').selectOption('F');
    await dialog.getByRole('button', { name: 'Add these temperatures' }).click();
    await page.getByRole('button', { name: 'New timing' }).click();
    await page.getByLabel('Begin with').selectOption('michigan-degree-days');
    await page.getByRole('button', { name: 'Add this timing' }).click();
    await page.getByRole('region', { name: 'Window' }).waitFor();
    await page.locator('.notice').waitFor({ state: 'detached', timeout: 20_000 });
    await take(page, 'guide-when-2-window');
  } finally {
    await desk.close();
    await rm(folder, { recursive: true, force: true });
  }
}
