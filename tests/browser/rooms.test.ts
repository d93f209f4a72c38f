import { afterAll, beforeAll, expect, test } from 'vitest';
import { parseClock } from '../../core/units/index.ts';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk, planRound } from './desk.ts';

describeWithChromium('the five rooms with an invented book', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: [] });
  });
  afterAll(async () => {
    await desk?.close();
  });

  test('the welcome page offers the three ways to begin, and the invented books', async () => {
    const { page } = desk;
    await page.getByRole('heading', { name: 'Swardway' }).waitFor();
    for (const way of ['Look at the sample', 'Import my list', 'Start empty'])
      await page.getByRole('button', { name: way }).waitFor();
    await page
      .getByRole('button', { name: /one rig \(invented\)/ })
      .first()
      .waitFor();
    expect(await page.getByRole('button', { name: /invented/ }).count()).toBeGreaterThanOrEqual(3);
  });

  test('opening one shows its lawns measured', async () => {
    const { page } = desk;
    await page
      .getByRole('button', { name: /one rig \(invented\)/ })
      .first()
      .click();
    const step = page.getByRole('button', { name: /^Ground/ });
    await step.waitFor();
    // The page of expected figures of this book: 28 lawns, 264,117 ft2 = 6.06 ac.
    await page.waitForFunction(() => document.querySelector('.step-active')?.textContent?.includes('6.06 ac'));
    expect(await step.textContent()).toContain('28 lawns');
    expect(await page.title()).toMatch(/^Bramley Fold, one rig .*: Ground - Swardway$/);
    expect(await page.getByRole('option').first().textContent()).toMatch(/[\d,]+ ft²/);
  });

  test('selecting in the list selects on the map and shows what is known', async () => {
    const { page } = desk;
    await page.getByRole('option', { name: '6 Teasel Lane' }).click();
    const details = page.getByRole('complementary', { name: 'Selected lawn' });
    expect(await details.getByLabel('Name', { exact: true }).inputValue()).toBe('6 Teasel Lane');
    expect(await page.locator('.turf-selected').count()).toBeGreaterThan(0);
    expect(await page.locator('.lawn-label-selected').textContent()).toBe('6 Teasel Lane');
  });

  test('a figure that cannot be read stays, with the reason; a good one is saved and can be taken back', async () => {
    const { page } = desk;
    const field = page.getByLabel('Clear width of side gate');
    await field.fill('wide');
    await field.press('Enter');
    const fault = page.getByRole('alert');
    expect(await fault.textContent()).toMatch(/wide/);
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    expect(await field.inputValue()).toBe('wide');
    expect(await accessFaults(page)).toEqual([]);
    await field.fill('3 ft');
    await field.press('Enter');
    expect(await field.inputValue()).toBe('36 in');
    await page.getByText(/^invented · saved \d+:\d\d [ap]m$/).waitFor();
    await page.keyboard.press('Control+z');
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('[aria-label="Clear width of side gate"]')?.value === '30 in',
    );
    await page.keyboard.press('Control+y');
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('[aria-label="Clear width of side gate"]')?.value === '36 in',
    );
    await page.keyboard.press('Control+z');
  });

  test('every shelf of the shed opens', async () => {
    const { page } = desk;
    await goToRoom(page, 'Shed');
    for (const shelf of [
      'Hand methods',
      'Rigs',
      'Fill points',
      'Products',
      'Mixes',
      'Treatments',
      'Applicators',
      'Machines',
    ]) {
      await page.getByRole('option', { name: shelf }).click();
      await page.getByRole('main').getByRole('heading', { name: shelf }).waitFor();
    }
  });

  test('a machine can be added, changed, and removed with a notice that takes it back', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'Add a machine' }).click();
    const name = page.getByRole('main').getByLabel('name, New machine');
    await name.fill('Little one');
    await name.press('Enter');
    const width = page.getByRole('main').getByLabel('transit width, Little one');
    await width.fill('-3');
    await width.press('Enter');
    expect(await page.getByRole('main').getByRole('alert').count()).toBe(1);
    await width.press('Escape');
    expect(await width.inputValue()).toBe('36 in');
    await page.getByRole('button', { name: 'Remove Little one' }).click();
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(await page.getByRole('main').getByLabel('name, Little one').inputValue()).toBe('Little one');
    await page.getByRole('button', { name: 'Remove Little one' }).click();
    await page.getByRole('button', { name: 'Close this notice' }).click();
  });

  test('a round is planned, with its days, stock and no work left over', async () => {
    const { page } = desk;
    await planRound(page, 2);
    const days = page.getByRole('region', { name: 'Days' });
    expect(await days.getByRole('row').count()).toBe(2);
    await page.getByText('Every zone of the round has a place.').waitFor();
    expect(await page.getByRole('button', { name: /^Day/ }).textContent()).toMatch(/Tue Mar 16 · \d h/);
  });

  test('planning can be stopped and keeps the best plan so far', async () => {
    const { page } = desk;
    await page.getByLabel('Seconds to search').fill('600');
    await page.getByLabel('Seconds to search').press('Enter');
    await page.getByRole('button', { name: 'Plan again' }).click();
    await page.getByText(/best so far: ./).waitFor();
    await page.getByRole('button', { name: 'Stop, keep the best' }).click();
    await page.getByRole('progressbar', { name: 'Planning' }).waitFor({ state: 'detached', timeout: 5_000 });
    expect(await page.getByRole('region', { name: 'Days' }).getByRole('row').count()).toBe(2);
  });

  test('the day shows stops in order, refills between them, and who can go', async () => {
    const { page } = desk;
    await goToRoom(page, 'Day');
    const stops = page.locator('.stop-item');
    expect(await stops.count()).toBe(28);
    expect(await page.locator('.refill-row').count()).toBeGreaterThan(3);
    const times = await page.locator('.stop-time').allTextContents();
    const seconds = times.map((time) => {
      const clock = parseClock(time);
      return clock.ok ? Number(clock.value) : Number.NaN;
    });
    expect(seconds).not.toContain(Number.NaN);
    expect(seconds).toEqual([...seconds].sort((left, right) => left - right));
    await stops.nth(4).click();
    const details = page.getByRole('complementary', { name: 'Selected stop' });
    expect(await details.getByRole('table').textContent()).toMatch(/min/);
    expect(await details.getByText('chosen').count()).toBeGreaterThan(0);
    expect(await page.locator('.lawn-label-stop').count()).toBe(28);
  });

  test('the ribbon draws every level and reads it out under the cursor', async () => {
    const { page } = desk;
    const ribbon = page.getByRole('slider', { name: /^Levels of Rig North/ });
    const lanes = await page.locator('.lane-line').count();
    expect(lanes).toBeGreaterThanOrEqual(3);
    const box = (await ribbon.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + 80);
    expect(await page.locator('.cursor-level').count()).toBe(lanes);
    const noon = await ribbon.getAttribute('aria-valuetext');
    expect(noon).toMatch(/^\d+:\d\d.*gal/);
    await ribbon.focus();
    await page.keyboard.press('Home');
    expect(await ribbon.getAttribute('aria-valuetext')).toMatch(/^7:00 am shift starts\. .*18\.0 gal/);
    const seen: string[] = [];
    for (let step = 0; step < 12; step += 1) {
      await page.keyboard.press('ArrowRight');
      seen.push((await ribbon.getAttribute('aria-valuetext')) ?? '');
    }
    expect(seen.some((each) => each.includes('stop 1,'))).toBe(true);
    expect(seen.some((each) => each.includes('refill from the rig'))).toBe(true);
    expect(seen.some((each) => /refill from the rig, .*\d gal: /.test(each))).toBe(true);
    await page.keyboard.press('End');
    expect(await ribbon.getAttribute('aria-valuetext')).toMatch(/home\./);
  });

  test('list, map and inspector show the stop that the ribbon is pointed at', async () => {
    const { page } = desk;
    const ribbon = page.getByRole('slider', { name: /^Levels of Rig North/ });
    const box = (await ribbon.boundingBox())!;
    for (const share of [0.8, 0.4]) {
      await page.mouse.move(box.x + box.width * share, box.y + 60);
      const chosen = page.locator('.stop-item[aria-current]');
      await chosen.waitFor();
      const number = await chosen.locator('.stop-number').textContent();
      expect(await page.locator('.block-selected text').allTextContents()).toContain(number);
      expect(await page.getByRole('complementary', { name: 'Selected stop' }).textContent()).toContain(
        `Stop ${number}`,
      );
      // The list has scrolled to it.
      const [line, list] = [await chosen.boundingBox(), await page.viewportSize()];
      expect(line?.y ?? -1).toBeGreaterThan(0);
      expect(line?.y ?? 0).toBeLessThan(list?.height ?? 0);
    }
  });

  test('the levels are printed alone, in greys', async () => {
    const { page } = desk;
    await page.emulateMedia({ media: 'print' });
    const grey = await page.locator('.lane-line').evaluateAll((lines) =>
      lines.map((line) => {
        const [red, green, blue] = (getComputedStyle(line).stroke.match(/\d+/g) ?? []).map(Number);
        return red === green && green === blue;
      }),
    );
    expect(grey.length).toBeGreaterThanOrEqual(3);
    expect(new Set(grey)).toEqual(new Set([true]));
    expect(await page.getByRole('heading', { name: /^Rig North, / }).isVisible()).toBe(true);
    expect(await page.locator('.stop-item').first().isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
  });

  test('the same levels stand in a table', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'as a table' }).click();
    const table = page.getByRole('region', { name: 'Levels through the day, as a table' });
    expect(await table.getByRole('row').count()).toBeGreaterThan(28);
    await page.getByRole('button', { name: 'as a table' }).click();
  });

  test('every sheet is ready and can be printed to a file', async () => {
    const { page } = desk;
    await goToRoom(page, 'Paper');
    for (const sheet of ['Load tickets', 'Truck list', 'Measure sheet', 'Run sheet']) {
      await page.getByRole('option', { name: sheet }).click();
      const frame = page.frameLocator('iframe');
      await frame.getByRole('heading', { level: 1 }).first().waitFor();
      expect(await frame.locator('body').textContent()).toMatch(/not for use/);
    }
    const download = page.waitForEvent('download', { timeout: 45_000 });
    await page.getByRole('button', { name: 'Save as PDF' }).click();
    expect((await download).suggestedFilename()).toMatch(/^Run sheet.*\.pdf$/);
  });

  test('a reload opens the same book with its plan', async () => {
    const { page } = desk;
    await page.reload();
    await page.getByRole('button', { name: /^Day Tue Mar 16/ }).waitFor();
    expect(await page.getByRole('button', { name: /^Ground/ }).textContent()).toContain('28 lawns');
  });

  test('nothing complained on the way', () => {
    expect(desk.complaints).toEqual([]);
  });

  test('about the program: its version, and the words of every licence', async () => {
    const { page } = desk;
    await page.keyboard.press('Control+k');
    await page.keyboard.type('about');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    const box = page.getByRole('dialog', { name: 'Swardway' });
    await box.getByText(/Version \d+\.\d+\.\d+/).waitFor();
    const line = box.locator('summary').filter({ hasText: /\breact 19\./ });
    await line.click();
    await box
      .getByText(/Meta Platforms/)
      .first()
      .waitFor();
    expect(await box.locator('summary').count()).toBeGreaterThan(20);
    await page.keyboard.press('Escape');
    await box.waitFor({ state: 'detached' });
  });
});
