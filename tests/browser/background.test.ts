import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { degreesToShare } from '../../core/imagery/index.ts';
import { sampleBook } from '../support/samples.ts';
import { type MadeTile, paintedPng, startTileServer, type TileServer, writeMbtiles } from '../support/tiles.ts';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, openDesk } from './desk.ts';

const GREEN = [40, 120, 60] as const;
const BLUE = [30, 60, 200] as const;
const MID_ZOOM = 16;
let folder = '';
let desk: Desk | null = null;
let server: TileServer;
let isBroken = false;

/** Tiles of one zoom round the first lawn of the sample, all green. */
async function greenTiles(): Promise<readonly MadeTile[]> {
  const [longitude = 0, latitude = 0] = sampleBook('residential-day').properties[0]?.parking ?? [];
  const [x, y] = degreesToShare(longitude, latitude).map((share) => Math.floor(share * 2 ** MID_ZOOM)) as [
    number,
    number,
  ];
  const bytes = await paintedPng(GREEN);
  const steps = [-3, -2, -1, 0, 1, 2, 3];
  return steps.flatMap((right) => steps.map((down) => ({ z: MID_ZOOM, x: x + right, y: y + down, bytes })));
}

async function openGround(): Promise<Page> {
  desk = await openDesk({ words: ['--sample', 'residential-day'] });
  await desk.page.locator('.map').waitFor();
  await desk.page.locator('.turf').first().waitFor();
  return desk.page;
}
const openPanel = (page: Page) => page.getByRole('button', { name: /^Behind the map/ }).click();
async function chooseFile(page: Page, button: string, name: string): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: button }).click(),
  ]);
  await chooser.setFiles(path.join(folder, name));
}

/** The colour of the middle of the map's bare ground: a pixel of a picture of the page. */
async function colourAt(page: Page, x: number, y: number): Promise<readonly number[]> {
  const shot = await page.screenshot({ clip: { x, y, width: 1, height: 1 } });
  const address = `data:image/png;base64,${shot.toString('base64')}`;
  return page.evaluate(async (source) => {
    const image = new Image();
    image.src = source;
    await image.decode();
    const canvas = document.createElement('canvas');
    const context = canvas.getContext('2d');
    context?.drawImage(image, 0, 0);
    return [...(context?.getImageData(0, 0, 1, 1).data ?? [])].slice(0, 3);
  }, address);
}
const bareGround = async (page: Page): Promise<readonly [number, number]> => {
  const box = await page.locator('.map').boundingBox();
  return [(box?.x ?? 0) + (box?.width ?? 0) / 2, (box?.y ?? 0) + (box?.height ?? 0) / 2];
};

describeWithChromium('behind the map', () => {
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'swardway-behind-'));
    await writeMbtiles(path.join(folder, 'green.mbtiles'), await greenTiles(), {
      name: 'Green fields',
      attribution: 'Ours',
    });
    await writeFile(path.join(folder, 'plan.png'), await paintedPng(BLUE, 200, 100));
    const tile = await paintedPng(BLUE);
    server = await startTileServer((_path, response) => {
      if (isBroken) response.writeHead(503).end();
      else response.writeHead(200).end(tile);
    });
  });
  afterEach(async () => {
    await desk?.close();
    desk = null;
  });
  afterAll(async () => {
    await server.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('a file of tiles lies behind the lawns without any network, and is named with its owner', async () => {
    const page = await openGround();
    const outside: string[] = [];
    page.on('request', (request) => {
      const { protocol, hostname } = new URL(request.url());
      if (protocol.startsWith('http') && hostname !== '127.0.0.1') outside.push(request.url());
    });
    const at = await bareGround(page);
    expect(await page.locator('.scale-plate').textContent()).toContain('no background');
    const before = await colourAt(page, ...at);
    expect(before).not.toEqual(GREEN);
    await openPanel(page);
    await chooseFile(page, 'Open a file of tiles…', 'green.mbtiles');
    await page.getByText('Behind: Green fields').waitFor();
    expect(await page.locator('.backdrop-plate').textContent()).toContain('Ours');
    expect(await accessFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect.poll(() => colourAt(page, ...at)).toEqual(GREEN);
    // After a reload it is there again; the grid comes back when it is chosen.
    await page.reload();
    await page.getByText('Behind: Green fields').waitFor();
    await openPanel(page);
    await page.getByRole('radio', { name: 'The grid alone' }).check();
    await page.keyboard.press('Escape');
    await expect.poll(() => colourAt(page, ...at)).toEqual(before);
    expect(outside).toEqual([]);
    expect(desk?.complaints).toEqual([]);
  });

  test('another machine is asked only after a plain yes, and the map says when it fails', async () => {
    const page = await openGround();
    const at = await bareGround(page);
    await openPanel(page);
    await page.getByText('Tiles from an address of my own').click();
    const field = page.getByLabel('Address of the tiles');
    await field.fill('http://tiles.example.org/{z}/{x}/{y}.png');
    await field.press('Enter');
    await page.getByText('The address has to begin with https').waitFor();
    await field.fill(`http://${server.host}/{z}/{x}/{y}.png`);
    await field.press('Enter');
    const question = page.getByRole('dialog', { name: 'Use the network?' });
    await question.waitFor();
    expect(await question.textContent()).toContain(server.host);
    expect(await accessFaults(page)).toEqual([]);
    await question.getByRole('button', { name: 'Stay offline' }).click();
    expect(server.asked).toEqual([]);
    await openPanel(page);
    await page.getByRole('radio', { name: 'My own tiles' }).click();
    await question.getByRole('button', { name: `Ask ${server.host}` }).click();
    await expect.poll(() => colourAt(page, ...at)).toEqual(BLUE);
    expect(server.asked.length).toBeGreaterThan(0);
    expect(desk?.complaints).toEqual([]);
    isBroken = true;
    for (let step = 0; step < 4; step += 1) await page.getByRole('button', { name: 'Closer' }).click();
    await page.getByText(/squares did not come: .*status 503/).waitFor();
    isBroken = false;
    await openPanel(page);
    await page.getByRole('button', { name: 'Turn the network off' }).click();
    await page.getByText('Network off: only what was fetched before').waitFor();
  });

  test('a plan is laid by typed points, without a mouse, as one step that is there after a reload', async () => {
    const page = await openGround();
    const [longitude = 0, latitude = 0] = sampleBook('residential-day').properties[0]?.parking ?? [];
    await openPanel(page);
    await chooseFile(page, 'Lay a photo or plan on the map…', 'plan.png');
    const plan = page.getByRole('region', { name: /^Laying plan\.png/ });
    await plan.waitFor();
    const points = [
      ['0, 0', longitude - 0.0006, latitude + 0.0003],
      ['200, 0', longitude + 0.0006, latitude + 0.0003],
      ['200, 100', longitude + 0.0006, latitude - 0.0003],
      ['0, 100', longitude - 0.0006, latitude - 0.0003],
      ['100, 50', longitude, latitude + 0.00001],
    ] as const;
    for (const [index, [pixel, east, north]] of points.entries()) {
      await page.getByLabel(`Pixel of point ${index + 1}`, { exact: true }).fill(pixel);
      await page.keyboard.press('Enter');
      await page
        .getByLabel(`Longitude and latitude of point ${index + 1}`)
        .fill(`${east.toFixed(7)}, ${north.toFixed(7)}`);
      await page.keyboard.press('Enter');
      await page.getByLabel(`Pixel of point ${index + 2}`, { exact: true }).waitFor();
    }
    // The fifth is 0.00001 degrees, 1.1 m, off the middle of the other four: the fit shares that out, so some feet are left.
    await plan.getByText(/agree to [0-3](\.\d+)? ft \(root mean square\)/).waitFor();
    // Its corners lie under the marks of the first four points.
    const laid = await page.locator('.laid-picture').boundingBox();
    const marks = await page.locator('.leaflet-marks-pane .placing-mark').evaluateAll((all) =>
      all.map((mark) => {
        const box = mark.getBoundingClientRect();
        return [box.x + box.width / 2, box.y + box.height / 2] as const;
      }),
    );
    const corners = [laid?.x, laid?.y, (laid?.x ?? 0) + (laid?.width ?? 0), (laid?.y ?? 0) + (laid?.height ?? 0)];
    const wanted = [marks[0]?.[0], marks[0]?.[1], marks[2]?.[0], marks[2]?.[1]];
    for (const [index, value] of corners.entries())
      expect(Math.abs((value ?? 0) - (wanted[index] ?? 0))).toBeLessThan(4);
    expect(laid?.width ?? 0).toBeGreaterThan(50);
    expect(await accessFaults(page)).toEqual([]);
    await plan.getByRole('button', { name: 'Keep it here' }).press('Enter');
    await plan.waitFor({ state: 'detached' });
    await page.reload();
    await page.locator('.laid-picture').waitFor();
    const loaded = () => page.locator('.laid-picture').evaluate((image) => (image as HTMLImageElement).naturalWidth);
    await expect.poll(loaded).toBe(200);
    expect(desk?.complaints).toEqual([]);
  });
});
