import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { sampleText } from '../support/samples.ts';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk } from './desk.ts';
import { dropFile } from './drop.ts';

const TODAY = '2027-03-10T12:00:00';

/**
 * Days that can be read month first or day first, a day left out, and a column that says Fahrenheit and holds figures of Celsius: the
 * lowest of a winter night at -9 F is no lawn's.
 */
const TEMPERATURES = `Yard station, invented
Kept by hand

Date,High (F),Low (F)
01/02/2027,2,-6
01/03/2027,4,-9
01/05/2027,3,-8
`;
const WEATHER = `date,hour,wind,rain (in)
2027-03-17,9,20,0
2027-03-17,10,24,0.1
`;

describeWithChromium('files and figures that do not go together', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'mixed-day'] });
    await desk.page.clock.setFixedTime(new Date(TODAY));
    await desk.page.getByRole('option').first().waitFor();
  });
  afterAll(async () => {
    await desk?.close();
  });

  test('temperatures dropped on the window: the order of the dates and Celsius under Fahrenheit are asked, missing days are told', async () => {
    const { page } = desk;
    await dropFile(page, 'yard.csv', TEMPERATURES);
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Order of the dates').waitFor();
    const add = dialog.getByRole('button', { name: 'Add these temperatures' });
    expect(await add.getAttribute('aria-disabled')).toBe('true');
    await dialog
      .getByLabel('Order of the dates')
      .selectOption({ label: 'month, day, year: 01/02/2027 is Saturday, January 2, 2027' });
    await dialog.getByText(/whether the air is in Fahrenheit or Celsius/).waitFor();
    await dialog.getByLabel('Unit of the air').selectOption('C');
    await dialog.getByText('1 day: Mon Jan 4').waitFor();
    // 2 C is 35.6 F and -6 C is 21.2 F.
    expect(await dialog.getByText(/^Read so:/).textContent()).toBe(
      'Read so: Saturday, January 2, 2027, highest 35.6 °F, lowest 21.2 °F.',
    );
    expect(await accessFaults(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Cancel' }).click();
    await dialog.waitFor({ state: 'detached' });
  });

  test('weather dropped on the window waits in the calendar, with what has to be asked', async () => {
    const { page } = desk;
    await goToRoom(page, 'Ground');
    await dropFile(page, 'yard-hours.csv', WEATHER);
    await page.getByRole('tab', { name: 'Calendar', selected: true }).waitFor();
    const take = page.getByRole('button', { name: 'Take these days' });
    await take.waitFor();
    expect(await take.getAttribute('title')).toBe('Say the unit of the wind');
    await page.getByLabel('Wind is in').selectOption('km/h');
    await take.click();
    await page.getByText('1 day of weather in the book.').waitFor();
  });

  test('a due date that was moved to before today is taken, and told with what it means', async () => {
    const { page } = desk;
    await page.getByRole('tab', { name: 'Plan', exact: true }).click();
    await page.getByLabel('Due by').fill('2027-03-01');
    await page
      .getByText('It is due on Mon Mar 1, 2027, before today, Wed Mar 10, 2027: every day that is left is late.')
      .waitFor();
    await page.getByLabel('Due by').fill('');
    await expect.poll(() => page.getByText(/It is due on Mon Mar 1, 2027/).count()).toBe(0);
  });

  test('a fleet of a rig without machine or hand method is told', async () => {
    const { page } = desk;
    await goToRoom(page, 'Shed');
    await page.getByRole('option', { name: /^Rigs/ }).click();
    await page.getByRole('button', { name: 'Add a rig' }).click();
    await goToRoom(page, 'Round');
    await page.getByRole('tab', { name: 'Fleets' }).click();
    await page.getByRole('button', { name: 'Add a fleet' }).click();
    const fleet = page.getByRole('region', { name: 'Fleets' });
    await fleet.getByRole('checkbox', { name: 'New rig' }).check();
    for (const name of ['Rig North', 'Rig South']) await fleet.getByRole('checkbox', { name }).uncheck();
    await page.getByRole('tab', { name: 'Plan', exact: true }).click();
    await page.getByText(/None of its rigs carries a machine or a hand method, so it can treat nothing/).waitFor();
    expect(desk.complaints).toEqual([]);
  });
});

describeWithChromium('a book that somebody else has open', () => {
  test('is shown as it is stored with the reason, and takes no change', async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'swardway-two-'));
    await writeFile(path.join(folder, 'day.json'), sampleText('residential-day'));
    const first = await openDesk({ words: [path.join(folder, 'day.json')] });
    try {
      await first.page.getByRole('option').first().waitFor();
      const books = path.join(first.dataFolder, 'books');
      const [file = ''] = (await readdir(books)).filter((name) => name.endsWith('.swardway'));
      const second = await openDesk({ words: [path.join(books, file)] });
      try {
        const { page } = second;
        const notice = page.getByRole('region', { name: 'Notice' });
        await notice.getByText(/Somebody else has this book open.*cannot be changed here/).waitFor();
        expect(await accessFaults(page)).toEqual([]);
        await notice.getByRole('button', { name: 'Close this notice' }).click();
        await page.locator('.save-state').getByText('read only').waitFor();
        await page.getByRole('option', { name: '6 Teasel Lane' }).click();
        const name = page.getByLabel('Name', { exact: true });
        await name.fill('Elsewhere');
        await name.press('Enter');
        await notice.getByText(/Somebody else has this book open/).waitFor();
        expect(await page.getByRole('option', { name: '6 Teasel Lane' }).count()).toBe(1);
        expect(await first.page.getByRole('option', { name: '6 Teasel Lane' }).count()).toBe(1);
        expect(second.complaints).toEqual([]);
      } finally {
        await second.close();
      }
    } finally {
      await first.close();
      await rm(folder, { recursive: true, force: true });
    }
  });
});
