import { expect, test } from 'vitest';
import { loopbackPort } from '../../../electron/loopback/index.ts';
import { withoutScripts } from '../../../electron/services/printer/index.ts';
import { describeWithChromium, openBrowser } from '../../browser/chromium.ts';

const SHEET =
  '<!doctype html><html lang="en"><head><title>Sheet</title><style>p{color:rgb(1, 2, 3)}</style></head>' +
  '<body><p>as it was</p><script>document.querySelector("p").textContent = "changed"</script></body></html>';

describeWithChromium('printing a sheet to PDF on the loopback host', () => {
  test('makes a file', async () => {
    const port = await loopbackPort();
    const printed = await port.printPdf?.(SHEET);
    if (printed === undefined || !printed.ok) throw new Error(JSON.stringify(printed));
    // Every PDF file starts with "%PDF-" (ISO 32000-1, 7.5.2).
    expect(Buffer.from(printed.value.slice(0, 5)).toString('latin1')).toBe('%PDF-');
  });

  test('lets the sheet keep its styles but run no script', async () => {
    const browser = await openBrowser();
    try {
      const page = await browser.newPage();
      await page.setContent(withoutScripts(SHEET));
      const paragraph = page.locator('p');
      expect(await paragraph.textContent()).toBe('as it was');
      expect(await paragraph.evaluate((element) => getComputedStyle(element).color)).toBe('rgb(1, 2, 3)');
      expect(await page.evaluate(() => document.compatMode)).toBe('CSS1Compat');
    } finally {
      await browser.close();
    }
  });
});
