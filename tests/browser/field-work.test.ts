import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk } from './desk.ts';

async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Enter');
}

describeWithChromium('measuring without a map', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'residential-day'] });
    await desk.page.getByRole('option', { name: '6 Teasel Lane' }).click();
  });
  afterAll(async () => {
    await desk?.close();
  });

  test('a zone by offsets shows its working while it is typed, and its area in the table', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'Add a zone by its area' }).click();
    await page.getByLabel('How the area of zone 3 is known').selectOption({ label: 'from offsets' });
    const working = page.locator('output.working').first();
    expect(await working.textContent()).toContain('Enter the distance');
    await type(page, 'Distance between two offsets', '30');
    await type(page, 'Offsets in order', '0, 2.65, 3.8, 3.75, 4.65, 3.6, 5, 5.8');
    // The same figures as in feet: 781 (surveying question, quizall.hivanix.in 64713)
    await working.getByText('together 781 ft²').waitFor();
    expect(await page.locator('tr.row-selected').textContent()).toContain('781 ft²');
    await page.getByText(/^invented · saved \d+:\d\d [ap]m$/).waitFor();
  });

  test('a slope from rise over run, with a figure that is refused and stays', async () => {
    const { page } = desk;
    await page.getByLabel('How the slope of zone 3 is known').selectOption({ label: 'rise over run' });
    await type(page, 'Rise', '40');
    await type(page, 'Run', '15');
    expect(await page.getByRole('alert').first().textContent()).toContain('too steep');
    await type(page, 'Run', '150');
    await page.getByText('26.7 % = 14.9°').waitFor();
    expect(await page.getByLabel('Slope of zone 3', { exact: true }).inputValue()).toBe('14.9°');
    expect(await accessFaults(page)).toEqual([]);
  });

  test('a slope typed over it takes the working away; undo brings both back', async () => {
    const { page } = desk;
    await type(page, 'Slope of zone 3', '20 %');
    expect(await page.getByLabel('How the slope of zone 3 is known').inputValue()).toBe('entered');
    await page.locator('.inspector-head').first().click();
    await page.keyboard.press('Control+z');
    await page.getByText('26.7 % = 14.9°').waitFor();
  });

  test('an outline that may be off gives the area its likely error', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'front', exact: true }).click();
    await type(page, 'How far the outline of front may be off', '1 ft');
    const row = page.locator('tr.row-selected');
    await row.getByText(/± \d+ ft²/).waitFor();
    await page.getByText(/± \d+ ft² of what is drawn/).waitFor();
  });

  test("the owner's steps give a price and a margin, none stands there before", async () => {
    const { page } = desk;
    await page.getByText('No price: enter your own steps').waitFor();
    await page.getByText('Your figures (for every lawn)').click();
    await type(page, 'Price per 1,000 ft² of a new step', '9');
    await page.getByText(/^Price per visit: .* at \$9\.00 per 1,000 ft²/).waitFor();
    await type(page, 'Visits per season', '5');
    await page.getByText('Season of 5 visits').waitFor();
    expect(await accessFaults(page)).toEqual([]);
  });

  test('the sheet shows it all, and the customer gets no margin', async () => {
    const { page } = desk;
    await goToRoom(page, 'Paper');
    await page.getByRole('option', { name: /Measure sheet/ }).click();
    const sheet = page.frameLocator('iframe.paper-page');
    await sheet.getByText('offsets, Simpson').waitFor();
    expect(await sheet.getByText('rise over run').count()).toBe(1);
    expect(await sheet.getByText('Margin').count()).toBeGreaterThan(0);
    await page.getByLabel("customer's copy: no machines, costs or margin").check();
    await sheet.getByText('Price per visit').first().waitFor();
    expect(await sheet.getByText('Margin').count()).toBe(0);
    expect(desk.complaints).toEqual([]);
  });
});

describeWithChromium('checks of the ground with fixes', () => {
  let desk: Desk;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'swardway-checks-'));
    const sample = await readFile(new URL('../../sample-routes/residential-day.json', import.meta.url), 'utf8');
    const book = JSON.parse(sample) as { properties: { gates: { at: [number, number] }[] }[] };
    // Some 110 ft to the east of its fence.
    const gate = book.properties[0]?.gates[0];
    if (gate !== undefined) gate.at = [gate.at[0] + 0.0004, gate.at[1]];
    const file = path.join(folder, 'strayed.json');
    await writeFile(file, JSON.stringify(book));
    desk = await openDesk({ words: [file] });
  });
  afterAll(async () => {
    await desk?.close();
    await rm(folder, { recursive: true, force: true });
  });

  test('a stray gate is told, put right by a button, and comes back with undo', async () => {
    const { page } = desk;
    await page.getByText(/It stands .* from the nearest zone/).waitFor();
    await page.getByRole('button', { name: /^Show property 2 Teasel Lane, gate/ }).click();
    const fix = page.getByRole('button', { name: /^Move the gate to the nearest edge/ });
    await fix.click();
    await fix.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await fix.waitFor();
    expect(await accessFaults(page)).toEqual([]);
    expect(desk.complaints).toEqual([]);
  });
});
