import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, test } from 'vitest';
import { describeWithChromium, openBrowser } from '../../browser/chromium.ts';
import { GUARD_CHECKS } from './checks/guards.ts';
import { PAGE_CHECKS } from './checks/page.ts';
import { type Desktop, startDesktop } from './desktop.ts';

describeWithChromium('the desktop shell keeps pages in', () => {
  let browser: Browser;
  let home = '';
  let desktop: Desktop;
  beforeAll(async () => {
    browser = await openBrowser();
    home = await mkdtemp(path.join(tmpdir(), 'swardway-security-'));
    desktop = await startDesktop(browser, home);
  });
  afterAll(async () => {
    await desktop?.close();
    await browser?.close();
    await rm(home, { recursive: true, force: true, maxRetries: 3 });
  });

  for (const { name, run } of [...GUARD_CHECKS, ...PAGE_CHECKS]) test(name, () => run(desktop));
});
