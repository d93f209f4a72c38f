import { expect, test } from 'vitest';
import { describeWithChromium, openBrowser } from '../browser/chromium.ts';

describeWithChromium('the browser of the tests', () => {
  test('opens, shows a page and runs its script', async () => {
    const browser = await openBrowser();
    try {
      const page = await browser.newPage();
      await page.setContent('<main><p>6 gal</p></main>');
      expect(await page.evaluate(() => document.querySelector('p')?.textContent)).toBe('6 gal');
    } finally {
      await browser.close();
    }
  });
});
