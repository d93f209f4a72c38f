import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Book } from '../../core/book/index.ts';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk, planRound } from './desk.ts';

/** The invented day with one rig, its heads driven with a foot of overlap and one trim pass. */
function bookWithPasses(file: string): void {
  const sample = new URL('../../sample-routes/residential-day.json', import.meta.url);
  const book = JSON.parse(readFileSync(sample, 'utf8')) as Book;
  const machines = book.machines.map((machine) => ({
    ...machine,
    heads: machine.heads.map((head) => ({ ...head, passes: { overlapFt: 1, trimPasses: 1, turnSec: 4 } })),
  }));
  writeFileSync(file, JSON.stringify({ ...book, machines }));
}

describeWithChromium('the pass map', () => {
  let desk: Desk;
  const folder = mkdtempSync(path.join(tmpdir(), 'swardway-passes-'));
  beforeAll(async () => {
    const file = path.join(folder, 'passes.json');
    bookWithPasses(file);
    desk = await openDesk({ words: [file] });
    await desk.page.getByRole('option', { name: '6 Teasel Lane' }).click();
    await desk.page.getByRole('button', { name: 'front', exact: true }).click();
  });
  afterAll(async () => {
    await desk?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  test('shows every pass of a zone as a band with its line, what is gone over twice, and what is not reached', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'Show on the map' }).click();
    const figures = page.locator('.pass-figures');
    await figures.waitFor();
    const [, trims, swaths] = /(\d+) trim pass(?:es)?, (\d+) swaths?/.exec((await figures.textContent()) ?? '') ?? [];
    const bands = Number(trims) + Number(swaths);
    expect(bands).toBeGreaterThan(3);
    expect(await page.locator('.pass-band').count()).toBe(bands);
    expect(await page.locator('.pass-line-swath').count()).toBe(Number(swaths));
    expect(await page.locator('.pass-overlap').first().getAttribute('fill')).toBe('url(#pass-overlap)');
    expect(await page.locator('.pass-missed').first().getAttribute('fill')).toBe('url(#pass-missed)');
    // A band has its true width at every scale.
    const width = async () => Number(await page.locator('.pass-band-swath').first().getAttribute('stroke-width'));
    const before = await width();
    await page.getByRole('button', { name: 'Closer' }).click();
    await page.getByRole('button', { name: 'Closer' }).click();
    expect((await width()) / before).toBeCloseTo(2, 2);
  });

  test('gives the figures of a pass by arrow keys and by pointing at it', async () => {
    const { page } = desk;
    const along = page.getByLabel('Along the way');
    await along.focus();
    const spoken = () => along.getAttribute('aria-valuetext');
    expect(await spoken()).toMatch(
      /^Trim pass 1 of \d+: [\d.,]+ ft long, 8\.0 ft wide, [\d,]+ ft² covered; begins at 0:00 min/,
    );
    const first = await spoken();
    await page.keyboard.press('ArrowRight');
    expect(await spoken()).not.toBe(first);
    expect(await page.locator('.pass-chosen').count()).toBe(1);
    await page.locator('.pass-band-swath').last().hover({ force: true });
    await page.waitForFunction(() => document.querySelector('.pass-along output')?.textContent?.startsWith('Swath '));
    expect(await accessFaults(page)).toEqual([]);
  });

  test('follows an edit: a direction fixed for the zone turns the swaths', async () => {
    const { page } = desk;
    const field = page.getByLabel('Which way swaths run on front');
    await field.fill('E');
    await field.press('Enter');
    await page.waitForFunction(() => document.querySelector('.pass-figures')?.textContent?.includes('90° E'));
    await page.getByRole('button', { name: 'Show on the map' }).click();
    expect(await page.locator('.pass-band').count()).toBe(0);
  });

  test('stands on the chosen stop of a planned day too', async () => {
    const { page } = desk;
    await planRound(page, 2);
    await goToRoom(page, 'Day');
    await page.getByRole('button', { name: 'Show on the map' }).click();
    await page.locator('.pass-figures').waitFor();
    expect(await page.locator('.pass-band').count()).toBeGreaterThan(3);
    expect(await accessFaults(page)).toEqual([]);
  });

  test('prints on the measure sheet where it is wanted, in black on white', async () => {
    const { page } = desk;
    await goToRoom(page, 'Paper');
    await page.getByRole('option', { name: /^Measure sheet/ }).click();
    const sheet = page.frameLocator('.paper-page');
    await sheet.locator('svg.map').waitFor();
    expect(await sheet.locator('.pass-swath').count()).toBe(0);
    const choice = page.getByLabel('Passes on the plan');
    const head = await choice.locator('option').nth(1).getAttribute('value');
    await choice.selectOption(head);
    await sheet.locator('.pass-swath').first().waitFor({ state: 'attached' });
    expect(await sheet.getByText(/^On the plan: passes of .*, \d+ trim passes \(thick\) and \d+ swaths/).count()).toBe(
      1,
    );
    expect(
      await sheet
        .locator('.pass-swath')
        .first()
        .evaluate((line) => getComputedStyle(line).stroke),
    ).toBe('rgb(17, 17, 17)');
    expect(desk.complaints).toEqual([]);
  });
});
