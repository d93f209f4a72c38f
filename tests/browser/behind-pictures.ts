import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { sampleBook } from '../support/samples.ts';
import { writeMbtiles } from '../support/tiles.ts';
import { openDesk } from './desk.ts';
import { inventedAerial } from './invented-aerial.ts';

type Take = (page: Page, name: string) => Promise<void>;
const AERIAL_ZOOM = 19;
/** A mark that is in the picture and on the map: its pixel and its place in the window. */
type Pair = { readonly share: readonly [number, number]; readonly at: readonly [number, number] };

async function chooseFile(page: Page, button: string, file: string): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: button }).click(),
  ]);
  await chooser.setFiles(file);
}
const openPanel = (page: Page) => page.getByRole('button', { name: /^Behind the map/ }).click();

/** Takes the pictures of "What lies behind the map". */
export async function takeBehindPictures(take: Take): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-behind-'));
  const desk = await openDesk({ words: ['--sample', 'residential-day'] });
  try {
    const { page } = desk;
    const tiles = path.join(folder, 'invented.mbtiles');
    const credit = { name: 'Invented aerial picture', attribution: 'made from the sample book' };
    await writeMbtiles(tiles, await inventedAerial(sampleBook('residential-day'), AERIAL_ZOOM), credit);
    await page.locator('.turf').first().waitFor({ state: 'attached' });
    // A plan for the customer's file: the map itself, as a picture.
    const plan = path.join(folder, 'plan.png');
    await writeFile(plan, await page.locator('.map-panel').screenshot());
    await openPanel(page);
    await chooseFile(page, 'Open a file of tiles…', tiles);
    await page.getByText('Behind: Invented aerial picture').waitFor();
    await page.waitForTimeout(2500);
    await take(page, 'behind-1-choice');
    await layPlan(page, plan);
    await take(page, 'behind-2-plan');
  } finally {
    await desk.close();
    await rm(folder, { recursive: true, force: true });
  }
}

/** The plan is the map itself, so the same share of both is the same ground; the last pair is a little off. */
async function layPlan(page: Page, plan: string): Promise<void> {
  await chooseFile(page, 'Lay a photo or plan on the map…', plan);
  const sheet = page.locator('.picture-sheet');
  await sheet.waitFor();
  await page.waitForTimeout(500);
  const map = await page.locator('.map-panel').boundingBox();
  const shares = [
    [0.68, 0.2],
    [0.9, 0.24],
    [0.86, 0.82],
    [0.7, 0.78],
    [0.8, 0.5],
  ] as const;
  const pairs = shares.map(([x, y], index): Pair => {
    const slip = index === 4 ? 5 : 0;
    return {
      share: [x, y],
      at: [(map?.x ?? 0) + x * (map?.width ?? 0) + slip, (map?.y ?? 0) + y * (map?.height ?? 0)],
    };
  });
  for (const { share, at } of pairs) {
    const box = await sheet.boundingBox();
    await page.mouse.click((box?.x ?? 0) + share[0] * (box?.width ?? 0), (box?.y ?? 0) + share[1] * (box?.height ?? 0));
    await page.mouse.click(...at);
  }
  await page.waitForTimeout(600);
}
