import { afterAll, beforeAll, expect, test } from 'vitest';
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
