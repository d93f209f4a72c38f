import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, doCommand, goToRoom, openDesk, planRound } from './desk.ts';

describeWithChromium('menus of things', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'residential-day'] });
    await desk.page.getByRole('option').first().waitFor();
  });
  afterAll(() => desk?.close());
  const menu = (name: string): Locator => desk.page.getByRole('menu', { name });
  const lawns = () => desk.page.getByRole('listbox', { name: 'Lawns' });
  const gone = (name: string) => menu(name).waitFor({ state: 'detached' });

  test('a lawn is selected by the other button, and has its commands with their reasons', async () => {
    const { page } = desk;
    await lawns().getByRole('option').nth(3).click({ button: 'right' });
    await menu('This lawn').waitFor();
    expect(await lawns().getByRole('option').nth(3).getAttribute('aria-selected')).toBe('true');
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('menuitem');
    expect(await accessFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await gone('This lawn');
  });

  test('a lawn on the map has the same menu', async () => {
    const { page } = desk;
    await page.locator('.map path.turf').nth(8).click({ button: 'right' });
    await menu('This lawn').getByRole('menuitem', { name: 'Remove the selected lawn' }).waitFor();
    await page.locator('.map path.turf-selected').first().waitFor({ state: 'attached' });
    await page.keyboard.press('Escape');
    await gone('This lawn');
  });

  test('the key for menus opens it for the active row, and a command of it is done', async () => {
    const { page } = desk;
    await lawns().focus();
    const before = await lawns().getByRole('option', { selected: true }).textContent();
    await page.keyboard.press('Shift+F10');
    await menu('This lawn').waitFor();
    await page.keyboard.press('End');
    await page.keyboard.press('Enter');
    await gone('This lawn');
    await page.getByRole('region', { name: 'Notice' }).waitFor();
    expect(await lawns().getByRole('option', { selected: true }).allTextContents()).not.toContain(before);
    await page.keyboard.press('Control+z');
    await lawns()
      .getByRole('option')
      .filter({ hasText: before ?? '' })
      .first()
      .waitFor();
  });

  test('parts of the selected lawn have theirs, on the map and in its tables', async () => {
    const { page } = desk;
    await lawns().getByRole('option').nth(3).click();
    await page.keyboard.press('Alt+9');
    await page.locator('.map path.kept-out[data-subject="part"]').first().click({ button: 'right' });
    await menu('This part of the lawn')
      .getByRole('menuitem', { name: /^Delete/ })
      .waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await gone('This part of the lawn');
    const gate = page.locator('table tr[data-subject="part"] td').last();
    await gate.click({ button: 'right', position: { x: 1, y: 1 } });
    await menu('This part of the lawn').waitFor();
    await page.keyboard.press('Escape');
    await gone('This part of the lawn');
  });

  test('a corner that is being drawn is marked, not removed, and removed by its menu', async () => {
    const { page } = desk;
    const map = page.locator('.map');
    const box = await map.boundingBox();
    if (box === null) throw new Error('there is no map');
    await doCommand(page, 'Draw a lawn');
    const at = (x: number, y: number) => ({ position: { x: box.width * x, y: box.height * y } });
    for (const [x, y] of [
      [0.3, 0.3],
      [0.5, 0.3],
      [0.5, 0.5],
    ] as const)
      await map.click(at(x, y));
    const corners = page.getByRole('row').filter({ has: page.getByRole('button', { name: /^Remove corner/ }) });
    await expect.poll(() => corners.count()).toBe(3);
    await map.click({ button: 'right', ...at(0.5, 0.3) });
    await menu('This corner').waitFor();
    expect(await corners.count()).toBe(3);
    await menu('This corner')
      .getByRole('menuitem', { name: /^Remove the marked corner/ })
      .click();
    await expect.poll(() => corners.count()).toBe(2);
    await map.click({ button: 'right', ...at(0.7, 0.7) });
    await menu('This outline')
      .getByRole('menuitem', { name: /^Throw/ })
      .click();
    await expect.poll(() => corners.count()).toBe(0);
  });

  test('rows of the Shed and sheets have theirs', async () => {
    const { page } = desk;
    await goToRoom(page, 'Shed');
    await page
      .locator('tr[data-subject="record"] .row-tools')
      .first()
      .click({ button: 'right', position: { x: 2, y: 2 } });
    await menu('This row')
      .getByRole('menuitem', { name: /^Duplicate / })
      .waitFor();
    await page.keyboard.press('Escape');
    await gone('This row');
    await goToRoom(page, 'Paper');
    await page.getByRole('option', { name: /^Measure sheet/ }).click({ button: 'right' });
    await menu('This sheet').waitFor();
    expect(await page.getByRole('option', { name: /^Measure sheet/ }).getAttribute('aria-selected')).toBe('true');
    await page.keyboard.press('Escape');
    await gone('This sheet');
  });

  test('a stop on the board is selected and can be pinned', async () => {
    const { page } = desk;
    await goToRoom(page, 'Round');
    await planRound(page, 1);
    await goToRoom(page, 'Day');
    await page.getByRole('tab', { name: 'Rigs' }).click();
    const stop = page.locator('.board-stop').nth(2);
    await stop.click({ button: 'right' });
    await menu('This stop')
      .getByRole('menuitem', { name: /^Pin the stop/ })
      .click();
    await expect.poll(() => stop.getAttribute('aria-label')).toContain('pinned');
    await stop.click({ button: 'right' });
    await menu('This stop')
      .getByRole('menuitem', { name: /^Pin the stop.*, on/ })
      .waitFor();
    await page.keyboard.press('Escape');
    await gone('This stop');
  });

  test('a stop of the list, a refill, a rig and the levels have theirs', async () => {
    const { page } = desk;
    await page.locator('.stop-item').nth(1).click({ button: 'right' });
    await menu('This stop').waitFor();
    expect(await page.locator('.stop-item').nth(1).getAttribute('aria-current')).toBe('true');
    await page.keyboard.press('Escape');
    await page.locator('.board-rig').first().click({ button: 'right' });
    await menu('This rig on this day')
      .getByRole('menuitem', { name: /^Pin every stop/ })
      .waitFor();
    await page.keyboard.press('Escape');
    await gone('This rig on this day');
    await page.getByRole('tab', { name: 'Levels' }).click();
    await page.getByRole('slider', { name: /^Levels/ }).focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Shift+F10');
    await menu('Loads of this day')
      .getByRole('menuitem', { name: /Load tickets/ })
      .click();
    await page.getByRole('option', { name: /^Load tickets/, selected: true }).waitFor();
    expect(desk.complaints).toEqual([]);
  });
});
