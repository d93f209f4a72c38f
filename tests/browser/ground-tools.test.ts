import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, openDesk } from './desk.ts';
import { feetPerPixel, handsOn, readArea } from './ground-hands.ts';

type Place = readonly [x: number, y: number];

/** Half a pixel at each end of sides of 100 px and more. */
const CLOSE = 0.02;
const expectClose = (actual: number, expected: number) => {
  expect(Math.abs(actual - expected) / expected).toBeLessThan(CLOSE);
};

const bar = (page: Page) => page.getByRole('region', { name: 'Being drawn' });
const details = (page: Page) => page.getByRole('complementary', { name: 'Selected lawn' });

describeWithChromium('the tools of the map', () => {
  let desk: Desk;
  let feet = 0;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'residential-day'] });
    const { page } = desk;
    await page.getByRole('option', { name: '6 Teasel Lane' }).click();
    await page.keyboard.press('Alt+9');
    await page.locator('.turf-selected').first().waitFor({ state: 'attached' });
    feet = await feetPerPixel(page);
  });
  afterAll(() => desk?.close());

  const tool = (name: string) => desk.page.getByRole('button', { name, exact: true }).first().click();
  const clicks = async (...places: readonly Place[]) => {
    for (const [x, y] of places) await handsOn(desk.page).clickMap(x, y);
  };
  /** Area of a zone in the table of zones, ft2. */
  const zoneArea = async (name: string) =>
    readArea(
      await details(desk.page)
        .getByRole('row', { name: new RegExp(`^${name} `) })
        .locator('td')
        .first()
        .textContent(),
    );
  const sqFt = (px: number) => px * feet * feet;

  test('a rectangle is two sides, finished by the third click', async () => {
    await tool('Draw a zone as a rectangle');
    await clicks([150, 620], [350, 620], [240, 740]);
    await bar(desk.page).waitFor({ state: 'detached' });
    expectClose(await zoneArea('Zone 3'), sqFt(200 * 120));
    await desk.page.keyboard.press('Enter');
  });

  test('an outline is finished by a click on its first corner and by a double click, without a corner more', async () => {
    const { page } = desk;
    await tool('Draw a zone');
    await clicks([420, 640], [520, 640], [520, 740], [420, 740], [426, 634]);
    await bar(page).waitFor({ state: 'detached' });
    expectClose(await zoneArea('Zone 4'), sqFt(100 * 100));
    await tool('Draw a zone');
    await clicks([600, 640], [700, 640], [700, 740]);
    const map = (await page.locator('.map').boundingBox())!;
    await page.mouse.move(map.x + 597, map.y + 738);
    await page.mouse.dblclick(map.x + 600, map.y + 740);
    await bar(page).waitFor({ state: 'detached' });
    expectClose(await zoneArea('Zone 5'), sqFt(100 * 100));
    await page.keyboard.press('Escape');
    await page.locator('.map').focus();
    await page.keyboard.press('e');
    await bar(page).getByText('4 corners').waitFor();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
  });

  test('the map is moved by the middle button, and by Space and the left one, while an outline is drawn', async () => {
    const { page } = desk;
    await tool('Draw a zone');
    await clicks([420, 640], [520, 640]);
    const first = page.locator('.marker-icon').first();
    const map = (await page.locator('.map').boundingBox())!;
    const drag = async (button: 'left' | 'middle', x: number, y: number, by: number) => {
      await page.mouse.move(map.x + x, map.y + y);
      await page.mouse.down({ button });
      await page.mouse.move(map.x + x + by, map.y + y, { steps: 3 });
      await page.mouse.up({ button });
    };
    const before = (await first.boundingBox())!.x;
    await drag('middle', 300, 300, 60);
    expect(Math.abs((await first.boundingBox())!.x - before - 60)).toBeLessThan(2);
    await page.keyboard.down(' ');
    // Begun on a corner, which Space keeps from being dragged.
    await drag('left', 480, 640, -60);
    await page.keyboard.up(' ');
    expect(Math.abs((await first.boundingBox())!.x - before)).toBeLessThan(2);
    await bar(page).getByText('2 corners').waitFor();
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Escape');
    await bar(page).waitFor({ state: 'detached' });
  });

  test('a hole is cut out of it, a piece off its edge, and a line splits what is left', async () => {
    await clicks([170, 720]);
    await desk.page.keyboard.press('o');
    await clicks([200, 660], [260, 660], [260, 700], [200, 700]);
    await desk.page.keyboard.press('Enter');
    await bar(desk.page).waitFor({ state: 'detached' });
    const whole = 200 * 120 - 60 * 40;
    expectClose(await zoneArea('Zone 3'), sqFt(whole));
    await tool('Cut a piece off the zone');
    await clicks([310, 600], [380, 600], [380, 680], [310, 680]);
    await desk.page.keyboard.press('Enter');
    await bar(desk.page).waitFor({ state: 'detached' });
    expectClose(await zoneArea('Zone 3'), sqFt(whole - 40 * 60));
    await tool('Split the zone by a line');
    await clicks([290, 590], [290, 770]);
    await desk.page.keyboard.press('Enter');
    await bar(desk.page).waitFor({ state: 'detached' });
    // Right of the line: 60 px wide and 120 high, less the piece.
    expectClose((await zoneArea('Zone 3')) + (await zoneArea('Zone 3 2')), sqFt(whole - 40 * 60));
    expectClose(await zoneArea('Zone 3 2'), sqFt(60 * 120 - 40 * 60));
  });

  test('the halves are chosen together and merged again; a step back splits them', async () => {
    const { page } = desk;
    await clicks([170, 720]);
    await page.keyboard.down('Shift');
    await clicks([330, 720]);
    await page.keyboard.up('Shift');
    await details(page).getByText('2 parts').waitFor();
    await details(page).getByRole('button', { name: 'Merge' }).click();
    expectClose(await zoneArea('Zone 3'), sqFt(200 * 120 - 60 * 40 - 40 * 60));
    await page.keyboard.press('Control+z');
    expectClose(await zoneArea('Zone 3 2'), sqFt(60 * 120 - 40 * 60));
    await page.keyboard.press('Control+y');
  });

  test('parts are chosen together without a mouse as well', async () => {
    const { page } = desk;
    await page.locator('.map').focus();
    await page.keyboard.press('Escape');
    const choice = details(page).getByText('Choose parts of this lawn');
    await choice.focus();
    await page.keyboard.press('Enter');
    const tick = details(page).getByLabel('zone front', { exact: true });
    await tick.focus();
    await page.keyboard.press('Space');
    await details(page).getByLabel('zone back', { exact: true }).focus();
    await page.keyboard.press('Space');
    await details(page).getByText('2 parts').waitFor();
    expect(await details(page).getByRole('button', { name: 'Merge' }).getAttribute('aria-disabled')).toBeNull();
    expect(await accessFaults(page)).toEqual([]);
    await page.locator('.map').focus();
    await page.keyboard.press('Escape');
  });

  test('a corner that is dragged over a side shows red at once', async () => {
    const { page } = desk;
    await clicks([170, 720]);
    await page.keyboard.press('e');
    const handles = page.locator('.marker-icon:not(.marker-icon-middle)');
    const boxes = await Promise.all((await handles.all()).map((handle) => handle.boundingBox()));
    const left = boxes.reduce((best, box) => (box!.x + box!.y < best!.x + best!.y ? box : best))!;
    await page.mouse.move(left.x + 6, left.y + 6);
    await page.mouse.down();
    await page.mouse.move(left.x + 60, left.y + 190, { steps: 6 });
    await page.locator('.draft-crossed').first().waitFor({ state: 'attached' });
    expect(await page.locator('.crossing-mark').count()).toBeGreaterThan(0);
    await bar(page).getByText('Sides cross').waitFor();
    await page.mouse.up();
    await page.keyboard.press('Control+z');
    expect(await page.locator('.crossing-mark').count()).toBe(0);
    await page.keyboard.press('Escape');
  });

  test('what is chosen is moved by a foot a press, all presses one step', async () => {
    const { page } = desk;
    await clicks([170, 720]);
    const left = async () => (await page.locator('.turf-selected').first().boundingBox())!.x;
    const before = await left();
    for (let press = 0; press < 20; press += 1) await page.keyboard.press('Shift+ArrowRight');
    expect(Math.abs((await left()) - before - 20 / feet)).toBeLessThan(1);
    for (let press = 0; press < 10; press += 1) await page.keyboard.press('Alt+Shift+ArrowLeft');
    expect(Math.abs((await left()) - before - 19 / feet)).toBeLessThan(1);
    await page.keyboard.press('Control+z');
    expect(Math.abs((await left()) - before)).toBeLessThan(0.01);
  });

  test('the corners of the hole are moved like those of the edge, and the hole is filled', async () => {
    const { page } = desk;
    const before = await zoneArea('Zone 3');
    await page.keyboard.press('e');
    await details(page).getByRole('button', { name: 'hole 1' }).click();
    await bar(page).getByText('4 corners').waitFor();
    const corner = page.locator('.marker-icon:not(.marker-icon-middle)').first();
    const box = (await corner.boundingBox())!;
    await page.mouse.move(box.x + 6, box.y + 6);
    await page.keyboard.press('Delete');
    await bar(page).getByText('3 corners').waitFor();
    await bar(page).getByRole('button', { name: 'Finish' }).click();
    // Without one of its corners the hole is half as large: 60 by 40 px less half of that.
    expectClose((await zoneArea('Zone 3')) - before, sqFt(60 * 40 * 0.5));
    await page.keyboard.press('e');
    await details(page).getByRole('button', { name: 'hole 1' }).click();
    await details(page).getByRole('button', { name: 'Fill this hole' }).click();
    await bar(page).waitFor({ state: 'detached' });
    expectClose((await zoneArea('Zone 3')) - before, sqFt(60 * 40));
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    expect(await zoneArea('Zone 3')).toBe(before);
  });

  test('an edge is moved by typed feet, and a bed laid along it', async () => {
    const { page } = desk;
    const before = await zoneArea('Zone 3');
    await page.keyboard.press('f');
    await page.keyboard.type('5');
    await details(page).getByRole('button', { name: 'In', exact: true }).click();
    expect(await zoneArea('Zone 3')).toBeLessThan(before * 0.9);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+z');
    await clicks([170, 720]);
    await details(page).getByRole('button', { name: 'Bed along it' }).click();
    expect(await zoneArea('Zone 3')).toBeLessThan(before * 0.9);
    await page
      .getByRole('button', { name: 'Close this notice' })
      .click()
      .catch(() => undefined);
    await page.locator('.map').focus();
    await page.keyboard.press('Control+z');
    expect(await zoneArea('Zone 3')).toBe(before);
  });

  test('a rectangle with Shift chooses what lies in it; Del takes it out, and the notice gives it back', async () => {
    const { page } = desk;
    const box = (await page.locator('.map').boundingBox())!;
    await page.keyboard.down('Shift');
    await page.mouse.move(box.x + 130, box.y + 600);
    await page.mouse.down();
    await page.mouse.move(box.x + 400, box.y + 770, { steps: 4 });
    await page.mouse.up();
    await page.keyboard.up('Shift');
    await details(page).getByText('1 part', { exact: true }).waitFor();
    expect(await page.evaluate(() => window.getSelection()?.toString())).toBe('');
    await page.keyboard.press('Delete');
    await page.getByRole('region', { name: 'Notice' }).getByText('Zone 3 deleted').waitFor();
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(await zoneArea('Zone 3')).toBeGreaterThan(0);
  });

  test('a shape is copied to another place in its true size', async () => {
    const { page } = desk;
    await clicks([170, 720]);
    const before = await zoneArea('Zone 3');
    await details(page).getByRole('button', { name: 'Copy', exact: true }).click();
    await clicks([560, 690]);
    expect(Math.abs((await zoneArea('Zone 3 copy')) - before)).toBeLessThanOrEqual(1);
    await page.keyboard.press('Control+z');
  });

  test('parking point and hose stand are placed by one click', async () => {
    const { page } = desk;
    const parking = page.locator('.parking-selected');
    await page.keyboard.press('p');
    await clicks([500, 300]);
    const box = (await parking.boundingBox())!;
    const map = (await page.locator('.map').boundingBox())!;
    expect(Math.hypot(box.x + box.width / 2 - map.x - 500, box.y + box.height / 2 - map.y - 300)).toBeLessThan(14);
    await page.keyboard.press('Control+z');
    await clicks([170, 720]);
    await page.keyboard.press('h');
    await clicks([300, 640]);
    await bar(page).waitFor({ state: 'detached' });
    await page
      .getByRole('region', { name: 'Notice' })
      .getByText(/^Place hose stand/)
      .waitFor();
    await page.keyboard.press('Control+z');
  });

  test('sides are typed in the table, and corners moved with the crosshair', async () => {
    const { page } = desk;
    await clicks([170, 720]);
    await page.keyboard.press('Control+z');
    await tool('Draw a zone');
    await clicks([420, 640], [520, 640], [520, 740], [420, 740]);
    const length = page.getByLabel('Length of side 1');
    await length.fill('120 ft');
    await length.press('Enter');
    expect(await length.inputValue()).toBe('120 ft');
    const turn = page.getByLabel('Turn before side 2');
    await turn.fill('100');
    await turn.press('Enter');
    expect(await turn.inputValue()).toBe('100°');
    await page.getByRole('button', { name: 'Add a corner in the middle of side 1' }).click();
    await bar(page).getByText('5 corners').waitFor();
    await page.getByRole('button', { name: 'Remove corner 2' }).click();
    await bar(page).getByText('4 corners').waitFor();
    await page.getByRole('button', { name: 'Corner 3', exact: true }).click();
    const latitude = page.getByLabel('Latitude of corner 3');
    const before = await latitude.inputValue();
    await latitude.fill(String(Number(before) - 0.00001));
    await latitude.press('Enter');
    expect(await latitude.inputValue()).not.toBe(before);
    expect(await accessFaults(page)).toEqual([]);
    await bar(page).getByRole('button', { name: 'Finish' }).click();
    await bar(page).waitFor({ state: 'detached' });
    await page.locator('.map').focus();
    await page.keyboard.press('e');
    await bar(page).getByText('4 corners').waitFor();
    const area = await page.locator('.draw-area').textContent();
    // The crosshair starts on the first corner: taken up, moved, let go.
    await page.keyboard.press('Enter');
    for (let press = 0; press < 3; press += 1) await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Enter');
    expect(await page.locator('.draw-area').textContent()).not.toBe(area);
    await page.keyboard.press('Control+z');
    expect(await page.locator('.draw-area').textContent()).toBe(area);
    await page.keyboard.press('Escape');
  });

  test('every state of it is without findings of axe, in light and dark', async () => {
    const { page } = desk;
    await tool('Draw a zone');
    await clicks([420, 640], [520, 640], [520, 740]);
    await bar(page).getByRole('button', { name: 'Throw away' }).click();
    expect(await accessFaults(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await accessFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await page.getByRole('region', { name: 'Set aside' }).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await clicks([170, 720]);
    expect(await accessFaults(page)).toEqual([]);
    expect(desk.complaints).toEqual([]);
  });
});
