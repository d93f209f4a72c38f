import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { describeWithChromium, openBrowser } from './chromium.ts';
import { drawMark } from './mark.ts';

const address = (png: Uint8Array): string => `data:image/png;base64,${Buffer.from(png).toString('base64')}`;

describeWithChromium('the icons of the packages', () => {
  test('show the program’s drawing as it is (npm run icons)', async () => {
    const browser = await openBrowser();
    try {
      const page = await browser.newPage();
      const drawn = await drawMark(page, readFileSync(path.resolve('renderer/mark.svg'), 'utf8'), 64);
      const stored = readFileSync(path.resolve('electron/packaging/icons/linux/64x64.png'));
      const difference = await page.evaluate(
        async (addresses) => {
          const pixels = await Promise.all(
            addresses.map(async (src) => {
              const image = new Image();
              image.src = src;
              await image.decode();
              const canvas = new OffscreenCanvas(64, 64).getContext('2d');
              canvas?.drawImage(image, 0, 0);
              return [...(canvas?.getImageData(0, 0, 64, 64).data ?? [])];
            }),
          );
          const [one, other] = pixels;
          return (one ?? []).reduce((sum, value, at) => sum + Math.abs(value - (other?.[at] ?? 0)), 0) / (64 * 64 * 4);
        },
        [address(drawn), address(stored)],
      );
      // Edges may be smoothed otherwise by another Chromium; another drawing differs by ten and more.
      expect(difference).toBeLessThan(2);
    } finally {
      await browser.close();
    }
  });
});
