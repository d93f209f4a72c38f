import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { SHEETS, sheetsHtml } from '../../../core/reports/index.ts';
import { describeWithChromium, openBrowser } from '../../browser/chromium.ts';
import { everySheet, fixtureBook } from './fixture.ts';

const POINT_PX = 96 / 72;

describeWithChromium('sheets printed by Chromium', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser.close();
  });

  it('become a PDF on Letter paper, a new page for every sheet', async () => {
    const page = await browser.newPage();
    await page.setContent(sheetsHtml(everySheet()));
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    await page.close();
    // Letter is 8.5 x 11 in, 612 x 792 points.
    expect(pdf).toMatch(/\/MediaBox \[0 0 612 792\]/);
    const pages = pdf.match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;
    expect(pages).toBeGreaterThanOrEqual(SHEETS.length);
    expect(pages).toBeLessThan(4 * SHEETS.length);
  });

  it('show no text below 12 pt outside maps, and nothing wider than the page', async () => {
    const page = await browser.newPage({ viewport: { width: 720, height: 900 } });
    await page.emulateMedia({ media: 'print' });
    await page.setContent(sheetsHtml(everySheet()));
    const found = await page.evaluate(() => {
      const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      const small: string[] = [];
      for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
        const parent = node.parentElement;
        if (parent === null || parent.closest('svg') !== null || (node.textContent ?? '').trim() === '') continue;
        if (Number.parseFloat(getComputedStyle(parent).fontSize) < 16) small.push(node.textContent ?? '');
      }
      return { small, width: document.documentElement.scrollWidth };
    });
    await page.close();
    // 12 pt are 16 px.
    expect(12 * POINT_PX).toBe(16);
    expect(found.small).toEqual([]);
    expect(found.width).toBeLessThanOrEqual(720);
  });

  it('keep to the page whatever is written into names: one word of 150 letters, right to left, emoji', async () => {
    const odd = `${'Longmeadow'.repeat(15)} רחוב הגפן 12 🌱 <b>`;
    const page = await browser.newPage({ viewport: { width: 720, height: 900 } });
    await page.emulateMedia({ media: 'print' });
    await page.setContent(sheetsHtml(everySheet(fixtureBook((text) => `${text} ${odd}`)), { print: 'large' }));
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    await page.close();
    expect(width).toBeLessThanOrEqual(720);
  });

  it('draw turf, water and gates so that grey paper tells them apart', async () => {
    const page = await browser.newPage();
    await page.setContent(sheetsHtml(everySheet()));
    const drawn = await page.evaluate(() => {
      const count = (look: string): number => document.querySelectorAll(`svg.map .${look}`).length;
      const filled = [...document.querySelectorAll('svg.map .turf, svg.map .water')].filter(
        (shape) => getComputedStyle(shape).fill !== 'none',
      );
      return { lines: count('thread'), dots: count('dot'), gates: count('gate'), filled: filled.length };
    });
    await page.close();
    expect(drawn.filled).toBe(0);
    for (const count of [drawn.lines, drawn.dots, drawn.gates]) expect(count).toBeGreaterThan(0);
  });
});
