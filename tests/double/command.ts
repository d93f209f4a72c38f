import { mkdtemp, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { chromium } from 'playwright-core';
import { startDouble } from './index.ts';

/**
 * The double as a command: what starts it and what drives it takes it for Electron's program file. It says on its error output where
 * it can be driven, as Electron does; its first line there is said by Node itself, which is started with `--inspect=0`.
 *
 * Words: those of the driver, the main file, those of the program. DOUBLE_CHROMIUM holds Chromium's file and its options, as JSON.
 */

/** Put in by the driver for Electron itself. */
const OF_DRIVER = ['--no-sandbox', '--inspect=0', '--remote-debugging-port=0'];

type ChromiumToRun = { readonly executablePath: string; readonly args: readonly string[] };

async function run(): Promise<number> {
  const [main = '', ...words] = process.argv.slice(2).filter((word) => !OF_DRIVER.includes(word));
  const { executablePath, args } = JSON.parse(process.env.DOUBLE_CHROMIUM ?? '{}') as ChromiumToRun;
  // With the program's own files, which go when the test ends: Chromium may write to it until the very last.
  const profile = await mkdtemp(path.join(process.env.SWARDWAY_HOME ?? tmpdir(), 'double-'));
  // The driver sees the pages of the browser's own context alone.
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    args: [...args, '--remote-debugging-port=0'],
  });
  const [empty] = context.pages();
  const electron = await startDouble({ main, browser: context, words });
  const window = await electron.firstWindow();
  await window.webContents.opened;
  await empty?.close();
  console.error(`DevTools listening on ${await addressOf(profile)}`);
  let failed: unknown = null;
  await electron.within(electron.app.ended).catch((error: unknown) => {
    failed = error;
  });
  const errors = await electron.abandon();
  for (const error of errors) console.error(error);
  return failed === null && errors.length === 0 ? 0 : 1;
}

/** Where Chromium can be driven: it writes its port and a path into its profile. */
async function addressOf(profile: string): Promise<string> {
  for (;;) {
    const text = await readFile(path.join(profile, 'DevToolsActivePort'), 'utf8').catch(() => '');
    const [port = '', name = ''] = text.split('\n');
    if (name !== '') return `ws://127.0.0.1:${port}${name}`;
    await sleep(20);
  }
}

// Whoever started it may go without a word.
const startedBy = process.ppid;
setInterval(() => process.ppid !== startedBy && process.exit(1), 500).unref();
run().then(
  (code) => process.exit(code),
  (error: unknown) => {
    console.error(error);
    process.exit(1);
  },
);
