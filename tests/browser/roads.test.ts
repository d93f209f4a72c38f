import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readDriveTable } from '../../core/travel/index.ts';
import { at, townXml } from '../core/roads/town.ts';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, openDesk } from './desk.ts';

/** A lane in another county. */
const ELSEWHERE = townXml({ nodes: { A: [0, 0], B: [900, 0] }, ways: [['A B']] });

describeWithChromium('driving by real roads', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'creek-town'] });
    await desk.page.getByRole('button', { name: /^Shed/ }).click();
    await desk.page.getByRole('option', { name: 'Roads' }).click();
  });
  afterAll(() => desk?.close());

  /** What the drive times beside the book were reckoned from. */
  const madeFrom = async (): Promise<string> => {
    const files = await readdir(desk.dataFolder, { recursive: true });
    const name = files.find((each) => each.endsWith('.drives')) ?? 'no file of drive times';
    const table = readDriveTable(await readFile(path.join(desk.dataFolder, name)), name);
    if (!table.ok) throw new Error(table.error.detail);
    return table.value.madeFrom;
  };

  const choose = async (name: string, text: string): Promise<void> => {
    const chooser = desk.page.waitForEvent('filechooser');
    await desk.page.getByRole('button', { name: 'Import another extract…' }).click();
    await (await chooser).setFiles({ name, mimeType: 'application/xml', buffer: Buffer.from(text) });
  };

  test('a sample comes with its roads, says whose they are, and can do without them', async () => {
    const { page } = desk;
    await page.getByText('All 870 ways between 30 places are by road.').waitFor();
    await page.getByText('Invented roads of the Swardway samples', { exact: false }).first().waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await page.getByLabel('drive by these roads in plans').click();
    await page.getByText('All 870 ways between places are an estimate from straight lines.').waitFor();
    await page.getByLabel('drive by these roads in plans').click();
    await page.getByText('All 870 ways between 30 places are by road.').waitFor();
  });

  test('an area is drawn on the map without a mouse, named, and changes the drive times', async () => {
    const { page } = desk;
    const before = await madeFrom();
    await page.getByRole('button', { name: 'Draw an area to drive round' }).focus();
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => document.activeElement?.classList.contains('map'));
    // The crosshair starts in the middle of the map, and a press moves it by 12 px.
    for (const [key, times] of [
      ['ArrowRight', 10],
      ['ArrowDown', 8],
      ['ArrowLeft', 10],
    ] as const) {
      await page.keyboard.press('Enter');
      for (let time = 0; time < times; time += 1) await page.keyboard.press(key);
    }
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: 'Being drawn' }).getByText('4 corners').waitFor();
    await page.keyboard.press('Enter');
    await page.getByText('driven round: Area 1').waitFor();
    expect(await page.locator('path.avoided-area').count()).toBe(1);
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('button', { name: /^Shed/ }).click();
    await page.getByLabel('Name of Area 1').fill('school street');
    await page.getByLabel('Name of Area 1').press('Enter');
    await page.getByRole('button', { name: 'Drive through school street again' }).waitFor();
    await expect.poll(madeFrom, { timeout: 20_000 }).not.toBe(before);
  });

  test('an area is driven round, and corners that are none are refused in words', async () => {
    const { page } = desk;
    await page.getByLabel('What is to be driven round').fill('market');
    await page.getByLabel('Corners of the area, latitude and longitude').fill('40.0, -89.4; here');
    await page.getByText('"here" is no position on a map.', { exact: false }).waitFor();
    const [one, two, three] = [at(0, 0), at(50, 0), at(0, 50)].map(([lon, lat]) => `${lat}, ${lon}`);
    await page.getByLabel('Corners of the area, latitude and longitude').fill([one, two, three].join('\n'));
    await page.getByRole('button', { name: 'Drive round it' }).click();
    await page.getByRole('button', { name: 'Drive through market again' }).waitFor();
  });

  test('a file that is no extract changes nothing; one of another county joins no place, and says so', async () => {
    const { page } = desk;
    await choose('letter.osm', 'Dear Sir or Madam');
    await page.getByRole('alert').filter({ hasText: 'no extract of OpenStreetMap' }).first().waitFor();
    await page.getByText('All 870 ways between 30 places are by road.').waitFor();
    await choose('elsewhere.osm', ELSEWHERE);
    await page.getByText('No road reaches 30 places').waitFor();
    await page.getByText('It lies outside the roads that were imported.').first().waitFor();
    expect(desk.complaints).toEqual([]);
  });
});
