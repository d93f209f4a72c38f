import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { describeWithChromium, openBrowser } from '../browser/chromium.ts';
import { startDouble, toChromium, toProgram } from './index.ts';

/** A small program for the double, with the parts that a test changes. */
const program = (parts: { readonly top?: string; readonly ready?: string; readonly options?: string } = {}): string => `
const { app, BrowserWindow, ipcMain, protocol, session } = require('electron');
protocol.registerSchemesAsPrivileged([{ scheme: 'app', privileges: { standard: true, secure: true } }]);
${parts.top ?? ''}
void (async () => {
  await app.whenReady();
  protocol.handle('app', () => new Response('<!doctype html><title>small</title>', { headers: { 'Content-Type': 'text/html' } }));
  ${parts.ready ?? ''}
  const window = new BrowserWindow({ show: false, webPreferences: { preload: __dirname + '/preload.cjs', contextIsolation: true, sandbox: true ${parts.options ?? ''} } });
  window.once('ready-to-show', () => window.show());
  await window.loadURL('app://small/');
})();
`;
const EMPTY_PRELOAD = "require('electron');";

describeWithChromium('the double of Electron', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser?.close());
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'swardway-double-'));
  });
  afterEach(() => rm(folder, { recursive: true, force: true, maxRetries: 3 }));

  const start = async (main: string, preload = EMPTY_PRELOAD) => {
    await writeFile(path.join(folder, 'main.cjs'), main);
    await writeFile(path.join(folder, 'preload.cjs'), preload);
    return startDouble({ main: path.join(folder, 'main.cjs'), browser });
  };
  /** How a faulty program ends: told at once, or the double let it pass. */
  const fault = async (main: string, preload?: string): Promise<string> => {
    const started = performance.now();
    const electron = await start(main, preload).catch((error: Error) => error);
    if (electron instanceof Error) return electron.message;
    const outcome = await electron.firstWindow().then(
      async (window) => {
        await electron.within((await window.webContents.opened).evaluate(() => undefined));
        return 'no fault';
      },
      (error: Error) => error.message,
    );
    await electron.abandon();
    expect(performance.now() - started).toBeLessThan(15_000);
    return outcome;
  };

  test('runs a sound program to its end', async () => {
    const electron = await start(program());
    const window = await electron.firstWindow();
    expect(window.webContents.getURL()).toBe('app://small/');
    expect(await (await window.webContents.opened).title()).toBe('small');
    await electron.close();
  });

  test.each([
    [
      'a module it lacks',
      program({ top: "require('electron').powerMonitor;" }),
      'the double has no electron.powerMonitor',
    ],
    ['a method it lacks', program({ ready: 'app.setBadgeCount(1);' }), 'the double has no app.setBadgeCount'],
    [
      'a method of a window',
      program({ ready: 'BrowserWindow.prototype; new BrowserWindow({}).setProgressBar(1);' }),
      'the double has no BrowserWindow.setProgressBar',
    ],
    [
      'an option of a window',
      program({ ready: 'new BrowserWindow({ frame: false });' }),
      'the double has no option frame',
    ],
    [
      'a loose web preference',
      program({ options: ', nodeIntegration: true' }),
      'webPreferences.nodeIntegration = true',
    ],
    ['a preference it does not know', program({ options: ', offscreen: true' }), 'the double has no option offscreen'],
    [
      'a window without isolation',
      program({ ready: 'new BrowserWindow({ webPreferences: { contextIsolation: false } });' }),
      'webPreferences.contextIsolation = false',
    ],
  ])('refuses %s', async (_name, main, words) => {
    expect(await fault(main)).toContain(words);
  });

  test.each([
    ['throws', 'throw new Error("on purpose");', 'the preload script failed: Error: on purpose'],
    ['loads a module of Node', "require('node:fs');", 'a sandboxed preload may not load node:fs'],
    ['loads another file', "require('./other.cjs');", 'a sandboxed preload may not load ./other.cjs'],
    [
      'uses what a sandboxed one has not',
      "require('electron').app;",
      'the double has no electron in a sandboxed preload.app',
    ],
    [
      'exposes the same twice',
      "const { contextBridge: c } = require('electron'); c.exposeInMainWorld('a', {}); c.exposeInMainWorld('a', {});",
      'Cannot bind an API',
    ],
  ])('tells at once of a preload script that %s', async (_name, preload, words) => {
    expect(await fault(program(), preload)).toContain(words);
  });

  test.each([
    ['a rejection in main', program({ ready: "throw new Error('main failed');" }), 'main failed'],
    [
      'a later rejection in main',
      program({
        ready:
          "setTimeout(() => Promise.reject(new Error('late')), 20); await new Promise((done) => setTimeout(done, 300));",
      }),
      'late',
    ],
    [
      'an exception in main',
      program({
        ready:
          "setTimeout(() => { throw new Error('thrown'); }, 20); await new Promise((done) => setTimeout(done, 300));",
      }),
      'thrown',
    ],
    [
      'a privileged scheme too late',
      program({ ready: 'protocol.registerSchemesAsPrivileged([]);' }),
      'before app is ready',
    ],
  ])('tells at once of %s', async (_name, main, words) => {
    expect(await fault(main)).toContain(words);
  });

  describe('what a preload script exposes', () => {
    const preload = `
      const { contextBridge, ipcRenderer } = require('electron');
      window.secret = 'of the preload world';
      ipcRenderer.on('news', (event, value) => { for (const one of heard) one(value); });
      const heard = [];
      contextBridge.exposeInMainWorld('api', {
        nested: { list: [1, 'two', null, undefined] },
        add: (a, b) => a + b,
        later: async (value) => ({ value }),
        fail: async () => { throw new Error('on purpose'); },
        ask: (value) => ipcRenderer.invoke('ask', value),
        askFunction: () => ipcRenderer.invoke('ask', () => 1),
        hear: (handler) => { heard.push(handler); return () => heard.pop(); },
      });`;
    const main = program({
      top: "ipcMain.handle('ask', (event, value) => ({ url: event.senderFrame.url, same: event.senderFrame === event.sender.mainFrame, value }));",
    });
    type Api = {
      readonly nested: object;
      readonly add: (a: number, b: number) => number;
      readonly later: (value: unknown) => Promise<object>;
      readonly fail: () => Promise<void>;
      readonly ask: (value: unknown) => Promise<object>;
      readonly askFunction: () => Promise<object>;
      readonly hear: (handler: (value: unknown) => void) => () => void;
    };

    test('crosses as copies, functions and promises, and nothing else does', async () => {
      const electron = await start(main, preload);
      const window = await electron.firstWindow();
      const page = await window.webContents.opened;
      const found = await page.evaluate(async () => {
        const { api, secret } = globalThis as never as { readonly api: Api; readonly secret?: string };
        return {
          secret: typeof secret,
          nested: JSON.stringify(api.nested),
          sum: api.add(2, 3),
          later: await api.later(7),
          failure: await api.fail().catch((error: Error) => error.message),
          asked: await api.ask({ deep: [1] }),
          frozen: Object.isFrozen(api.nested),
        };
      });
      expect(found).toEqual({
        secret: 'undefined',
        nested: '{"list":[1,"two",null,null]}',
        sum: 5,
        later: { value: 7 },
        failure: 'on purpose',
        asked: { url: 'app://small/', same: true, value: { deep: [1] } },
        frozen: true,
      });
      await page.evaluate(() => {
        const here = globalThis as never as { readonly api: Api; news: unknown[] };
        here.news = [];
        here.api.hear((value) => here.news.push(value));
      });
      window.webContents.send('news', { fresh: true });
      await expect
        .poll(() => page.evaluate(() => (globalThis as never as { news: unknown[] }).news))
        .toEqual([{ fresh: true }]);
      expect(() => window.webContents.send('news', () => 1)).toThrow(/could not be cloned/);
      await electron.close();
    });
  });

  test('fails the test that ends a program with something wrong in it', async () => {
    const electron = await start(
      program({ top: "ipcMain.handle('ask', () => { throw new Error('handler failed'); });" }),
      `
      const { ipcRenderer } = require('electron');
      ipcRenderer.invoke('ask').catch(() => undefined);`,
    );
    await electron.firstWindow().catch(() => undefined);
    await expect
      .poll(() => electron.within(Promise.resolve('well')).catch((error: Error) => error.message))
      .toContain('handler failed');
    await expect(electron.close()).rejects.toThrow('handler failed');
  });
});

test('addresses of a scheme of the program become ones that Chromium knows, and back', () => {
  for (const address of ['app://swardway/', 'app://swardway/a/b.js?x=1#y', 'app://print/12']) {
    const shown = toChromium(address, ['app']);
    expect(shown).toMatch(/^http:\/\/(swardway|print)\.app\.localhost\//);
    expect(toProgram(shown, ['app'])).toBe(address);
  }
  for (const address of ['https://example.com/', 'http://a.app.localhost.example.com/', 'about:blank']) {
    expect(toProgram(address, ['app'])).toBe(address);
    expect(toChromium(address, ['app'])).toBe(address);
  }
});
