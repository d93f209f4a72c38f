import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { addDays } from '../../core/units/index.ts';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk } from './desk.ts';

/** An invented station: ten degree days above 32 F each day, in 2026 and until 10 March 2027; three days are left out. */
function invented(): string {
  const rows = ['Date,High,Low'];
  for (let date = '2026-01-01'; date <= '2027-03-10'; date = addDays(date, 1)) {
    if (date >= '2027-03-01' && date <= '2027-03-03') continue;
    const [year, month, day] = date.split('-');
    rows.push(`${Number(month)}/${Number(day)}/${year},52,32`);
  }
  return [...rows, '3/11/2027,520,32'].join('\n');
}

describeWithChromium('when a round is of use', () => {
  let desk: Desk;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'swardway-when-'));
    await writeFile(path.join(folder, 'station.csv'), invented());
    desk = await openDesk();
  });
  afterAll(async () => {
    await desk?.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('temperatures are read in; the unit is asked, missing days and bad rows are named', async () => {
    const { page } = desk;
    // The words depend on today.
    await page.clock.setFixedTime(new Date('2027-03-05T12:00:00'));
    await goToRoom(page, 'Round');
    await page.getByRole('tab', { name: 'When' }).click();
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Read a file' }).click();
    await (await chooser).setFiles(path.join(folder, 'station.csv'));
    const dialog = page.getByRole('dialog');
    await dialog.getByText('Say first whether the air is in Fahrenheit or Celsius.').waitFor();
    expect(await dialog.getByRole('button', { name: 'Add these' }).getAttribute('aria-disabled')).toBe('true');
    await dialog.getByLabel('Unit of the air').selectOption('F');
    await dialog.getByText('3 days: Mon Mar 1 to Wed Mar 3').waitFor();
    await dialog.getByText('no air has been so warm').waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Add these temperatures' }).click();
    await page.getByRole('region', { name: 'Temperatures' }).getByRole('row').nth(2).waitFor();
  });

  test('a published figure is picked with its source, and gives the window', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'New timing' }).click();
    await page
      .getByLabel('Begin with')
      .selectOption({ label: 'Crabgrass pre-emergent, degree days base 32 °F (Michigan State)' });
    await page.getByRole('button', { name: 'Add this timing' }).click();
    const window = page.getByRole('region', { name: 'Window' });
    // Ten a day from 15 February: 250 on the 25th day, 11 March; 500 on the 50th, 5 April.
    await window.getByText('Thursday, March 11, 2027').first().waitFor();
    const words = await window.textContent();
    expect(words).toContain('base of 32 °F');
    expect(words).toContain('counted from February 15');
    expect(words).toContain('Source: K. Frank');
    expect(words).toContain('3 days bridged by a straight line: Mon Mar 1 to Wed Mar 3.');
    const sites = page.getByRole('region', { name: 'Lawns by kind of site' });
    expect(await sites.getByRole('row').nth(1).textContent()).toContain('Thu Mar 11, expected–Sun Apr 4, expected');
    expect(await accessFaults(page)).toEqual([]);
  });

  test('the picture is walked by keyboard, and stands as a table too', async () => {
    const { page } = desk;
    const chart = page.getByRole('slider', { name: /day of the season/ });
    await chart.focus();
    await chart.press('Home');
    expect(await chart.getAttribute('aria-valuetext')).toBe(
      'Monday, February 15, 2027, 10 °F days, measured, not open',
    );
    await chart.press('PageUp');
    await chart.press('ArrowRight');
    expect(await chart.getAttribute('aria-valuetext')).toContain('Tuesday, February 23, 2027, 90 °F days');
    await page.getByRole('button', { name: 'As a table' }).click();
    const table = page.getByRole('region', { name: 'The season day by day' });
    expect(await table.getByRole('row').nth(25).textContent()).toBe('Thu Mar 11250 °F days, expectedopen');
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'As a picture' }).click();
  });

  test('lawns that will miss it are told with the reason, here and beside the plan', async () => {
    const { page } = desk;
    const closes = page.getByLabel('Closes at', { exact: true });
    await closes.fill('300');
    await closes.press('Enter');
    // 300 on the 30th day, 16 March, which is the round's only day: the last useful one is the 15th.
    const missed = page.getByRole('region', { name: /^Lawns that will miss it/ });
    await missed.getByText('no day yet, and the round goes on after the last useful day, Mon Mar 15').waitFor();
    const sites = page.getByRole('region', { name: 'Lawns by kind of site' });
    await sites.getByRole('button', { name: /lawns$/ }).press('Enter');
    expect(await sites.getByRole('button', { name: '6 Teasel Lane' }).count()).toBe(1);
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('tab', { name: 'Plan' }).click();
    await page.getByText(/lawns will miss the last useful day: see When/).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await page.keyboard.press('Control+z');
    await page.getByText(/lawns will miss the last useful day/).waitFor({ state: 'detached' });
    await page.getByRole('tab', { name: 'When' }).click();
  });

  test('figures are changed in words, typed days count, and all of it is taken back', async () => {
    const { page } = desk;
    const window = page.getByRole('region', { name: 'Window' });
    const opens = page.getByLabel('Opens at', { exact: true });
    await opens.fill('200');
    await opens.press('Enter');
    // 200 on the 20th day.
    await window.getByText('Saturday, March 6, 2027').first().waitFor();
    const from = page.getByLabel('Counted from');
    await from.fill('Feb 30');
    await from.press('Enter');
    expect(await page.getByRole('main').getByRole('alert').textContent()).toContain('No year has a day');
    await from.press('Escape');
    await page.getByText('Type days').click();
    const last = page.getByLabel('Seven days up to');
    await last.fill('2027-03-12');
    const high = page.getByLabel('highest, Friday, March 12, 2027');
    await high.fill('60');
    await high.press('Enter');
    const low = page.getByLabel('lowest, Friday, March 12, 2027');
    await low.fill('70');
    await low.press('Enter');
    expect(await page.getByRole('main').getByRole('alert').textContent()).toContain('highest is below the lowest');
    await low.fill('40');
    await low.press('Enter');
    await window.getByText('measured up to Friday, March 12, 2027').waitFor();
    expect(await accessFaults(page)).toEqual([]);
    for (let step = 0; step < 2; step += 1) await page.keyboard.press('Control+z');
    await window.getByText('measured up to Wednesday, March 10, 2027').waitFor();
    expect(desk.complaints).toEqual([]);
  });
});
