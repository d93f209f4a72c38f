import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type RunningHost, startHost } from '../electron/loopback/host.ts';
import { buildIfStale } from '../support/build-first.ts';
import { describeWithChromium, openBrowser } from './chromium.ts';
import { handsOn } from './ground-hands.ts';

const bar = (page: Page) => page.getByRole('region', { name: 'Being drawn' });
const advice = async (page: Page) => (await bar(page).textContent()) ?? '';
const corners = [
  [420, 570],
  [620, 570],
  [620, 700],
] as const;

describeWithChromium('an outline that is being drawn', () => {
  let home = '';
  let host: RunningHost;
  let browser: Browser;
  let page: Page;

  const open = async (words: readonly string[]) => {
    host = await startHost(home, words);
    page = await (
      await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' })
    ).newPage();
    await page.goto(host.address);
    await page.getByRole('option').first().waitFor();
  };
  const draw = async () => {
    const hands = handsOn(page);
    await page.getByRole('option', { name: '6 Teasel Lane' }).click();
    await page.keyboard.press('Alt+9');
    await hands.click('Draw a zone');
    for (const [x, y] of corners) await hands.clickMap(x, y);
    await bar(page).getByText('3 corners').waitFor();
  };

  beforeAll(async () => {
    buildIfStale();
    home = await mkdtemp(path.join(tmpdir(), 'swardway-draft-'));
    browser = await openBrowser();
    await open(['--sample', 'residential-day']);
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await host?.stop();
    await rm(home, { recursive: true, force: true });
  });

  test('stays when the room is changed and changed back, and when another tool is asked for', async () => {
    await draw();
    await page.keyboard.press('Alt+2');
    await page.locator('h1', { hasText: 'Shed' }).waitFor({ state: 'attached' });
    await page.keyboard.press('Alt+1');
    await bar(page).getByText('3 corners').waitFor();
    const gate = page.getByRole('button', { name: 'Place a gate', exact: true });
    expect(await gate.getAttribute('aria-disabled')).toBe('true');
    expect(await gate.getAttribute('title')).toContain('being drawn');
    await page.keyboard.press('g');
    expect(await advice(page)).toContain('3 corners');
  });

  test('is taken back corner by corner and done again, the book left as it is', async () => {
    await page.keyboard.press('Control+z');
    await bar(page).getByText('2 corners').waitFor();
    await page.keyboard.press('Control+z');
    await bar(page).getByText('1 corner;').waitFor();
    await page.keyboard.press('Control+y');
    await page.keyboard.press('Control+y');
    await bar(page).getByText('3 corners').waitFor();
    await page.keyboard.press('Backspace');
    await bar(page).getByText('2 corners').waitFor();
    await page.keyboard.press('Control+z');
    await bar(page).getByText('3 corners').waitFor();
  });

  test('is there again when the program is killed in the middle of it, and asks to go on', async () => {
    // The last corner was set a moment ago; nobody waits for it to be kept longer than a second.
    await page.waitForTimeout(1000);
    const ended = new Promise((done) => host.process.once('exit', (_code, signal) => done(signal)));
    host.process.kill('SIGKILL');
    expect(await ended).toBe('SIGKILL');
    await open(['--sample', 'residential-day']);
    await bar(page).getByText('Unfinished: Zone of 6 Teasel Lane, 3 corners').waitFor();
    await bar(page).getByRole('button', { name: 'Go on' }).click();
    expect(await advice(page)).toContain('3 corners');
    await page.keyboard.press('Control+z');
    await bar(page).getByText('2 corners').waitFor();
    await page.keyboard.press('Control+y');
  });

  test('is set aside by Esc, outlives a reload there, and is taken up again', async () => {
    await page.keyboard.press('Escape');
    const aside = page.getByRole('region', { name: 'Set aside' });
    await aside.getByText('Zone of 6 Teasel Lane, 3 corners').waitFor();
    await page.reload();
    await aside.getByRole('button', { name: /^Go on with Zone of 6 Teasel Lane/ }).click();
    await bar(page).getByText('3 corners').waitFor();
  });

  test('is thrown away only when that is meant', async () => {
    await bar(page).getByRole('button', { name: 'Throw away' }).click();
    await bar(page).getByText('It cannot be taken back.').waitFor();
    await page.keyboard.press('Escape');
    await bar(page).getByText('3 corners').waitFor();
    await bar(page).getByRole('button', { name: 'Throw away' }).click();
    await bar(page).getByRole('button', { name: 'Throw away' }).click();
    await bar(page).waitFor({ state: 'detached' });
    await page.reload();
    await page.getByRole('option').first().waitFor();
    expect(await bar(page).count()).toBe(0);
  });

  test('that crosses itself shows where, and is not finished', async () => {
    const hands = handsOn(page);
    await page.getByRole('option', { name: '6 Teasel Lane' }).click();
    await page.keyboard.press('Alt+9');
    await hands.click('Draw a zone');
    for (const [x, y] of [
      [420, 640],
      [620, 640],
      [620, 780],
      [500, 600],
    ] as const)
      await hands.clickMap(x, y);
    await bar(page).getByText('Sides cross').waitFor();
    const mark = (await page.locator('.crossing-mark').boundingBox())!;
    const map = (await page.locator('.map').boundingBox())!;
    // From (620, 780) to (500, 600): at y = 640 it is at x = 500 + 120 * 40 / 180 = 526.7.
    expect(mark.x + mark.width / 2 - map.x).toBeCloseTo(526.7, -0.5);
    expect(mark.y + mark.height / 2 - map.y).toBeCloseTo(640, -0.5);
    await page.keyboard.press('Enter');
    await page.getByRole('alert').getByText(/cross/i).waitFor();
    await page.getByRole('button', { name: 'Close this notice' }).click();
    await page.keyboard.press('Backspace');
    await bar(page).getByText('3 corners').waitFor();
  });

  test('snaps to a corner of the neighbour, and with Alt does not', async () => {
    await page.keyboard.press('Escape');
    const turf = page.locator('.turf-selected').first();
    const edge = await turf.evaluate((element) => {
      const line = element as unknown as SVGPathElement;
      const at = line.getPointAtLength(0);
      const frame = line.getScreenCTM()!;
      return { x: at.x * frame.a + frame.e, y: at.y * frame.d + frame.f };
    });
    await page.getByRole('button', { name: 'Draw a zone', exact: true }).click();
    await page.mouse.move(edge.x + 30, edge.y + 30);
    await page.mouse.move(edge.x + 5, edge.y + 5);
    await page.locator('.snap-corner').waitFor();
    const mark = (await page.locator('.snap-corner').boundingBox())!;
    expect(Math.hypot(mark.x + mark.width / 2 - edge.x, mark.y + mark.height / 2 - edge.y)).toBeLessThan(2);
    await page.keyboard.down('Alt');
    await page.mouse.move(edge.x + 6, edge.y + 5);
    expect(await page.locator('.snap-mark').count()).toBe(0);
    await page.keyboard.up('Alt');
    await page.keyboard.press('Escape');
    await bar(page).waitFor({ state: 'detached' });
  });

  test('of the book is changed by its handles: moved, a corner more, a corner less, each taken back', async () => {
    await page.getByRole('button', { name: 'back', exact: true }).click();
    await page.getByRole('button', { name: 'Move corners', exact: true }).click();
    const handles = page.locator('.marker-icon:not(.marker-icon-middle)');
    await bar(page).getByText('4 corners').waitFor();
    const before = await page.locator('.draw-area').textContent();
    const drag = async (box: { x: number; y: number; width: number; height: number }) => {
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
      await page.mouse.down();
      await page.mouse.move(box.x + 40, box.y + 60, { steps: 4 });
      await page.mouse.up();
    };
    await drag((await handles.nth(2).boundingBox())!);
    expect(await page.locator('.draw-area').textContent()).not.toBe(before);
    await drag((await page.locator('.marker-icon-middle').nth(2).boundingBox())!);
    await bar(page).getByText('5 corners').waitFor();
    const last = (await handles.nth(0).boundingBox())!;
    await page.mouse.click(last.x + 6, last.y + 6, { button: 'right' });
    await page.getByRole('menuitem', { name: /^Remove the marked corner/ }).click();
    await bar(page).getByText('4 corners').waitFor();
    for (let step = 0; step < 3; step += 1) await page.keyboard.press('Control+z');
    expect(await page.locator('.draw-area').textContent()).toBe(before);
    await page.keyboard.press('Escape');
  });
});
