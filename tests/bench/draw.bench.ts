import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { emptyBook, writeBook } from '../../core/book/index.ts';
import { describeWithChromium } from '../browser/chromium.ts';
import { openDesk } from '../browser/desk.ts';
import { inventLawns } from './lawns.ts';
import { middle, share } from './spread.ts';

const CORNERS = 400;
/** From the event to the figure on screen. */
const GOAL_MS = 30;

describeWithChromium(`moving a corner of a zone with ${CORNERS} corners in Chromium`, () => {
  test(`shows the new area within ${GOAL_MS} ms`, async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'swardway-draw-'));
    const file = path.join(folder, 'large.json');
    const book = { ...emptyBook('large', 'Many corners (invented)'), invented: true };
    await writeFile(file, writeBook({ ...book, properties: inventLawns(20, CORNERS, 5) }));
    const desk = await openDesk({ words: [file] });
    try {
      const { page } = desk;
      await page.getByRole('option').nth(3).click();
      await page.keyboard.press('Alt+9');
      await page.getByRole('button', { name: 'all', exact: true }).click();
      await page.getByRole('button', { name: 'Move corners', exact: true }).click();
      await page.locator('.draw-area').waitFor();
      const map = (await page.locator('.map').boundingBox())!;
      await page.mouse.move(map.x + map.width / 2, map.y + map.height / 2);
      await page.evaluate(watchArea);
      let pointer = { x: map.x + map.width / 2, y: map.y + map.height / 2 };
      for (let drag = 0; drag < 8; drag += 1) {
        // Handles are drawn near the pointer alone, a moment after it moved.
        await page.waitForTimeout(150);
        const at = await page.evaluate(nearestHandle, pointer);
        await page.mouse.move(at.x, at.y);
        await page.mouse.down();
        await page.mouse.move(at.x + 24, at.y + 19, { steps: 12 });
        await page.mouse.up();
        pointer = { x: at.x + 24, y: at.y + 19 };
      }
      const times = await page.evaluate(() => (window as unknown as Watched).areaTimes);
      expect(times.length).toBeGreaterThan(40);
      console.log(
        `${CORNERS} corners: ${times.length} changes of the area, median ${middle(times).toFixed(1)} ms, ` +
          `nine of ten within ${share(times, 0.9).toFixed(1)} ms (goal ${GOAL_MS} ms, ratio ${(middle(times) / GOAL_MS).toFixed(2)})`,
      );
      expect(middle(times)).toBeLessThan(GOAL_MS);
      expect(desk.complaints).toEqual([]);
    } finally {
      await desk.close();
      await rm(folder, { recursive: true, force: true });
    }
  });
});

type Spot = { x: number; y: number };

/** Runs in the page: the middle of the corner's handle that is nearest to a place. */
function nearestHandle(place: Spot): Spot {
  const spots = [...document.querySelectorAll('.marker-icon:not(.marker-icon-middle)')].map((handle) => {
    const { x, y, width, height } = handle.getBoundingClientRect();
    return { x: x + width / 2, y: y + height / 2 };
  });
  const far = (spot: Spot) => Math.hypot(spot.x - place.x, spot.y - place.y);
  return spots.reduce((best, spot) => (far(spot) < far(best) ? spot : best));
}

type Watched = { areaTimes: number[] };

/** Runs in the page: the time from each pointer event to the change of the shown area that it brought. */
function watchArea(): void {
  const area = document.querySelector('.draw-area');
  const watched = window as unknown as Watched;
  watched.areaTimes = [];
  let began: number | null = null;
  const note = () => {
    began = performance.now();
  };
  for (const name of ['mousemove', 'mouseup']) window.addEventListener(name, note, { capture: true });
  if (area === null) return;
  new MutationObserver(() => {
    if (began !== null) watched.areaTimes.push(performance.now() - began);
    began = null;
  }).observe(area, { characterData: true, childList: true, subtree: true });
}
