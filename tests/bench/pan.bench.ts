import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { emptyBook, writeBook } from '../../core/book/index.ts';
import { describeWithChromium } from '../browser/chromium.ts';
import { type Desk, openDesk } from '../browser/desk.ts';
import { inventLawns } from './lawns.ts';
import { middle, share } from './spread.ts';

const FEW = 500;
const MANY = 5000;
const GOAL_MS = 33;
const GOAL_RATIO = 1.5;
const GOAL_MB = 600;

type Panned = { readonly frames: readonly number[]; readonly megabytes: number | null };

describeWithChromium(`panning over ${MANY} lawns in Chromium`, () => {
  test(`keeps the median frame under ${GOAL_MS} ms and within ${GOAL_RATIO} of that with ${FEW}`, async () => {
    const few = await panOver(FEW);
    const many = await panOver(MANY);
    const ratio = middle(many.frames) / middle(few.frames);
    const words = ({ frames }: Panned) =>
      `median frame ${middle(frames).toFixed(1)} ms, nine of ten within ${share(frames, 0.9).toFixed(1)} ms`;
    console.log(`${FEW} lawns: ${words(few)}`);
    console.log(`${MANY} lawns: ${words(many)}; ratio ${ratio.toFixed(2)} (goal ${GOAL_RATIO}), goal ${GOAL_MS} ms`);
    console.log(
      many.megabytes === null
        ? 'memory: not known on this system'
        : `memory of the page's process: ${many.megabytes.toFixed(0)} MB (goal ${GOAL_MB} MB)`,
    );
    expect(middle(many.frames)).toBeLessThan(GOAL_MS);
    expect(ratio).toBeLessThan(GOAL_RATIO);
    if (many.megabytes !== null) expect(many.megabytes).toBeLessThan(GOAL_MB);
  });
});

async function panOver(count: number): Promise<Panned> {
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-pan-'));
  const file = path.join(folder, 'lawns.json');
  const book = { ...emptyBook('lawns', `${count} lawns (invented)`), invented: true };
  await writeFile(file, writeBook({ ...book, properties: inventLawns(count, 30, 11) }));
  const desk = await openDesk({ words: [file] });
  try {
    const { page } = desk;
    await page.getByRole('option').first().waitFor({ timeout: 120_000 });
    await page.waitForFunction(
      () => !document.querySelector('.step-active')?.textContent?.includes('measuring'),
      null,
      {
        timeout: 120_000,
      },
    );
    const far = await pan(page);
    // Nearer, outlines are drawn in place of dots.
    for (let press = 0; press < 5; press += 1) await page.getByRole('button', { name: 'Closer' }).click();
    const near = await pan(page);
    expect(desk.complaints).toEqual([]);
    return { frames: [...far, ...near], megabytes: await memory(desk) };
  } finally {
    await desk.close();
    await rm(folder, { recursive: true, force: true });
  }
}

/** Drags the map about and gives the time between pictures, ms. */
async function pan(page: Page): Promise<readonly number[]> {
  const box = (await page.locator('.map').boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.evaluate(watchFrames);
  for (let turn = 0; turn < 6; turn += 1) {
    await page.mouse.down();
    await page.mouse.move(x + 180 * (turn % 2 === 0 ? 1 : -1), y + 90, { steps: 20 });
    await page.mouse.up();
    await page.mouse.move(x, y);
  }
  return page.evaluate(() => {
    const watched = window as unknown as { frames: number[]; watching: boolean };
    watched.watching = false;
    return watched.frames;
  });
}

/** Runs in the page. */
function watchFrames(): void {
  const watched = window as unknown as { frames: number[]; watching: boolean };
  watched.frames = [];
  watched.watching = true;
  let before: number | null = null;
  const next = (now: number) => {
    if (before !== null) watched.frames.push(now - before);
    before = now;
    if (watched.watching) requestAnimationFrame(next);
  };
  requestAnimationFrame(next);
}

/** What the page's process holds in memory of its own and its share of the rest, MB; null where the system does not say. */
async function memory({ context }: Desk): Promise<number | null> {
  const browser = context.browser();
  if (browser === null) return null;
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  let most = 0;
  for (const { id, type } of processInfo) {
    if (type !== 'renderer') continue;
    const text = await readFile(`/proc/${id}/smaps_rollup`, 'utf8').catch(() => null);
    const kilobytes = Number(/^Pss:\s+(\d+) kB/m.exec(text ?? '')?.[1] ?? 0);
    most = Math.max(most, kilobytes / 1024);
  }
  return most === 0 ? null : most;
}
