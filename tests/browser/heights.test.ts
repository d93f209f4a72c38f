import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { heightBytes } from '../electron/services/ground/files.ts';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, openDesk } from './desk.ts';

const PIXEL_DEG = 0.00002;
const SIDE = 120;
/** One degree of latitude at 40 degrees north (meridian arc of WGS84), metres. */
const METRES_PER_DEGREE = 111_035;

/** Ground around a place that rises by a metre in ten to the north, in pixels of some two metres. */
function hillside([longitude, latitude]: readonly [number, number]): Buffer {
  const corner = [longitude - (SIDE / 2) * PIXEL_DEG, latitude + (SIDE / 2) * PIXEL_DEG] as const;
  const values = Array.from({ length: SIDE * SIDE }, (_, index) => {
    const row = Math.floor(index / SIDE);
    return 250 - row * PIXEL_DEG * METRES_PER_DEGREE * 0.1;
  });
  const file = { width: SIDE, height: SIDE, values, degrees: 4326, corner, pixel: [PIXEL_DEG, PIXEL_DEG] as const };
  return Buffer.from(heightBytes({ ...file, verticalUnit: 9001 }));
}

describeWithChromium('a slope out of a picture of heights', () => {
  let desk: Desk;
  let bytes: Buffer;
  beforeAll(async () => {
    const sample = await readFile(new URL('../../sample-routes/residential-day.json', import.meta.url), 'utf8');
    const { properties } = JSON.parse(sample) as {
      properties: { name: string; parking: [number, number] }[];
    };
    const parking = properties.find((each) => each.name === '6 Teasel Lane')?.parking ?? [0, 0];
    bytes = hillside(parking);
    desk = await openDesk({ words: ['--sample', 'residential-day'] });
    await desk.page.getByRole('option', { name: '6 Teasel Lane' }).click();
    await desk.page.getByRole('button', { name: 'front', exact: true }).click();
  });
  afterAll(() => desk?.close());

  test('is read inside the zone, says where it is from, and comes off with undo', async () => {
    const { page } = desk;
    const before = await page.getByLabel('How the slope of front is known').inputValue();
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Slope from heights… (front)' }).click();
    await (await chooser).setFiles({ name: 'county heights.tif', mimeType: 'image/tiff', buffer: bytes });
    // atan(0.1) = 5.71 degrees.
    await page
      .getByText(/^front: 5\.7\d?°, county heights\.tif, \d+ heights/)
      .first()
      .waitFor();
    expect(await page.getByLabel('How the slope of front is known').inputValue()).toBe('elevation');
    await page.getByRole('button', { name: 'Read slope of front from county heights.tif' }).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await page.locator('.inspector-head').first().click();
    await page.keyboard.press('Control+z');
    await expect.poll(() => page.getByLabel('How the slope of front is known').inputValue()).toBe(before);
  });

  test('says what is wrong with a file that has no heights', async () => {
    const { page } = desk;
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Other file of heights… (front)' }).click();
    await (await chooser).setFiles({ name: 'notes.tif', mimeType: 'image/tiff', buffer: Buffer.from('no heights') });
    expect(await page.getByRole('alert').first().textContent()).toContain('no TIFF file');
    expect(desk.complaints).toEqual([]);
  });
});
