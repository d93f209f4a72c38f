import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { expect } from 'vitest';
import type { DesktopShell } from '../shell.ts';
import type { Check } from './check.ts';

/** What holds of the page of any running shell, seen from the page and through Electron's public functions alone. */
export const PAGE_CHECKS: readonly Check<DesktopShell>[] = [
  { name: 'one window, which is shown, at its own address', points: [1, 18], run: ownAddress },
  { name: 'nothing of Electron or Node in the page', points: [2, 3, 20], run: nothingLeaked },
  { name: 'nothing for a frame inside the page', points: [2, 3, 20], run: nothingInFrames },
  { name: 'a listener gets the payload alone', points: [20], run: payloadAlone },
  { name: 'only requests of the contract are answered', points: [17], run: onlyTheContract },
  { name: 'scripts come only from the program', points: [7], run: onlyOwnScripts },
  { name: 'files come with the policy, and only from the folder of the screens', points: [7, 18], run: onlyOwnFiles },
  { name: 'permissions are refused', points: [5], run: permissions },
  { name: 'no second window opens', points: [14], run: noSecondWindow },
  // Last, since a page that went away can be asked nothing more.
  { name: 'the page does not go elsewhere', points: [13], run: staysHere },
];

async function ownAddress({ inMain }: DesktopShell): Promise<void> {
  const windows = await inMain(
    ({ BrowserWindow }) =>
      BrowserWindow.getAllWindows().map((window) => [window.webContents.getURL(), window.isVisible()]),
    null,
  );
  expect(windows).toEqual([['app://swardway/', true]]);
}

async function nothingLeaked({ page }: DesktopShell): Promise<void> {
  const found = await page.evaluate(() => {
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
}

async function nothingInFrames({ page }: DesktopShell): Promise<void> {
  const found = await page.evaluate(() => {
    const frame = document.createElement('iframe');
    document.body.append(frame);
    const inside = frame.contentWindow as never as Record<string, unknown>;
    const leaked = ['swardway', 'require', 'process'].filter((name) => name in inside);
    frame.remove();
    return leaked;
  });
  expect(found).toEqual([]);
}

async function payloadAlone({ must, listen, heard }: DesktopShell): Promise<void> {
  await listen(['book.saved']);
  const { session, revision } = await must('book.openSample', { sampleId: 'residential-day' });
  const action = { kind: 'set', changes: { note: `heard ${revision}` } } as const;
  const saved = await must('book.apply', { session, action, baseRevision: revision });
  await expect.poll(heard, { message: 'the event book.saved reaches the page' }).toHaveLength(1);
  expect((await heard())[0]?.values).toEqual([{ session, ...saved }]);
  await must('book.close', { session });
}

async function onlyTheContract({ call }: DesktopShell): Promise<void> {
  for (const name of ['no.such.channel', 'toString', '__proto__']) {
    expect(await call(name as never, {} as never), name).toMatchObject({ error: { code: 'request-invalid' } });
  }
  // Each of these would be taken for sound by a host that does not look at what is in a request.
  for (const request of [{ changes: { theme: 7 } }, { changes: {}, more: true }, null, 'text']) {
    expect(await call('settings.write', request as never), JSON.stringify(request)).toMatchObject({
      error: { code: 'request-invalid' },
    });
  }
}

async function onlyOwnScripts({ page }: DesktopShell): Promise<void> {
  // The browser tells of each script that the policy stopped, and runs none of them.
  const found = await page.evaluate(async () => {
    const stopped: string[] = [];
    document.addEventListener('securitypolicyviolation', (event) => stopped.push(event.effectiveDirective));
    const script = document.createElement('script');
    script.textContent = 'window.injected = true';
    document.body.append(script);
    const link = document.createElement('a');
    link.href = 'javascript:window.injected = true';
    document.body.append(link);
    link.click();
    const until = performance.now() + 2000;
    while (stopped.length < 2 && !('injected' in window) && performance.now() < until) {
      await new Promise((done) => setTimeout(done, 10));
    }
    return { injected: 'injected' in window, stopped: stopped.length };
  });
  expect(found).toEqual({ injected: false, stopped: 2 });
}

async function onlyOwnFiles({ page, within }: DesktopShell): Promise<void> {
  const ask = (address: string) =>
    within(
      page.evaluate(async (named) => {
        const { status, headers } = await fetch(named);
        return { status, headers: Object.fromEntries(headers) };
      }, address),
    );
  const { status, headers } = await ask('/');
  expect(status).toBe(200);
  expect(headers['content-security-policy']).toContain("script-src 'self';");
  expect(headers['content-security-policy']).toContain("default-src 'none'");
  expect(headers['content-security-policy']).not.toMatch(/unsafe-eval|script-src [^;]*unsafe/);
  expect(headers['x-content-type-options']).toBe('nosniff');
  for (const address of ['/..%2f..%2fpackage.json', '/%2e%2e%2f%2e%2e%2fpackage.json', '/..%5c..%5cpackage.json']) {
    expect((await ask(address)).status, address).toBe(404);
  }
}

async function permissions({ page }: DesktopShell): Promise<void> {
  const found = await page.evaluate(async () => ({
    place: (await navigator.permissions.query({ name: 'geolocation' })).state,
    messages: (await navigator.permissions.query({ name: 'notifications' })).state,
  }));
  expect(found, 'permissions that the page has').toEqual({ place: 'denied', messages: 'denied' });
}

/** How often the program's log tells of something. */
async function logged(home: string, event: string): Promise<number> {
  const text = await readFile(path.join(home, 'log/swardway.log'), 'utf8').catch(() => '');
  return text.split(`"event":"${event}"`).length - 1;
}

async function noSecondWindow({ home, page, inMain, within }: DesktopShell): Promise<void> {
  const before = await logged(home, 'new-window-refused');
  const refused = (count: number) =>
    expect
      .poll(() => within(logged(home, 'new-window-refused')), { message: 'a new window is refused' })
      .toBe(before + count);
  await page.evaluate(() => void window.open('https://example.com/'));
  await refused(1);
  await page.evaluate(() => {
    const link = document.createElement('a');
    link.href = '/index.html';
    link.target = '_blank';
    document.body.append(link);
    link.click();
  });
  await refused(2);
  await expect.poll(() => page.context().pages().length).toBe(1);
  expect(await inMain(({ BrowserWindow }) => BrowserWindow.getAllWindows().length, null)).toBe(1);
}

const WAYS_OUT: readonly (readonly [string, string])[] = [
  ['by script', "location.href = 'https://example.com/'"],
  ['to what only begins like its own', "location.href = 'https://swardway.example.com/'"],
  [
    'by a link',
    "const a = document.createElement('a'); a.href = 'https://example.com/'; document.body.append(a); a.click()",
  ],
];

async function staysHere({ home, page, inMain, within }: DesktopShell): Promise<void> {
  for (const [name, code] of WAYS_OUT) {
    const before = await logged(home, 'navigation-refused');
    // Run by the debugger, since the page's own policy refuses text as code.
    await page.evaluate(code).catch(() => undefined);
    await expect
      .poll(() => within(logged(home, 'navigation-refused')), { message: `a way out is refused: ${name}` })
      .toBe(before + 1);
  }
  const address = await inMain(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.webContents.getURL(), null);
  expect(address).toBe('app://swardway/');
  expect(await page.evaluate(() => typeof (globalThis as never as { swardway?: object }).swardway)).toBe('object');
}
