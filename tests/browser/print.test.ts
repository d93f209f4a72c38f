import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { accessFaults } from './axe.ts';
import { describeWithChromium } from './chromium.ts';
import { type Desk, goToRoom, openDesk, planRound } from './desk.ts';

/** Pages of a PDF as Chromium writes it: one object of the type Page each. */
function pagesOf(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

/** What is there for the eye when the page is on paper: the first thing in the body that has a height. */
function printed(page: Page) {
  return page.evaluate(() => {
    window.dispatchEvent(new Event('beforeprint'));
    const shown = [...document.body.children].filter((each) => each.getBoundingClientRect().height > 0);
    const found = {
      shown: shown.map((each) => each.className),
      text: shown[0]?.shadowRoot?.textContent ?? '',
      line: getComputedStyle(document.body, '::before').content,
    };
    window.dispatchEvent(new Event('afterprint'));
    return { ...found, left: document.querySelectorAll('.printed-sheet').length };
  });
}

describeWithChromium("printing by the browser's own menu, and a day with many near stops", () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk({ words: ['--sample', 'residential-day'], colorScheme: 'dark' });
    await planRound(desk.page, 2);
  });
  afterAll(async () => {
    await desk?.close();
  });

  test('prints the whole run sheet: as many pages as the sheet has by itself', async () => {
    const { page, context } = desk;
    await goToRoom(page, 'Paper');
    const sheet = (await page.locator('iframe').getAttribute('srcdoc')) ?? '';
    const alone = await context.newPage();
    await alone.goto('about:blank');
    await alone.setContent(sheet);
    await alone.evaluate(() => document.fonts.ready);
    const own = pagesOf(await alone.pdf({ preferCSSPageSize: true }));
    await alone.close();
    expect(own).toBeGreaterThan(2);
    expect(pagesOf(await page.pdf({ preferCSSPageSize: true }))).toBe(own);
  });

  test('prints on the paper and in the size of print that are chosen, and keeps the choice', async () => {
    const { page } = desk;
    await page.getByLabel('Paper size').selectOption('a4');
    await page.getByLabel('Size of print').selectOption('large');
    const frame = page.locator('iframe');
    await expect.poll(() => frame.getAttribute('srcdoc')).toContain('size:A4');
    expect(await frame.getAttribute('srcdoc')).toContain('font:16pt');
    await expect.poll(() => frame.getAttribute('srcdoc')).toContain('Stops 1 to');
    // A4 is 210 x 297 mm, 595.3 x 841.9 points; Letter is 612 x 792.
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(/\/MediaBox \[([^\]]*)\]/.exec(pdf)?.[1]).toMatch(/^0 0 59[45][.\d]* 84[12][.\d]*$/);
    const saved = await page.evaluate(
      () => document.querySelector<HTMLSelectElement>('[aria-label="Paper size"]')?.value,
    );
    expect(saved).toBe('a4');
    await page.getByLabel('Paper size').selectOption('letter');
    await page.getByLabel('Size of print').selectOption('normal');
    await expect.poll(() => frame.getAttribute('srcdoc')).toContain('size:letter');
  });

  test('leaves header, lists and panels off the paper, and nothing behind', async () => {
    const { page } = desk;
    await page.emulateMedia({ media: 'print' });
    const paper = await printed(page);
    expect(paper.shown).toEqual(['printed-sheet']);
    expect(paper.text).toMatch(/Run sheet.*Before you start/s);
    expect(paper.line).toBe('none');
    expect(paper.left).toBe(0);
    await page.emulateMedia({ media: null });
  });

  test('in another room prints one line that says where sheets are printed', async () => {
    const { page } = desk;
    await goToRoom(page, 'Round');
    await page.emulateMedia({ media: 'print' });
    const paper = await printed(page);
    expect(paper.shown).toEqual([]);
    expect(paper.line).toContain('use Paper, Print…');
    await page.emulateMedia({ media: null });
    expect(pagesOf(await page.pdf())).toBe(1);
  });

  test('from afar some numbers of stops are dots and none covers another; closer by all are numbers', async () => {
    const { page } = desk;
    await goToRoom(page, 'Day');
    const crowded = page.locator('.lawn-label-crowded');
    expect(await crowded.count()).toBe(0);
    for (let step = 0; step < 4; step += 1) await page.getByRole('button', { name: 'Farther' }).click();
    await expect.poll(() => crowded.count()).toBeGreaterThan(0);
    const centres = await page.locator('.lawn-label-stop:not(.lawn-label-crowded)').evaluateAll((labels) =>
      labels.map((label) => {
        const box = label.getBoundingClientRect();
        return [box.x + box.width / 2, box.y + box.height / 2] as const;
      }),
    );
    expect(centres.length).toBeGreaterThan(2);
    const covered = centres.flatMap(([x, y], index) =>
      centres.slice(index + 1).filter(([u, v]) => Math.abs(x - u) < 25 && Math.abs(y - v) < 21),
    );
    expect(covered).toEqual([]);
    for (let step = 0; step < 5; step += 1) await page.getByRole('button', { name: 'Closer' }).click();
    await expect.poll(() => crowded.count()).toBe(0);
  });

  test('the selected stop keeps its number', async () => {
    const { page } = desk;
    for (let step = 0; step < 6; step += 1) await page.getByRole('button', { name: 'Farther' }).click();
    await expect.poll(() => page.locator('.lawn-label-crowded').count()).toBeGreaterThan(0);
    for (const stop of [7, 8, 9]) {
      await page.locator('.stop-item').nth(stop).click();
      const label = page.locator('.lawn-label-selected');
      expect(await label.textContent()).toBe(String(stop + 1));
      expect(await label.evaluate((each) => each.classList.contains('lawn-label-crowded'))).toBe(false);
    }
  });

  test('lays the passes of the day and draws them on its map pages', async () => {
    const { page } = desk;
    await goToRoom(page, 'Paper');
    await page.getByRole('option', { name: 'Map pages' }).click();
    const frame = page.locator('iframe[title^="Map pages"]');
    await frame.waitFor({ timeout: 60_000 });
    const sheet = (await frame.getAttribute('srcdoc')) ?? '';
    // The whole way and the stops, then a map for each of the 28 lawns: one machine with one head goes to all of them.
    expect(sheet.match(/<svg class="map/g)).toHaveLength(2 + 28);
    // Two zones on most lawns, with several swaths on each.
    expect(sheet.match(/class="pass-swath"/g)?.length).toBeGreaterThan(28 * 6);
    expect(sheet.match(/class="pass-trim"/g)?.length).toBeGreaterThan(28);
  });

  test('hands over a calendar of the day among the files for other programs', async () => {
    const { page } = desk;
    await goToRoom(page, 'Paper');
    await page.getByRole('option', { name: 'Files' }).click();
    const handed = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save Days and stops for calendars (iCalendar)' }).click();
    const file = await handed;
    expect(file.suggestedFilename()).toBe('Spring pre-emergent 2027-03-16 Rig North.ics');
    const text = readFileSync(await file.path(), 'utf8');
    expect(text).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect(text.match(/BEGIN:VEVENT/g)).toHaveLength(1 + 28);
    expect(await accessFaults(page)).toEqual([]);
  });

  test('nothing complained on the way', () => {
    expect(desk.complaints).toEqual([]);
  });
});
