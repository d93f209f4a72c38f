import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { emptyBook, type Property, writeBook } from '../../core/book/index.ts';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, openDesk } from './desk.ts';

const card = (id: string, address: string): Property => ({
  id,
  name: address,
  address,
  parking: [-83, 40],
  noTrailer: false,
  gates: [],
  zones: [
    {
      id: 'z',
      name: 'whole lawn',
      shape: { kind: 'stated', areaSqFt: 5000, method: 'old card' },
      slopeDeg: 0,
      gateIds: [],
    },
  ],
  exclusions: [],
  cautions: [],
  note: '',
});
/** Two invented streets of 200 m to the east. */
const street = (FULLNAME: string, latitude: number) => ({
  type: 'Feature',
  properties: { FULLNAME, LFROMADD: '101', LTOADD: '199', RFROMADD: '100', RTOADD: '198' },
  geometry: {
    type: 'LineString',
    coordinates: [
      [-82.5, latitude],
      [-82.49766, latitude],
    ],
  },
});

describeWithChromium('places from addresses', () => {
  let folder = '';
  let desk: Desk;

  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'swardway-addresses-'));
    const book = {
      ...emptyBook('cards', 'Old cards'),
      properties: [card('one', '150 Oak Street'), card('two', '12 Nowhere Rd')],
    };
    await writeFile(path.join(folder, 'cards.json'), writeBook(book));
    const features = [street('Oak St', 40.5), street('Elm Ave', 40.51)];
    await writeFile(path.join(folder, 'streets.geojson'), JSON.stringify({ type: 'FeatureCollection', features }));
    desk = await openDesk({ words: [path.join(folder, 'cards.json')] });
  });
  afterAll(async () => {
    await desk?.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('lawns from cards are placed by a street file, marked, and taken back in one step', async () => {
    const { page } = desk;
    await page.getByRole('option').first().waitFor();
    await page.keyboard.press('Control+k');
    await page.getByRole('searchbox', { name: 'Find a command' }).fill('Find places by address');
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Find places by address' });
    await dialog.waitFor();
    expect(await accessFaults(page)).toEqual([]);
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      dialog.getByRole('button', { name: 'Open a street file…' }).click(),
    ]);
    await chooser.setFiles(path.join(folder, 'streets.geojson'));
    await dialog.getByText('1 of 2 lawns have a place by their address').waitFor();
    await dialog.getByText('along Oak St, 100 to 198, right side').waitFor();
    await dialog.getByText('No street in the file is called like "nowhere rd".').waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Place 1 lawn' }).click();
    await dialog.waitFor({ state: 'detached' });
    await page.getByRole('option', { name: /150 Oak Street/ }).click();
    await page.getByText(/^placed by address range/).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText(/^placed by address range/).waitFor({ state: 'detached' });
  });

  test('a lawn is added at an address; an address that is not there says why', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'Find places by address' }).click();
    const field = page.getByLabel('Address of the new lawn');
    await field.fill('900 Elm Avenue');
    await field.press('Enter');
    await page.getByText(/No block of Elm Ave has the number 900; its numbers go from 100 to 199/).waitFor();
    await field.fill('151 Elm Avenue');
    await field.press('Enter');
    await page.getByRole('option', { name: /151 Elm Avenue/ }).waitFor();
    await page.getByText(/^placed by address range/).waitFor();
    expect(desk.complaints).toEqual([]);
  });
});
