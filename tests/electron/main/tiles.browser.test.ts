import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeWithChromium, openBrowser } from '../../browser/chromium.ts';
import { paintedPng, writeMbtiles } from '../../support/tiles.ts';
import { startDesktop, temporaryHome } from './desktop.ts';

describeWithChromium('tiles in the desktop window', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  test('come under the window’s own address with its key, and not otherwise', async () => {
    const home = await temporaryHome();
    const file = path.join(home, 'a.mbtiles');
    await writeMbtiles(file, [{ z: 0, x: 0, y: 0, bytes: await paintedPng([1, 2, 3]) }]);
    const { electron, must, page } = await startDesktop(browser, home);
    try {
      electron.dialog.answers.push({ canceled: false, filePaths: [file] });
      const picked = await must('file.pick', { purpose: 'background' });
      if (picked.kind !== 'picked') throw new Error('a file was picked');
      const { address } = await must('background.open', { token: picked.token });
      const sound = address.replace(/\{.\}/g, '0');
      const widthOf = (source: string) =>
        page.evaluate(async (named) => {
          const image = new Image();
          image.src = named;
          await image.decode().catch(() => undefined);
          return image.naturalWidth;
        }, source);
      expect(await widthOf(sound)).toBe(256);
      const key = sound.split('/')[2] ?? '';
      expect(await widthOf(sound.replace(key, 'C'.repeat(key.length)))).toBe(0);
      // The policy of the page lets no picture in from elsewhere, whatever the network does.
      expect(await widthOf('https://basemap.nationalmap.gov/x.png')).toBe(0);
    } finally {
      await electron.abandon();
    }
  });
});
