import path from 'node:path';
import { _electron } from 'playwright-core';
import { describe, test } from 'vitest';
import { findElectron, hasDisplay } from '../../../electron/electron-program.ts';
import { ROOT } from '../support/bundle.ts';
import { inWindow, LIFE_CHECKS } from './checks/life.ts';
import { PAGE_CHECKS } from './checks/page.ts';
import { MAIN, temporaryHome } from './desktop.ts';
import { type DesktopShell, shellOf } from './shell.ts';

/**
 * The checks of the double on Electron itself, where its program file is there. It is found by its files: loading its package would start
 * a download.
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

async function startElectron(home: string, words: readonly string[] = []): Promise<DesktopShell> {
  const environment = Object.entries(process.env).filter((each): each is [string, string] => each[1] !== undefined);
  const electron = await _electron.launch({
    executablePath: program ?? '',
    args: [MAIN, ...words],
    cwd: ROOT,
    env: { ...Object.fromEntries(environment), SWARDWAY_HOME: home },
    timeout: START_MS,
  });
  const child = electron.process();
  return shellOf({
    home,
    page: await electron.firstWindow({ timeout: START_MS }),
    inMain: (work, value) => electron.evaluate(work as never, value as never) as never,
    within: (promise) => promise,
    close: () => electron.close(),
    abandon: async () => {
      child.kill('SIGKILL');
    },
  });
}

describe('the desktop shell on Electron itself', () => {
  if (whyNot !== null) {
    test('needs Electron', (context) => {
      console.log(`the desktop shell on Electron itself: skipped, ${whyNot}`);
      context.skip(whyNot);
    });
    return;
  }
  for (const { name, run } of LIFE_CHECKS) {
    test(name, async () => {
      const home = await temporaryHome();
      await run({ home, start: (words) => startElectron(home, words) });
    });
  }

  test('every check of a page that runs', async () => {
    await inWindow(startElectron(await temporaryHome()), async (shell) => {
      for (const { run } of PAGE_CHECKS) await run(shell);
    });
  });
});
