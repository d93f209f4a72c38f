import { afterAll, beforeAll, expect, test } from 'vitest';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk } from './desk.ts';

describeWithChromium('the calendar and the programmes of the round room', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'four-day-round'] });
  });
  afterAll(async () => {
    await desk?.close();
  });

  test('days are chosen by arrow keys, held back by share, and made holidays', async () => {
    const { page } = desk;
    await goToRoom(page, 'Round');
    await page.getByRole('tab', { name: 'Calendar' }).click();
    // The sample's days are 15 to 18 March 2027, Monday to Thursday.
    await page.getByRole('button', { name: /^Monday, March 15, 2027, day of the round/ }).focus();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('heading', { name: 'Tuesday, March 16, 2027' }).waitFor();
    await page.getByRole('button', { name: 'Make it a holiday' }).click();
    await page.getByRole('button', { name: /^Tuesday, March 16, 2027, holiday/ }).waitFor();
    const share = page.getByLabel('Share of the days lost to rain');
    await share.fill('30 %');
    await share.press('Enter');
    // 0.3 of three working days is 0.9, rounded up one: the last.
    await page.getByRole('button', { name: /^Thursday, March 18, 2027, held back/ }).waitFor();
    await page.getByText(/3 working days, of which the last one, Thu Mar 18, 2027, is held back/).waitFor();
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await page.getByRole('button', { name: /^Tuesday, March 16, 2027, day of the round/ }).waitFor();
  });

  test('weather is typed by the hour of the shift', async () => {
    const { page } = desk;
    await goToRoom(page, 'Shed');
    await goToRoom(page, 'Round');
    await page.getByRole('tab', { name: 'Calendar' }).click();
    await page.getByText('Weather by the hour').click();
    const wind = page.getByLabel(/^Wind at 7:00 am/);
    await wind.fill('12 mph');
    await wind.press('Enter');
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('[aria-label="Wind at 7:00 am"]')?.value === '12 mph',
    );
  });

  test('a table of weather is taken once its units are said', async () => {
    const { page } = desk;
    const rows = ['date,hour,wind,rain (in)', '2027-03-17,9,20,0', '2027-03-17,10,24,0.1', '2027-03-17,11,breezy,0'];
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Read a file' }).click();
    await (await chooser).setFiles({
      name: 'yard.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(rows.join('\n')),
    });
    const take = page.getByRole('button', { name: 'Take these days' });
    await take.waitFor();
    expect(await take.getAttribute('title')).toBe('Say the unit of the wind');
    await page.getByLabel('Wind is in').selectOption('km/h');
    await page.getByText('3 rows: 2 taken, 1 refused, 0 without a figure; 1 day.').waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await take.click();
    await page.getByRole('button', { name: /^Wednesday, March 17, 2027/ }).click();
    // 20 km/h is 12.43 mph.
    expect(await page.getByLabel('Wind at 9:00 am').inputValue()).toBe('12.4 mph');
  });

  test('lawns are chosen by a part of the address, and those left out are told with why', async () => {
    const { page } = desk;
    const address = page.getByLabel('Lawns of the round: address has');
    await address.fill('Alder');
    await address.press('Enter');
    await page.getByText(/its address has no “Alder”/).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await page.keyboard.press('Control+z');
  });

  test('a lawn that is put on hold is left out, with that reason', async () => {
    const { page } = desk;
    await goToRoom(page, 'Ground');
    await page.getByRole('option').first().click();
    await page.getByText('Tags, hold, closed days, notice').click();
    await page.getByLabel('Tags', { exact: true }).fill('corner lot');
    await page.getByLabel('Tags', { exact: true }).press('Enter');
    await page.getByLabel('Left out of rounds').selectOption('on-hold');
    await page.getByLabel('Close a day of the week').selectOption('wednesday');
    await page.getByLabel('Why it is closed on Wednesdays').fill('mowing');
    await page.getByLabel('Why it is closed on Wednesdays').press('Enter');
    await page.getByText('on hold, corner lot, 1 closed day').waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await goToRoom(page, 'Round');
    await page.getByText('on hold (1)').waitFor();
  });

  test('a programme of two steps makes the rounds of a season in one step', async () => {
    const { page } = desk;
    await page.getByRole('tab', { name: 'Programmes' }).click();
    await page.getByRole('button', { name: 'Add a programme' }).click();
    await page.getByRole('button', { name: 'Add a step' }).click();
    await page.getByLabel('Step 2: follows').selectOption({ label: 'Step 1' });
    const least = page.getByLabel('Step 2: least days after');
    await least.fill('35');
    await least.press('Enter');
    const year = page.getByLabel('Year of the season');
    await year.fill('2028');
    await year.press('Enter');
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('button', { name: /Make this season/ }).click();
    await page.getByRole('button', { name: /^Step 1 2028/ }).waitFor();
    await page.getByRole('button', { name: /^Step 2 2028/ }).waitFor();
    await page.getByRole('button', { name: 'Copy this round to another year' }).click();
    await page.getByRole('button', { name: /^Step 1 2029/ }).waitFor();
    expect(desk.complaints).toEqual([]);
  });
});
