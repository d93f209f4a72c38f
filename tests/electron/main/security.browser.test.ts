import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { IPC_CALL } from '../../../core/contract/index.ts';
import { describeWithChromium, openBrowser } from '../../browser/chromium.ts';
import { type Desktop, startDesktop } from './desktop.ts';

/** One test for each point of Electron's own security list that a program decides (docs/tutorial/security.md of Electron). */
describeWithChromium('the desktop shell keeps pages in', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser?.close());
  let home = '';
  let desktop: Desktop;
  beforeAll(async () => {
    home = await mkdtemp(path.join(tmpdir(), 'swardway-security-'));
    desktop = await startDesktop(browser, home);
  });
  afterAll(async () => {
    await desktop?.electron.close();
    await rm(home, { recursive: true, force: true, maxRetries: 3 });
  });
  const address = () => desktop.window.webContents.getURL();

  test('its page has no Node, its own world, the sandbox, and every guard on', () => {
    expect(desktop.window.options.webPreferences).toEqual({
      preload: expect.stringMatching(/preload\.cjs$/),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInSubFrames: false,
      nodeIntegrationInWorker: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
    });
    expect(desktop.electron.app.sandboxed).toBe(true);
  });

  test('its page comes by its own scheme, declared standard and secure', () => {
    expect(address()).toBe('app://swardway/');
    expect(desktop.electron.protocol.declared.get('app')).toEqual({
      standard: true,
      secure: true,
      supportFetchAPI: true,
    });
  });

  test('every page file carries the policy; scripts only from the program', async () => {
    const answer = await desktop.page.reload();
    const headers = (await answer?.allHeaders()) ?? {};
    expect(headers['content-security-policy']).toContain("script-src 'self';");
    expect(headers['content-security-policy']).toContain("default-src 'none'");
    expect(headers['content-security-policy']).not.toContain('unsafe-eval');
    expect(headers['x-content-type-options']).toBe('nosniff');
    await desktop.page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'window.injected = true';
      document.body.append(script);
      const link = document.createElement('a');
      link.href = 'javascript:window.injected = true';
      document.body.append(link);
      link.click();
    });
    await desktop.page.waitForTimeout(100);
    expect(await desktop.page.evaluate(() => 'injected' in window)).toBe(false);
  });

  test('nothing of Electron or Node is in the page; what it gets is frozen', async () => {
    const found = await desktop.page.evaluate(() => {
      const names = ['require', 'process', 'module', 'global', 'Buffer', 'ipcRenderer', 'electron', '__dirname'];
      const here = globalThis as never as Record<string, object>;
      const host = here.swardway ?? {};
      return {
        leaked: names.filter((name) => name in here),
        keys: Object.keys(host).sort(),
        kinds: Object.values(host).map((value) => typeof value),
        frozen: Object.isFrozen(host),
        writable: Object.getOwnPropertyDescriptor(here, 'swardway')?.writable,
      };
    });
    expect(found).toEqual({
      leaked: [],
      keys: ['call', 'on'],
      kinds: ['function', 'function'],
      frozen: true,
      writable: false,
    });
  });

  test('a listener of the page gets the payload alone, no event of Electron', async () => {
    await desktop.listen(['book.saved']);
    const { session, revision } = await desktop.must('book.openSample', { sampleId: 'residential-day' });
    const action = { kind: 'set', changes: { note: 'heard' } } as const;
    const saved = await desktop.must('book.apply', { session, action, baseRevision: revision });
    await expect.poll(desktop.heard).toHaveLength(1);
    expect((await desktop.heard())[0]?.values).toEqual([{ session, ...saved }]);
    await desktop.must('book.close', { session });
  });

  test.each(['no.such.channel', 'toString', '__proto__'])(
    'a call of %s never leaves the preload script',
    async (channel) => {
      expect(await desktop.call(channel as never, {} as never)).toMatchObject({
        ok: false,
        error: { code: 'request-invalid' },
      });
    },
  );

  test.each([
    ['by script', "location.href = 'https://example.com/'"],
    ['to a file', "location.href = 'file:///etc/passwd'"],
    ['to an address that only begins like its own', "location.href = 'http://swardway.app.localhost.example.com/'"],
    ['to another host of its scheme', "location.href = 'http://other.app.localhost/'"],
    [
      'by a link',
      "const a = document.createElement('a'); a.href = 'https://example.com/'; document.body.append(a); a.click()",
    ],
    [
      'by a form',
      "const f = document.createElement('form'); f.action = 'https://example.com/'; document.body.append(f); f.submit()",
    ],
  ])('it does not go elsewhere: %s', async (_name, code) => {
    // Run by the debugger, since the page's own policy refuses text as code.
    await desktop.page.evaluate(code).catch(() => undefined);
    await desktop.page.waitForTimeout(250);
    expect(address()).toBe('app://swardway/');
    expect(await desktop.page.evaluate(() => typeof (globalThis as never as { swardway?: object }).swardway)).toBe(
      'object',
    );
  });

  test('a redirect to elsewhere is refused, too', () => {
    const refused: string[] = [];
    for (const url of ['https://example.com/', 'app://swardway/index.html']) {
      desktop.window.webContents.emit('will-redirect', { preventDefault: () => refused.push(url) }, url);
    }
    expect(refused).toEqual(['https://example.com/']);
  });

  test('no second window opens, by script or by link', async () => {
    const { refusedWindows } = desktop.window.webContents;
    await desktop.page.evaluate(() => void window.open('https://example.com/'));
    await expect.poll(() => refusedWindows.length).toBe(1);
    await desktop.page.evaluate(() => {
      const link = document.createElement('a');
      link.href = '/index.html';
      link.target = '_blank';
      document.body.append(link);
      link.click();
    });
    await expect.poll(() => refusedWindows.length).toBe(2);
    await expect.poll(() => desktop.page.context().pages().length).toBe(1);
    expect(desktop.electron.windows.size).toBe(1);
  });

  test('a guest page is refused', () => {
    let prevented = false;
    desktop.window.webContents.emit(
      'will-attach-webview',
      {
        preventDefault: () => {
          prevented = true;
        },
      },
      {},
      {},
    );
    expect(prevented).toBe(true);
  });

  test.each([
    ['geolocation', false],
    ['media', false],
    ['notifications', false],
    ['clipboard-read', false],
    ['fullscreen', false],
    ['openExternal', false],
    ['clipboard-sanitized-write', true],
  ])('the permission %s is given: %s', (permission, given) => {
    const { session } = desktop.electron;
    let answer: boolean | null = null;
    session.permissionRequest?.(desktop.window.webContents, permission, (allowed) => {
      answer = allowed;
    });
    expect(answer).toBe(given);
    expect(session.permissionCheck?.(desktop.window.webContents, permission)).toBe(given);
  });

  test.each([
    'https://example.com/tile.png',
    'http://127.0.0.1:9/',
    'wss://example.com/',
    'ftp://example.com/',
    'file:///etc/passwd',
    'not an address',
  ])('a request to %s is stopped', (url) => {
    expect(desktop.electron.session.cancels(url, 'image')).toBe(true);
  });

  test('its own requests pass', () => {
    for (const url of ['app://swardway/assets/a.js', 'data:image/png;base64,AA==', 'blob:app://swardway/1']) {
      expect(desktop.electron.session.cancels(url, 'image')).toBe(false);
    }
  });

  test.each([
    '/../package.json',
    '/..%2f..%2fpackage.json',
    '/%2e%2e/%2e%2e/package.json',
    '/..%5c..%5cpackage.json',
    '/absent.js',
  ])('nothing outside the screens is served: %s', async (pathname) => {
    const handler = desktop.electron.protocol.handlers.get('app');
    // As a request can be made by hand: a URL would resolve the plain dots by itself.
    const request = { url: `app://swardway${pathname}`, method: 'GET' } as Request;
    expect((await handler?.(request))?.status).toBe(404);
  });

  test('nor by another host of the scheme, nor by another method', async () => {
    const handler = desktop.electron.protocol.handlers.get('app');
    for (const request of [
      new Request('app://elsewhere/index.html'),
      new Request('app://print/guess'),
      new Request('app://swardway/', { method: 'POST' }),
    ]) {
      expect((await handler?.(request))?.status, request.url).toBe(404);
    }
  });

  describe('a call from a frame that is not the window itself is refused', () => {
    const invoke = (senderFrame: object | null, sender: object = desktop.window.webContents) =>
      desktop.electron.ipcMain.handlers.get(IPC_CALL)?.({ sender, senderFrame }, 'settings.read', {});

    test('the window itself may call', async () => {
      expect(await invoke(desktop.window.webContents.mainFrame)).toMatchObject({ ok: true });
    });

    const frames: readonly [string, () => object | null][] = [
      ['a frame inside it', () => ({ url: 'app://swardway/', parent: desktop.window.webContents.mainFrame })],
      ['a foreign page', () => ({ url: 'https://example.com/', parent: null })],
      ['no frame', () => null],
    ];
    test.each(frames)('%s may not', async (_name, frame) => {
      expect(await invoke(frame())).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
    });

    test('contents that are no window of the program may not', async () => {
      const stranger = { mainFrame: { url: 'app://swardway/', parent: null } };
      expect(await invoke(stranger.mainFrame, stranger)).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
    });
  });

  test('the menu has no place that opens developer tools or another address', () => {
    const text = JSON.stringify(desktop.electron.menu.application);
    expect(text).toContain('"role":"quit"');
    expect(text).not.toMatch(/devtools|http|undo/i);
  });
});
