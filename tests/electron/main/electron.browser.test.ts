import { chmod, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { _electron } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findElectron, hasDisplay } from '../../../electron/electron-program.ts';
import { CHROMIUM_ARGUMENTS, describeWithChromium } from '../../browser/chromium.ts';
import { buildIfStale } from '../../support/build-first.ts';
import { bundleProgram, ROOT } from '../support/bundle.ts';
import { inWindow, LIFE_CHECKS } from './checks/life.ts';
import { PAGE_CHECKS } from './checks/page.ts';
import { MAIN, temporaryHome } from './desktop.ts';
import { GUARD_FAULTS } from './faults/guard-faults.ts';
import { layOut } from './faults/plant.ts';
import { type DesktopShell, shellOf } from './shell.ts';

/**
 * The checks of the double on Electron itself, where its program file is there, driven by Playwright. It is found by its files: loading
 * its package would start a download. What drives it is tried on the double as a command.
 */
const program = findElectron(path.join(ROOT, 'node_modules/electron'));
const whyNot =
  program === null
    ? "Electron's program file is not there (npm start fetches it)"
    : hasDisplay()
      ? null
      : 'Electron has no display to show a window on';

/** How long a start may take, milliseconds: the first one of a machine reads everything from the disk. */
const START_MS = 60_000;

type Program = {
  readonly file: string;
  readonly environment?: Readonly<Record<string, string>>;
  /** The main file; the shipped one where none is named. */
  readonly main?: string;
};

async function startElectron(
  { file, environment = {}, main = MAIN }: Program,
  home: string,
  words: readonly string[] = [],
): Promise<DesktopShell> {
  const own = Object.entries(process.env).filter((each): each is [string, string] => each[1] !== undefined);
  const electron = await _electron.launch({
    executablePath: file,
    args: [main, ...words],
    cwd: ROOT,
    env: { ...Object.fromEntries(own), ...environment, SWARDWAY_HOME: home },
    timeout: START_MS,
  });
  const child = electron.process();
  return shellOf({
    home,
    page: await electron.firstWindow({ timeout: START_MS }),
    inMain: (work, value) => electron.evaluate(work as never, value as never) as never,
    within: (promise) => promise,
    close: async () => {
      await electron.close();
      expect(child.exitCode, 'the code with which the program ended').toBe(0);
    },
    abandon: async () => {
      child.kill('SIGKILL');
    },
  });
}

/** Each check of a life starts the program once or twice: with all others a few of them do where only the driver is tried. */
function checkShell(programOf: () => Program, lives = LIFE_CHECKS.length): void {
  for (const { name, run } of LIFE_CHECKS.slice(0, lives)) {
    test(name, async () => {
      const home = await temporaryHome();
      await run({ home, start: (words) => startElectron(programOf(), home, words) });
    });
  }

  test('every check of a page that runs', async () => {
    await inWindow(startElectron(programOf(), await temporaryHome()), async (shell) => {
      for (const { run } of PAGE_CHECKS) await run(shell);
    });
  });
}

describe('the desktop shell on Electron itself', () => {
  if (program !== null && whyNot === null) {
    beforeAll(buildIfStale);
    checkShell(() => ({ file: program }));
    return;
  }
  test('needs Electron', (context) => {
    console.log(`the desktop shell on Electron itself: skipped, ${whyNot}`);
    context.skip(whyNot ?? '');
  });
});

describeWithChromium('the desktop shell on the double as a command, driven as Electron is', (chromiumPath) => {
  let command: Awaited<ReturnType<typeof bundleProgram>>;
  let file = '';
  beforeAll(async () => {
    await buildIfStale();
    command = await bundleProgram('tests/double/command.ts');
    file = path.join(path.dirname(command.file), 'electron');
    await writeFile(file, `#!/bin/sh\nexec "${process.execPath}" --inspect=0 "${command.file}" "$@"\n`);
    await chmod(file, 0o755);
  }, START_MS);
  afterAll(() => command?.remove());

  const chromium = { executablePath: chromiumPath, args: CHROMIUM_ARGUMENTS };
  const environment = { DOUBLE_CHROMIUM: JSON.stringify(chromium) };
  const isWhole = process.env.npm_lifecycle_event === 'test:faults';
  checkShell(() => ({ file, environment }), isWhole ? undefined : 1);

  const pageFaults = GUARD_FAULTS.filter(({ caughtBy }) => PAGE_CHECKS.some(({ name }) => name === caughtBy));
  const one = pageFaults.filter(({ name }) => name === 'ipcRenderer given to the page');
  test.each(isWhole ? pageFaults : one)('$name: caught', async (fault) => {
    const planting = await layOut();
    await planting.plant(fault);
    const shell = await startElectron({ file, environment, main: planting.main }, await temporaryHome());
    const failing = PAGE_CHECKS.filter(({ name }) => name === fault.caughtBy);
    const [sound] = PAGE_CHECKS.filter((each) => !failing.includes(each));
    await sound?.run(shell);
    // What the double itself says of a fault does not come this way, only that the check fails.
    for (const { run } of failing) await expect(Promise.resolve(run(shell))).rejects.toThrow();
    await shell.abandon();
    await planting.remove();
  });
});
