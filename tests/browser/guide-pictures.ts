import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { openDesk } from './desk.ts';
import { drawOutline, handsOn, NEW_LAWN } from './ground-hands.ts';

type Take = (page: Page, name: string) => Promise<void>;

/** An invented list of lawns with an outline, a stated area and a row without a place. */
const LIST = `id,name,WKT,turf area (acres),gate
s-1,1 Sorrel Way,"POLYGON((-89.4300 40.0300,-89.4296 40.0300,-89.4296 40.0304,-89.4300 40.0304,-89.4300 40.0300))",,34
s-2,3 Sorrel Way,"POLYGON((-89.4290 40.0300,-89.4286 40.0300,-89.4286 40.0304,-89.4290 40.0304,-89.4290 40.0300))",,48
s-3,5 Sorrel Way,,0.25,36
`;

/** Takes the pictures of "Measure a new lawn", in the order of that page. */
export async function takeGuidePictures(take: Take): Promise<void> {
  const desk = await openDesk({ words: ['--sample', 'residential-day'] });
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-guide-'));
  try {
    await drawLawn(desk.page, take);
    await measureWithoutMap(desk.page, take);
    await importList(desk.page, folder, take);
    await showSheet(desk.page, take);
  } finally {
    await desk.close();
    await rm(folder, { recursive: true, force: true });
  }
}

async function drawLawn(page: Page, take: Take): Promise<void> {
  const hands = handsOn(page);
  await page.getByRole('option', { name: '6 Teasel Lane' }).click();
  await page.keyboard.press('Alt+9');
  await page.locator('.turf-selected').first().waitFor({ state: 'attached' });
  await hands.click('Draw a new lawn');
  for (const [x, y] of NEW_LAWN) await hands.clickMap(x, y);
  await take(page, 'guide-1-outline');
  await hands.press('Enter');
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
  await page.getByLabel('Slope of lawn', { exact: true }).fill('6');
  await page.getByLabel('Slope of lawn', { exact: true }).press('Enter');
  await page.getByRole('button', { name: 'lawn', exact: true }).click();
  await page.getByLabel('How far the outline of lawn may be off', { exact: true }).fill('1 ft');
  await page.getByLabel('How far the outline of lawn may be off', { exact: true }).press('Enter');
  await page.waitForTimeout(400);
  await take(page, 'guide-2-lawn');
}

async function measureWithoutMap(page: Page, take: Take): Promise<void> {
  await page.getByRole('button', { name: 'Add a zone by its area' }).click();
  await page.getByLabel('How the area of zone 2 is known').selectOption({ label: 'from offsets' });
  await page.getByLabel('Distance between two offsets', { exact: true }).fill('10');
  await page.getByLabel('Distance between two offsets', { exact: true }).press('Enter');
  await page.getByLabel('Offsets in order', { exact: true }).fill('0, 12, 15, 18, 16, 9, 0');
  await page.getByLabel('Offsets in order', { exact: true }).press('Enter');
  await page.locator('output.working').first().scrollIntoViewIfNeeded();
  await page.waitForTimeout(300);
  await take(page, 'guide-3-offsets');
}

async function importList(page: Page, folder: string, take: Take): Promise<void> {
  const file = path.join(folder, 'sorrel-way.csv');
  await writeFile(file, LIST);
  const chooser = page.waitForEvent('filechooser');
  await page.locator('.inspector-head').first().click();
  await page.keyboard.press('Control+i');
  await (await chooser).setFiles(file);
  const dialog = page.getByRole('dialog', { name: 'sorrel-way.csv' });
  const next = dialog.getByRole('button', { name: 'Next' });
  await next.click();
  await next.click();
  await dialog.getByRole('listbox', { name: 'Records' }).waitFor();
  await take(page, 'guide-4-import');
  await page.keyboard.press('Escape');
}

async function showSheet(page: Page, take: Take): Promise<void> {
  await page.keyboard.press('Alt+5');
  await page.getByRole('option', { name: /^Measure sheet/ }).click();
  await page.frameLocator('iframe').getByText('12 Elm').first().waitFor();
  await page.waitForTimeout(400);
  await take(page, 'guide-5-sheet');
}
