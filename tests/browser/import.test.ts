import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk } from './desk.ts';

const box = (west: number, south: number, size: number) =>
  [
    [west, south],
    [west + size, south],
    [west + size, south + size],
    [west, south + size],
    [west, south],
  ]
    .map((each) => `${each.join(',')},0`)
    .join(' ');
const polygon = (...at: Parameters<typeof box>) =>
  `<Polygon><outerBoundaryIs><LinearRing><coordinates>${box(...at)}</coordinates></LinearRing></outerBoundaryIs></Polygon>`;
const lawn = (number: number) => {
  const data = { address: `${number} Sorrel Way`, 'gate (in)': '34', OWNER: `Invented Person ${number}` };
  const fields = Object.entries(data).map(([name, value]) => `<Data name="${name}"><value>${value}</value></Data>`);
  const shape = polygon(-89.43 + number * 0.001, 40.03, 0.0004);
  return `<Placemark><name>Sorrel ${number}</name><ExtendedData>${fields.join('')}</ExtendedData>${shape}</Placemark>`;
};
/** Six lawns with a house on the first of them, a house far away, and a record without a shape. All invented. */
const KML = `<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document><Folder><name>lawns</name>
${[1, 2, 3, 4, 5, 6].map(lawn).join('\n')}<Placemark><name>meeting point</name></Placemark></Folder><Folder><name>houses</name>
<Placemark>${polygon(-89.4288, 40.0301, 0.0001)}</Placemark><Placemark>${polygon(-89.2, 40.03, 0.0001)}</Placemark>
</Folder></Document></kml>`;
const CSV = `id,name,lat,lon,turf area (acres),gate
c-1,Burdock 1,40.05,-89.43,0.25,36
c-2,Burdock 2,,,0.25,36
c-3,Burdock 3,40.06,-89.43,lots,36
`;

const vertex = (x: number, y: number) => `10\n${x}\n20\n${y}\n`;
const DXF = `0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\nturf\n90\n4\n70\n1\n${vertex(0, 0)}${vertex(50, 0)}${vertex(50, 20)}${vertex(0, 20)}0\nENDSEC\n0\nEOF\n`;

/** Goes on with the Tab key until something has the focus; the focus never leaves the dialog. */
async function tabTo(page: Page, wanted: Locator): Promise<void> {
  for (let step = 0; step < 40; step += 1) {
    if (await wanted.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.closest('[role=dialog]') !== null)).toBe(true);
  }
  throw new Error('the Tab key does not lead there');
}

describeWithChromium('importing files of ground', () => {
  let desk: Desk;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'swardway-import-'));
    await writeFile(path.join(folder, 'sorrel.kml'), KML);
    await writeFile(path.join(folder, 'burdock.csv'), CSV);
    await writeFile(path.join(folder, 'site.dxf'), DXF);
    desk = await openDesk();
    await goToRoom(desk.page, 'Ground');
    await desk.page.getByRole('option').first().waitFor();
  });
  afterAll(async () => {
    await desk?.close();
    if (folder !== undefined) await rm(folder, { recursive: true, force: true });
  });

  const lawns = async (page: Page) =>
    Number(/^[\d,]+/.exec((await page.getByRole('heading', { name: /lawns$/ }).textContent()) ?? '')?.[0]);

  test('a KML goes in by three steps with the keyboard alone, and out again by one undo', async () => {
    const { page } = desk;
    const before = await lawns(page);
    const chooser = page.waitForEvent('filechooser');
    await page.keyboard.press('Control+i');
    await (await chooser).setFiles(path.join(folder, 'sorrel.kml'));
    const dialog = page.getByRole('dialog', { name: 'sorrel.kml' });
    await dialog.getByText('1. What is in the file').waitFor();
    expect(await dialog.getByLabel('Records of houses are').inputValue()).toBe('exclusions');
    expect(await accessFaults(page)).toEqual([]);
    await tabTo(page, dialog.getByRole('button', { name: 'Next' }));
    await page.keyboard.press('Enter');
    await dialog.getByLabel('Field for address').waitFor();
    expect(await dialog.getByLabel('Field for gate, clear width').inputValue()).toBe('gate (in)');
    expect(await dialog.textContent()).toContain('names of people: OWNER');
    expect(await accessFaults(page)).toEqual([]);
    // The focus stayed on the button, so the next step is one more Enter.
    await page.keyboard.press('Enter');
    const records = dialog.getByRole('listbox', { name: 'Records' });
    await records.waitFor();
    expect(await dialog.getByRole('group', { name: 'Show' }).textContent()).toBe(
      '9 records6 new0 changed0 same1 part of another2 rejected',
    );
    await tabTo(page, dialog.getByRole('button', { name: '2 rejected' }));
    await page.keyboard.press('Enter');
    await tabTo(page, records);
    await page.keyboard.press('End');
    await dialog.getByRole('region', { name: 'Selected record' }).waitFor();
    expect(await dialog.getByRole('region', { name: 'Selected record' }).textContent()).toContain(
      'lies on no property',
    );
    expect(await accessFaults(page)).toEqual([]);
    await tabTo(page, dialog.getByRole('button', { name: 'Add 6 lawns' }));
    await page.keyboard.press('Enter');
    await dialog.waitFor({ state: 'detached' });
    expect(await lawns(page)).toBe(before + 6);
    expect(await page.getByText('Invented Person').count()).toBe(0);
    await page.getByText('Add 6 lawns from sorrel.kml').first().waitFor();
    await page.keyboard.press('Control+z');
    await page.waitForFunction((count) => document.body.textContent.includes(`${count} lawns`), before);
    await page.keyboard.press('Control+y');
    await page.waitForFunction((count) => document.body.textContent.includes(`${count} lawns`), before + 6);
  });

  test('a file dropped on the window opens the same dialog; rows are told one by one', async () => {
    const { page } = desk;
    const before = await lawns(page);
    const transfer = await page.evaluateHandle((text) => {
      const held = new DataTransfer();
      held.items.add(new File([text], 'burdock.csv', { type: 'text/csv' }));
      return held;
    }, CSV);
    await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
    const dialog = page.getByRole('dialog', { name: 'burdock.csv' });
    await dialog.getByRole('button', { name: 'Next' }).click();
    await dialog.getByLabel('Unit of turf area').waitFor();
    expect(await dialog.getByLabel('Unit of turf area').inputValue()).toBe('ac');
    await dialog.getByRole('button', { name: 'Next' }).click();
    await dialog.getByRole('button', { name: '2 rejected' }).waitFor();
    await dialog.getByRole('button', { name: 'Add 1 lawn' }).click();
    expect(await lawns(page)).toBe(before + 1);
    const added = page.getByRole('option', { name: /Burdock 1/ });
    // 0.25 acres of 43,560 ft2 (NIST Handbook 44, appendix C).
    await page.getByRole('searchbox', { name: /Find a lawn/ }).fill('Burdock');
    expect(await added.textContent()).toContain('10,890 ft²');
    await page.getByRole('searchbox', { name: /Find a lawn/ }).fill('');
    expect(desk.complaints).toEqual([]);
  });

  test('a drawing asks where it lies, and says how sure its scale is', async () => {
    const { page } = desk;
    const before = await lawns(page);
    const chooser = page.waitForEvent('filechooser');
    await page.keyboard.press('Control+i');
    await (await chooser).setFiles(path.join(folder, 'site.dxf'));
    const dialog = page.getByRole('dialog', { name: 'site.dxf' });
    const put = async (label: string, text: string) => {
      await dialog.getByLabel(label).fill(text);
      await dialog.getByLabel(label).press('Enter');
    };
    await put('Point 1 in the drawing: x, y', '0, 0');
    await put('Point 1 on the ground: latitude, longitude', '40.03, -89.44');
    await put('Point 2 in the drawing: x, y', '50, 0');
    await put('Point 2 on the ground: latitude, longitude', '40.03');
    expect(await dialog.getByRole('alert').textContent()).toContain('two numbers');
    await put('Point 2 on the ground: latitude, longitude', '40.03, -89.4394');
    // 0.0006 degrees of longitude at 40.03 N are 51.2 m = 168 ft; 2 sqrt(2) * 1 ft / 168 ft = 1.7 %.
    await dialog.getByText('the points are 168 ft apart').waitFor();
    expect(await dialog.textContent()).toContain('off by 1.7 %');
    expect(await accessFaults(page)).toEqual([]);
    // What was typed is still there after a look ahead; one point with the length of a unit is enough as well.
    await dialog.getByRole('button', { name: 'Next' }).click();
    await dialog.getByRole('button', { name: 'Back' }).click();
    expect(await dialog.getByLabel('Point 2 in the drawing: x, y').inputValue()).toBe('50, 0');
    await dialog.getByLabel('It is placed by').selectOption('one-point');
    await put('Length of one unit', '1 ft');
    await put('Bearing of the y axis, degrees', '15');
    await dialog.getByRole('button', { name: 'Next' }).click();
    await dialog.getByRole('button', { name: 'Next' }).click();
    await dialog.getByRole('button', { name: 'Add 1 lawn' }).click();
    await dialog.waitFor({ state: 'detached' });
    expect(await lawns(page)).toBe(before + 1);
    // 50 by 20 units of a foot.
    await page.getByRole('searchbox', { name: /Find a lawn/ }).fill('lawn-1');
    await page.getByRole('option', { name: /1,000 ft²/ }).waitFor();
  });
});
