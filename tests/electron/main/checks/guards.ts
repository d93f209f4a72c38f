import path from 'node:path';
import { expect } from 'vitest';
import { IPC_CALL } from '../../../../core/contract/index.ts';
import type { Desktop } from '../desktop.ts';
import type { Check } from './check.ts';

/** What the main process gave to Electron, and what its handlers answer: only the double lets a test see or call these. */
export const GUARD_CHECKS: readonly Check<Desktop>[] = [
  { name: 'every guard of a window is on', points: [2, 3, 4, 6, 8, 9, 10, 11], run: preferences },
  { name: 'its scheme is declared standard and secure', points: [18], run: scheme },
  { name: 'a redirect to elsewhere is refused', points: [13], run: redirects },
  { name: 'a guest page is refused', points: [11, 12], run: guests },
  { name: 'permissions are decided by a short list', points: [5], run: permissions },
  { name: 'requests that would leave the machine are stopped', points: [1], run: requests },
  { name: 'nothing but the screens is served, however it is asked for', points: [18], run: served },
  { name: 'a call counts only from the window itself', points: [17], run: senders },
  { name: 'a call of an unknown channel stays in the preload script', points: [17, 20], run: channels },
  { name: 'the menu opens no developer tools and no address', points: [15], run: menu },
  { name: 'a sheet is printed where no script runs', points: [2, 3, 4], run: printing },
  { name: 'a second start brings the window to the front and ends itself', points: [], run: secondStart },
];

function preferences({ window, electron }: Desktop): void {
  expect(window.options.webPreferences).toEqual({
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
  expect(electron.app.sandboxed, 'the sandbox of the whole program').toBe(true);
}

function scheme({ electron }: Desktop): void {
  expect(electron.protocol.declared.get('app')).toEqual({ standard: true, secure: true, supportFetchAPI: true });
}

function redirects({ window }: Desktop): void {
  const elsewhere = [
    'https://example.com/',
    'file:///etc/passwd',
    'app://other/',
    'app://swardway.example.com/',
    'app://swardway@example.com/',
    'not an address',
  ];
  const own = ['app://swardway/', 'app://swardway/index.html'];
  for (const name of ['will-redirect', 'will-navigate']) {
    const refused: string[] = [];
    for (const url of [...elsewhere, ...own]) {
      window.webContents.emit(name, { preventDefault: () => refused.push(url) }, url);
    }
    expect(refused, name).toEqual(elsewhere);
  }
}

function guests({ window }: Desktop): void {
  let prevented = false;
  const preventDefault = (): void => {
    prevented = true;
  };
  window.webContents.emit('will-attach-webview', { preventDefault }, {}, {});
  expect(prevented, 'a guest page is refused').toBe(true);
}

function permissions({ window, electron: { session } }: Desktop): void {
  const given = (permission: string): readonly unknown[] => {
    let answer: boolean | null = null;
    session.permissionRequest?.(window.webContents, permission, (allowed) => {
      answer = allowed;
    });
    return [answer, session.permissionCheck?.(window.webContents, permission)];
  };
  for (const permission of ['geolocation', 'media', 'notifications', 'clipboard-read', 'fullscreen', 'openExternal']) {
    expect(given(permission), `the permission ${permission}, asked for and looked up`).toEqual([false, false]);
  }
  expect(given('clipboard-sanitized-write')).toEqual([true, true]);
}

function requests({ electron: { session } }: Desktop): void {
  const outside = [
    'https://example.com/tile.png',
    'http://127.0.0.1:9/',
    'wss://example.com/',
    'ftp://example.com/',
    'file:///etc/passwd',
    'not an address',
  ];
  for (const url of outside) expect(session.cancels(url, 'image'), `a request to ${url} is stopped`).toBe(true);
  for (const url of ['app://swardway/assets/a.js', 'data:image/png;base64,AA==', 'blob:app://swardway/1']) {
    expect(session.cancels(url, 'image'), `a request to ${url} is stopped`).toBe(false);
  }
}

async function served({ electron }: Desktop): Promise<void> {
  // As a request can be made by hand: a URL would resolve the plain dots by itself.
  const byHand = (pathname: string) => ({ url: `app://swardway${pathname}`, method: 'GET' }) as Request;
  const refused = [
    ...['/../package.json', '/..%2f..%2fpackage.json', '/%2e%2e/%2e%2e/package.json', '/absent.js'].map(byHand),
    new Request('app://elsewhere/index.html'),
    new Request('app://print/guess'),
    new Request('app://swardway/', { method: 'POST' }),
  ];
  const handler = electron.protocol.handlers.get('app');
  for (const request of refused) {
    expect((await handler?.(request))?.status, `${request.method} ${request.url}`).toBe(404);
  }
  expect((await handler?.(byHand('/index.html')))?.status).toBe(200);
}

async function senders({ window: { webContents }, electron }: Desktop): Promise<void> {
  const invoke = (senderFrame: object | null, sender: object = webContents) =>
    electron.ipcMain.handlers.get(IPC_CALL)?.({ sender, senderFrame }, 'settings.read', {});
  expect(await invoke(webContents.mainFrame), 'the window itself').toMatchObject({ ok: true });
  const stranger = { mainFrame: { url: 'app://swardway/', parent: null } };
  const refused: readonly (readonly [string, object | null, object?])[] = [
    ['a frame inside it', { url: 'app://swardway/', parent: webContents.mainFrame }],
    ['a foreign page', { url: 'https://example.com/', parent: null }],
    ['no frame', null],
    ['contents that are no window of the program', stranger.mainFrame, stranger],
  ];
  for (const [name, frame, sender] of refused) {
    expect(await invoke(frame, sender), `a call of ${name}`).toMatchObject({ error: { code: 'not-allowed' } });
  }
}

async function channels({ call, electron: { ipcMain } }: Desktop): Promise<void> {
  const unknown = ['no.such.channel', 'toString', '__proto__'];
  for (const name of unknown) await call(name as never, {} as never);
  const arrived = ipcMain.calls.map(({ values }) => values[0]).filter((name) => unknown.includes(name as string));
  expect(arrived, 'channels that reached the main process').toEqual([]);
}

function menu({ electron }: Desktop): void {
  const text = JSON.stringify(electron.menu.application);
  expect(text).toContain('"role":"quit"');
  expect(text).not.toMatch(/devtools|http|undo/i);
}

async function printing({ home, must, electron }: Desktop): Promise<void> {
  const made = electron.madeWindows.length;
  electron.dialog.answers.push({ canceled: false, filePath: path.join(home, 'sheet.pdf') });
  const html = '<!doctype html><title>Sheet</title><h1>Run sheet</h1>';
  expect(await must('print.pdf', { html, suggestedName: 'sheet.pdf' })).toMatchObject({ kind: 'saved' });
  expect(electron.madeWindows.slice(made).map(({ show, webPreferences }) => ({ show, ...webPreferences }))).toEqual([
    { show: false, sandbox: true, contextIsolation: true, nodeIntegration: false, javascript: false },
  ]);
}

async function secondStart({ electron, window, startSecond }: Desktop): Promise<void> {
  const focused = window.timesFocused();
  window.minimize();
  electron.app.emit('second-instance', {}, [], '');
  expect([window.isMinimized(), window.timesFocused()], 'the window in front').toEqual([false, focused + 1]);
  const second = await startSecond();
  try {
    await second.within(Promise.race([second.app.ended, second.firstWindow()]));
    expect(second.windows.size, 'windows of the second start').toBe(0);
  } finally {
    expect(await second.abandon()).toEqual([]);
  }
}
