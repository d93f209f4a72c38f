import { chmod, mkdtemp, rm, writeFile } from 'node:fs/promises';
import net from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildIfStale } from '../support/build-first.ts';
import { ROOT } from './support/bundle.ts';
import { type Child, startChild } from './support/child.ts';

let folder = '';
beforeAll(async () => {
  buildIfStale();
  folder = await mkdtemp(path.join(tmpdir(), 'swardway-start-'));
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** `npm start` itself. Without a display in the environment unless one is given. */
const start = (words: readonly string[], environment: Readonly<Record<string, string>> = {}): Child =>
  startChild(process.execPath, [path.join(ROOT, 'dist/electron/start.cjs'), ...words], {
    cwd: folder,
    env: { ...process.env, DISPLAY: '', WAYLAND_DISPLAY: '', SWARDWAY_HOME: path.join(folder, 'home'), ...environment },
  });

/** A stand-in for Electron's program file. */
async function fakeElectron(script: string): Promise<string> {
  const file = path.join(folder, 'electron');
  await writeFile(file, `#!/bin/sh\n${script}\n`);
  await chmod(file, 0o755);
  return folder;
}

const NO_TRACE = /\n\s+at |Error:/;

describe('npm start', () => {
  test('without a display says so in one line, prints the address, and ends with Ctrl-C', async () => {
    const child = start([]);
    await child.until('#token=');
    expect(child.output()).toMatch(
      /^There is no display[^\n]*browser instead\.\nSwardway is at http:\/\/127\.0\.0\.1:\d+\/#token=/,
    );
    child.process.kill('SIGINT');
    expect(await child.ended).toEqual({ code: 0, signal: null });
    expect(child.output()).not.toMatch(NO_TRACE);
  });

  test('runs Electron where it is, with the words of the command line, and ends with it', async (context) => {
    if (process.platform === 'win32') context.skip('the stand-in is a shell script');
    const place = await fakeElectron('echo "window: $*"; exit 0');
    const child = start(['--sample', 'mixed-day'], { DISPLAY: ':99', ELECTRON_OVERRIDE_DIST_PATH: place });
    expect(await child.ended).toEqual({ code: 0, signal: null });
    expect(child.output()).toMatch(/^window: .* --sample mixed-day\n$/);
  });

  test('goes on in the browser when Electron cannot open a window', async (context) => {
    if (process.platform === 'win32') context.skip('the stand-in is a shell script');
    const place = await fakeElectron('echo "cannot open display" >&2; exit 1');
    const child = start(['--no-open'], { DISPLAY: ':99', ELECTRON_OVERRIDE_DIST_PATH: place });
    await child.until('#token=');
    expect(child.output()).toMatch(
      /^Electron could not open a window \(it ended with 1\)\. Swardway opens in the browser instead\.\n/,
    );
    child.process.kill('SIGTERM');
    expect((await child.ended).code).toBe(0);
  });

  test('stays with the browser when that is asked for', async () => {
    const child = start(['--browser', '--no-open'], { DISPLAY: ':99' });
    await child.until('#token=');
    expect(child.output()).toMatch(/^The browser was asked for\./);
    child.process.kill('SIGTERM');
    await child.ended;
  });

  test.each<[string, readonly string[], number, RegExp]>([
    ['an unknown option', ['--colour'], 2, /^Unknown option --colour\.\n\nUsage:/],
    ['a book that is not there', ['nowhere.swardway'], 1, /^nowhere\.swardway is not in /],
    ['help', ['--help'], 0, /^Usage: npm start/],
  ])('with %s says so and ends', async (_name, words, code, output) => {
    const child = start(words);
    expect((await child.ended).code).toBe(code);
    expect(child.output()).toMatch(output);
    expect(child.output()).not.toMatch(NO_TRACE);
  });

  test('says when its port is taken', async () => {
    const other = net.createServer();
    await new Promise<void>((done) => other.listen(0, '127.0.0.1', done));
    const { port } = other.address() as net.AddressInfo;
    const child = start(['--no-open', '--port', String(port)]);
    expect((await child.ended).code).toBe(1);
    expect(child.output()).toContain(`Port ${port} is taken by another program.`);
    expect(child.output()).not.toMatch(NO_TRACE);
    await new Promise((done) => other.close(done));
  });
});
