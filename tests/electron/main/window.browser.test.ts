import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { JobDone, JobProgress, OpenBook } from '../../../core/contract/index.ts';
import { judgePlan } from '../../../core/plan/judge/index.ts';
import { openStore } from '../../../electron/services/store/index.ts';
import { describeWithChromium, openBrowser } from '../../browser/chromium.ts';
import { startDouble } from '../../double/index.ts';
import { problemOf, sampleText } from '../../support/samples.ts';
import { type Desktop, MAIN, startDesktop, temporaryHome } from './desktop.ts';

describeWithChromium('the desktop shell', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser?.close());
  /** Runs the work in a window and ends the program properly. */
  const inWindow = async (home: string, work: (desktop: Desktop) => Promise<void>, words: readonly string[] = []) => {
    const desktop = await startDesktop(browser, home, words);
    try {
      await work(desktop);
    } catch (error) {
      await desktop.electron.abandon();
      throw error;
    }
    await desktop.electron.close();
  };

  test('shows the ways to begin at the first start', async () => {
    await inWindow(await temporaryHome(), async ({ window, page, must }) => {
      expect(window.isVisible()).toBe(true);
      await page.getByRole('button', { name: 'Look at the sample' }).waitFor();
      expect(await must('app.info', {})).toMatchObject({ host: 'window', filePicking: 'dialog', makesPdf: true });
    });
  });

  test('keeps an edit that was told as saved over its end, and leaves the file whole and closed', async () => {
    const home = await temporaryHome();
    await inWindow(home, async ({ must }) => {
      const { session } = await must('book.openSample', { sampleId: 'mixed-day' });
      const action = { kind: 'set', changes: { name: 'Kept over the end' } } as const;
      expect(await must('book.apply', { session, action, baseRevision: 0 })).toMatchObject({ revision: 1 });
    });
    // No log beside the file: the book was closed, not dropped.
    expect((await readdir(path.join(home, 'samples'))).filter((name) => name.startsWith('mixed-day'))).toEqual([
      'mixed-day.swardway',
    ]);
    const store = await openStore(path.join(home, 'samples/mixed-day.swardway'));
    expect(store.ok && store.value.stored.book.name).toBe('Kept over the end');
    if (store.ok) await store.value.close();
    await inWindow(home, async ({ must }) => {
      expect((await must('book.openSample', { sampleId: 'mixed-day' })).book.name).toBe('Kept over the end');
    });
  });

  test('plans with progress, in its real worker, and the judge accepts the plan', async () => {
    await inWindow(await temporaryHome(), async ({ must, listen, heard }) => {
      await listen(['job.progress', 'job.done', 'job.failed']);
      const { session, book } = await must('book.openSample', { sampleId: 'residential-day' });
      const { jobId } = await must('job.startPlan', {
        session,
        roundId: book.rounds[0]?.id ?? '',
        seed: 1,
        seconds: 1.5,
      });
      const last = async () => (await heard()).findLast(({ name }) => name !== 'job.progress');
      await expect.poll(last, { timeout: 40_000 }).toBeDefined();
      const end = await last();
      if (end?.name !== 'job.done') throw new Error(JSON.stringify(end?.values));
      const done = end?.values[0] as JobDone;
      expect(done).toMatchObject({ jobId, session, cancelled: false });
      expect(judgePlan(problemOf(book), done.plan).violations).toEqual([]);
      const progress = (await heard()).filter(({ name }) => name === 'job.progress');
      expect(progress.length).toBeGreaterThan(2);
      expect(progress.every(({ values }) => (values[0] as JobProgress).jobId === jobId)).toBe(true);
    });
  });

  test('ends a plan on demand with the best so far, and at its own end without waiting for it', async () => {
    await inWindow(await temporaryHome(), async ({ must, listen, heard }) => {
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

  test('a page that is loaded anew is a new screen: the sessions of the old one are closed', async () => {
    await inWindow(await temporaryHome(), async ({ must, call, page }) => {
      const { session } = await must('book.openSample', { sampleId: 'mixed-day' });
      await page.reload();
      expect(await call('book.read', { session })).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
      expect(await must('book.openSample', { sampleId: 'mixed-day' })).toMatchObject({ revision: 0 });
    });
  });

  test('opens and writes files by the dialogs of the system; the page sees names, never paths', async () => {
    const home = await temporaryHome();
    const json = path.join(home, 'mixed.json');
    const target = path.join(home, 'out.csv');
    await writeFile(json, sampleText('mixed-day'));
    await inWindow(home, async ({ electron, must }) => {
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

  test('prints a page to a PDF in a window that nobody sees and that runs no script', async () => {
    const home = await temporaryHome();
    const target = path.join(home, 'sheet.pdf');
    await inWindow(home, async ({ electron, must }) => {
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

  test('opens a book named on the command line', async () => {
    const home = await temporaryHome();
    const json = path.join(home, 'mixed.json');
    await writeFile(json, sampleText('mixed-day'));
    await inWindow(
      home,
      async ({ must }) => {
        const { openAtStart } = await must('app.info', {});
        if (openAtStart?.kind !== 'file') throw new Error('a file was named');
        expect((await must('book.open', { token: openAtStart.token })).book.properties.length).toBeGreaterThan(0);
      },
      [json],
    );
  });

  test('comes back where it was, unless no screen is there any more', async () => {
    const home = await temporaryHome();
    await inWindow(home, async ({ window }) => {
      window.setBounds({ x: 200, y: 100, width: 1000, height: 700 });
      window.maximize();
    });
    await inWindow(home, async ({ window }) => {
      expect(window.options).toMatchObject({ x: 200, y: 100, width: 1000, height: 700 });
      expect(window.isMaximized()).toBe(true);
      window.setBounds({ x: 5000, y: 100, width: 1000, height: 700 });
    });
    await inWindow(home, async ({ window }) => {
      expect(window.options.x).toBeUndefined();
    });
  });

  test('a second start brings the window to the front and ends itself', async () => {
    const home = await temporaryHome();
    await inWindow(home, async ({ electron, window }) => {
      window.minimize();
      electron.app.emit('second-instance', {}, [], '');
      expect(window.isMinimized()).toBe(false);
      expect(window.timesFocused()).toBe(1);
    });
    const second = await startDouble({ main: MAIN, browser, environment: { SWARDWAY_HOME: home }, isFirst: false });
    await second.within(second.app.ended);
    expect(second.windows.size).toBe(0);
    expect(await second.abandon()).toEqual([]);
  });

  test('ends when its window is closed', async () => {
    const desktop = await startDesktop(browser, await temporaryHome());
    desktop.window.close();
    await desktop.electron.within(desktop.electron.app.ended);
    expect(await desktop.electron.abandon()).toEqual([]);
  });
});
