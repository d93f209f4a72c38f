import path from 'node:path';
import { expect, test } from 'vitest';
import { startServer } from '../../../electron/loopback/index.ts';
import { describeWithChromium, openBrowser } from '../../browser/chromium.ts';
import { ROOT } from '../support/bundle.ts';
import { startTestHost } from '../support/test-host.ts';

describeWithChromium('the address that the browser is opened with', () => {
  test('leads to the program once, is gone from the address line, and a reload finds the program again', async () => {
    const services = await startTestHost();
    const server = await startServer(services.services, path.join(ROOT, 'dist/renderer'));
    const browser = await openBrowser();
    try {
      const page = await browser.newPage();
      await page.goto(server.openingAddress);
      const welcome = page.getByRole('button', { name: 'Look at the sample' });
      await welcome.waitFor();
      expect(new URL(page.url()).hash).toBe('');
      await page.reload();
      await welcome.waitFor();
      const late = await (await browser.newContext()).newPage();
      await late.goto(server.openingAddress);
      await late.getByText('This page was opened without its key.').waitFor();
      expect(await late.getByRole('navigation', { name: 'Rooms' }).count()).toBe(0);
    } finally {
      await browser.close();
      await server.close();
      await services.close();
    }
  });
});
