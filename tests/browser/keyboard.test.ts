import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeWithChromium } from './chromium.ts';
import { type Desk, doCommand, openDesk } from './desk.ts';
import { heard } from './heard.ts';
import { tabTo } from './tab-to.ts';

const focusWords = (page: Page) =>
  page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '');

describeWithChromium('without a mouse', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'residential-day'] });
    await desk.page.getByRole('option').first().waitFor();
  });
  afterAll(async () => {
    await desk?.close();
  });

  test('a lawn is chosen in the list and its gate changed', async () => {
    const { page } = desk;
    await tabTo(page, '.list, .list-item');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    const name = await page.locator('.list-item[aria-selected="true"] .row-title').textContent();
    expect(name).not.toBeNull();
    await tabTo(page, '[aria-label^="Clear width of"]');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('44 in');
    await page.keyboard.press('Enter');
    await page.getByText(/saved \d+:\d\d [ap]m$/).waitFor();
    await page.keyboard.press('Control+z');
    expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe(name);
  });

  test('a panel is sized and folded from its splitter', async () => {
    const { page } = desk;
    await tabTo(page, '.split-left .splitter');
    const before = (await page.locator('.panel-left').boundingBox())!.width;
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    expect((await page.locator('.panel-left').boundingBox())!.width).toBeLessThan(before);
    await page.keyboard.press('Enter');
    expect(await page.locator('.panel-left').isVisible()).toBe(false);
    await page.keyboard.press('Enter');
    expect(await page.locator('.panel-left').isVisible()).toBe(true);
  });

  test('the round is planned from the palette', async () => {
    const { page } = desk;
    await page.keyboard.press('Control+k');
    await page.getByRole('dialog', { name: 'Find a command' }).waitFor();
    await page.keyboard.type('plan spring');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.getByText(/best so far: ./).waitFor();
    // How far it is and that it has ended is told behind a dialog too.
    await page.keyboard.press('?');
    const keys = page.getByRole('dialog', { name: 'Keys' });
    await keys.waitFor();
    await expect
      .poll(() => heard(page), { timeout: 15_000 })
      .toContainEqual(expect.stringMatching(/^Planning: \d\d %/));
    await page.keyboard.press('Escape');
    await keys.waitFor({ state: 'detached' });
    await page.keyboard.press('Control+.');
    await page.getByRole('button', { name: 'Plan again' }).waitFor();
    await page.getByRole('progressbar', { name: 'Planning' }).waitFor({ state: 'detached' });
    await expect.poll(() => heard(page)).toContainEqual(expect.stringContaining('is kept: 1 rig day'));
  });

  test('the day is read stop by stop and event by event', async () => {
    const { page } = desk;
    await page.keyboard.press('Alt+4');
    await page.getByRole('slider').waitFor();
    await page.keyboard.press('Alt+ArrowDown');
    expect(await page.locator('.stop-item[aria-current="true"] .stop-number').textContent()).toBe('1');
    await page.keyboard.press('Alt+ArrowDown');
    expect(await page.locator('.stop-item[aria-current="true"] .stop-number').textContent()).toBe('2');
    await tabTo(page, '[role="slider"]', 140);
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowRight');
    expect(await page.getByRole('slider').getAttribute('aria-valuetext')).toMatch(/leaves the shop/);
  });

  test('a sheet is reached, and the keys of every command are listed', async () => {
    const { page } = desk;
    await page.keyboard.press('Alt+5');
    await page.locator('iframe').waitFor();
    await tabTo(page, '.list, .list-item');
    await page.keyboard.press('ArrowDown');
    await page.getByRole('heading', { name: /^Load tickets/ }).waitFor();
    await page.keyboard.press('?');
    const help = page.getByRole('dialog', { name: 'Keys' });
    await help.waitFor();
    const shown = await help.textContent();
    for (const each of ['Ctrl+K', 'Menu of what has the focus', 'Next or previous event of the levels']) {
      expect(shown).toContain(each);
    }
    // The window's own Print prints the keys that lie over the sheet, not the sheet.
    const printed = await page.evaluate(() => {
      window.dispatchEvent(new Event('beforeprint'));
      const texts = [...document.querySelectorAll('.printed-sheet')].map((each) => each.shadowRoot?.textContent ?? '');
      window.dispatchEvent(new Event('afterprint'));
      return texts;
    });
    expect(printed).toHaveLength(1);
    expect(printed[0]).toContain('Menu of what has the focus');
    expect(await page.locator('.printed-sheet').count()).toBe(0);
    await page.keyboard.press('Escape');
    await help.waitFor({ state: 'detached' });
  });

  test('a command that cannot be used is still found, and says why', async () => {
    const { page } = desk;
    await page.keyboard.press('F1');
    await page.keyboard.type('stop');
    const option = page.getByRole('option', { name: /Stop planning/ });
    expect(await option.textContent()).toContain('Nothing is being planned');
    // Escape goes back one step at a time: first the words go, then the palette.
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    // Its key says so too, where it can be seen.
    await page.keyboard.press('Control+.');
    await page.getByRole('region', { name: 'Notice' }).getByText('Nothing is being planned').waitFor();
  });

  test('a notice behind a dialog is told, stands in front of it, and is closed from the keyboard', async () => {
    const { page } = desk;
    await page.keyboard.press('Control+.');
    await page.keyboard.press('?');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await expect.poll(() => heard(page)).toContainEqual(expect.stringContaining('Nothing is being planned'));
    const close = page.getByRole('button', { name: 'Close this notice' });
    const isOnTop = await close.evaluate((button) => {
      const { left, top, width, height } = button.getBoundingClientRect();
      return button.contains(document.elementFromPoint(left + width / 2, top + height / 2));
    });
    expect(isOnTop).toBe(true);
    await close.focus();
    await page.keyboard.press('Enter');
    await close.waitFor({ state: 'detached' });
    // The focus goes back to the dialog, not to the page that is shut off behind it.
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.closest('[role="dialog"]') !== null))
      .toBe(true);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  });

  test('news stays until it is closed where that is chosen', async () => {
    const page = await desk.openPage();
    await page.getByRole('option').first().waitFor();
    await page.clock.install();
    const notice = page.getByRole('region', { name: 'Notice' });
    const tell = () => doCommand(page, 'Turn single-character keys');
    await tell();
    await notice.waitFor();
    await page.clock.fastForward(10_000);
    await notice.waitFor({ state: 'detached' });
    await doCommand(page, 'Keep news');
    await tell();
    await notice.waitFor();
    await page.clock.fastForward(60_000);
    expect(await notice.count()).toBe(1);
    await notice.getByRole('button', { name: 'Close this notice' }).click();
    await notice.waitFor({ state: 'detached' });
    await doCommand(page, 'Keep news');
    // A page that is closed at once may not have told its host yet.
    const kept = async () => JSON.parse(await readFile(path.join(desk.dataFolder, 'settings.json'), 'utf8'));
    await expect.poll(kept).toMatchObject({ keepNews: false });
    await page.close();
  });

  test('the map is moved by steps without a drag', async () => {
    const { page } = desk;
    await page.keyboard.press('Alt+1');
    const turf = page.locator('.map path.turf').first();
    const before = await turf.boundingBox();
    await doCommand(page, 'Map to the east');
    const after = await turf.boundingBox();
    const width = (await page.locator('.map').boundingBox())?.width ?? 0;
    expect((before?.x ?? 0) - (after?.x ?? 0)).toBeCloseTo(width / 4, -1);
    await doCommand(page, 'Map to the west');
    // To the pixel.
    expect(Math.abs(((await turf.boundingBox())?.x ?? 0) - (before?.x ?? 0))).toBeLessThan(1.5);
  });

  test('keys that are single letters can be turned off, and others go on', async () => {
    const { page } = desk;
    const keys = page.getByRole('dialog', { name: 'Keys' });
    const palette = page.getByRole('dialog', { name: 'Find a command' });
    const turn = async (from: 'on' | 'off') => {
      await page.keyboard.press('F1');
      await palette.waitFor();
      await page.keyboard.type('single-character');
      await page.getByRole('option', { name: `Turn single-character keys ${from === 'on' ? 'off' : 'on'}` }).waitFor();
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Enter');
      await palette.waitFor({ state: 'detached' });
    };
    await turn('on');
    await expect.poll(() => heard(page)).toContainEqual('Single-character keys are off');
    await page.keyboard.press('?');
    await page.keyboard.press('Alt+1');
    await page.getByRole('listbox', { name: 'Lawns' }).waitFor();
    expect(await keys.count()).toBe(0);
    await turn('off');
    await expect.poll(() => heard(page)).toContainEqual('Single-character keys are on');
    await page.keyboard.press('?');
    await keys.waitFor();
    await page.keyboard.press('Escape');
    await keys.waitFor({ state: 'detached' });
  });

  test('the menu opens, is walked through, and gives the focus back', async () => {
    const { page } = desk;
    await tabTo(page, '.menu-button', 140);
    await page.keyboard.press('Enter');
    await page.getByRole('menu', { name: 'Menu' }).waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.type('round');
    await page.keyboard.press('ArrowRight');
    const round = page.getByRole('menu', { name: 'Round' });
    await round.waitFor();
    await expect.poll(() => round.evaluate((menu) => menu.contains(document.activeElement))).toBe(true);
    // What cannot be used is come to as well.
    await page.keyboard.type('stop');
    const refused = page.getByRole('menuitem', { name: /Stop planning/ });
    await expect.poll(() => refused.evaluate((item) => item === document.activeElement)).toBe(true);
    expect(await refused.getAttribute('aria-disabled')).toBe('true');
    // L draws a lawn elsewhere; here it looks for a line that begins so.
    await page.keyboard.press('l');
    expect(await page.locator('.draw-bar').count()).toBe(0);
    await page.keyboard.press('ArrowLeft');
    await round.waitFor({ state: 'detached' });
    await page.keyboard.press('Escape');
    await page.getByRole('menu').waitFor({ state: 'detached' });
    await expect.poll(() => focusWords(page)).toBe('Menu');
  });

  test('news goes by itself, but not while it has the focus', async () => {
    const { page } = desk;
    const notice = page.getByRole('region', { name: 'Notice' });
    await page.clock.install();
    await page.keyboard.press('Control+.');
    await notice.getByRole('button', { name: 'Close this notice' }).focus();
    await page.clock.fastForward(60_000);
    expect(await notice.isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Menu' }).focus();
    await page.clock.fastForward(5_000);
    expect(await notice.isVisible()).toBe(true);
    await page.clock.fastForward(2_000);
    await notice.waitFor({ state: 'detached', timeout: 3_000 });
  });
});
