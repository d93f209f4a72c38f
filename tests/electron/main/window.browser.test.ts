import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { OpenBook } from '../../../core/contract/index.ts';
import { describeWithChromium, openBrowser } from '../../browser/chromium.ts';
import { sampleText } from '../../support/samples.ts';
import { inWindow, LIFE_CHECKS } from './checks/life.ts';
import { startDesktop, temporaryHome } from './desktop.ts';

describeWithChromium('the desktop shell', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser?.close());
  for (const { name, run } of LIFE_CHECKS) {
    test(name, async () => {
      const home = await temporaryHome();
      await run({ home, start: (words) => startDesktop(browser, home, words) });
    });
  }

  test('shows the ways to begin at the first start', async () => {
    await inWindow(startDesktop(browser, await temporaryHome()), async ({ window, page, must }) => {
      expect(window.isVisible()).toBe(true);
      await page.getByRole('button', { name: 'Look at the sample' }).waitFor();
      expect(await must('app.info', {})).toMatchObject({ host: 'window', filePicking: 'dialog', makesPdf: true });
    });
  });

  test('ends a plan on demand with the best so far, and at its own end without waiting for it', async () => {
    await inWindow(startDesktop(browser, await temporaryHome()), async ({ must, listen, heard }) => {
      await listen(['job.progress', 'job.done', 'job.failed']);
      const { session, book } = await must('book.openSample', { sampleId: 'residential-day' });
      const start = () => must('job.startPlan', { session, roundId: book.rounds[0]?.id ?? '', seed: 1, seconds: 600 });
      const { jobId } = await start();
      // The passes are reckoned first; a plan that is ended before there is one has none.
      const isPlaced = async () => JSON.stringify(await heard()).includes('28 of 28 visits placed');
      await expect.poll(isPlaced, { timeout: 20_000 }).toBe(true);
      await must('job.cancel', { jobId });
      const last = async () => (await heard()).findLast(({ name }) => name !== 'job.progress');
      await expect.poll(last, { timeout: 20_000 }).toBeDefined();
      expect((await last())?.values[0]).toMatchObject({ jobId, cancelled: true, plan: { unplaced: [] } });
      await start();
    });
  });

  test('opens and writes files by the dialogs of the system; the page sees names, never paths', async () => {
    const home = await temporaryHome();
    const json = path.join(home, 'mixed.json');
    const target = path.join(home, 'out.csv');
    await writeFile(json, sampleText('mixed-day'));
    await inWindow(startDesktop(browser, home), async ({ electron, must }) => {
      electron.dialog.answers.push(
        { canceled: false, filePaths: [json] },
        { canceled: true, filePaths: [] },
        { canceled: false, filePath: target },
        { canceled: true, filePath: '' },
      );
      const picked = await must('file.pick', { purpose: 'book' });
      if (picked.kind !== 'picked') throw new Error('a file was picked');
      expect(JSON.stringify(picked)).not.toContain(home);
      const opened: OpenBook = await must('book.open', { token: picked.token });
      expect(opened.book.id).toBe((JSON.parse(sampleText('mixed-day')) as { readonly id: string }).id);
      expect(await must('file.pick', { purpose: 'csv' })).toEqual({ kind: 'cancelled' });
      expect(await must('file.saveText', { suggestedName: 'a.csv', text: 'x' })).toEqual({
        kind: 'saved',
        name: 'out.csv',
      });
      expect(await must('file.saveText', { suggestedName: 'a.csv', text: 'y' })).toEqual({ kind: 'cancelled' });
      expect(await readFile(target, 'utf8')).toBe('x');
      expect(electron.dialog.asked.map(({ kind }) => kind)).toEqual([
        'showOpenDialog',
        'showOpenDialog',
        'showSaveDialog',
        'showSaveDialog',
      ]);
      expect(electron.dialog.asked[0]?.options.filters).toEqual([{ name: 'Books', extensions: ['swardway', 'json'] }]);
    });
  });

  test('opens a book that the system hands over, by a second start or as macOS does it', async () => {
    const home = await temporaryHome();
    const books = [path.join(home, 'mixed.json'), path.join(home, 'round.json')] as const;
    await writeFile(books[0], sampleText('mixed-day'));
    await writeFile(books[1], sampleText('four-day-round'));
    const names = (['mixed-day', 'four-day-round'] as const).map(
      (each) => (JSON.parse(sampleText(each)) as { readonly name: string }).name,
    );
    await inWindow(startDesktop(browser, home), async ({ electron, page }) => {
      await page.getByRole('button', { name: 'Look at the sample' }).waitFor();
      electron.app.emit('second-instance', {}, ['swardway', '--flag', 'mixed.json'], home);
      await page
        .locator('.book-title')
        .getByText(names[0] ?? '')
        .waitFor();
      let prevented = false;
      electron.app.emit('open-file', { preventDefault: () => (prevented = true) }, books[1]);
      await page
        .locator('.book-title')
        .getByText(names[1] ?? '')
        .waitFor();
      expect(prevented).toBe(true);
      // A word that is no book opens nothing; a page that is loaded anew has the newest book.
      electron.app.emit('second-instance', {}, ['swardway', '--json', 'notes.txt'], home);
      await page.reload();
      await page
        .locator('.book-title')
        .getByText(names[1] ?? '')
        .waitFor();
      expect(await page.getByRole('region', { name: 'Notice' }).count()).toBe(0);
    });
  });

  test('prints a page to a PDF in a window that nobody sees and that runs no script', async () => {
    const home = await temporaryHome();
    const target = path.join(home, 'sheet.pdf');
    await inWindow(startDesktop(browser, home), async ({ electron, must }) => {
      electron.dialog.answers.push({ canceled: false, filePath: target });
      const html =
        '<!doctype html><title>Sheet</title><h1>Run sheet</h1><script>document.body.textContent = "script ran"</script>';
      expect(await must('print.pdf', { html, suggestedName: 'sheet.pdf' })).toEqual({
        kind: 'saved',
        name: 'sheet.pdf',
      });
      expect((await readFile(target)).subarray(0, 5).toString()).toBe('%PDF-');
      expect(electron.windows.size).toBe(1);
    });
  });

  test('ends when its window is closed', async () => {
    const desktop = await startDesktop(browser, await temporaryHome());
    desktop.window.close();
    await desktop.electron.within(desktop.electron.app.ended);
    expect(await desktop.electron.abandon()).toEqual([]);
  });
});
