import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type * as electronModule from 'electron';
import type { Browser } from 'playwright-core';
import { onTestFinished } from 'vitest';
import { type ElectronDouble, startDouble, type WindowDouble } from '../../double/index.ts';
import { ROOT } from '../support/bundle.ts';
import { type DesktopShell, shellOf } from './shell.ts';

/** The shipped main file. */
export const MAIN = path.join(ROOT, 'dist/electron/main.cjs');

/** The desktop shell running on the double in this process, with what the double saw of it. */
export type Desktop = DesktopShell & {
  readonly electron: ElectronDouble;
  readonly window: WindowDouble;
  /** Starts the program once more while this one runs. */
  readonly startSecond: () => Promise<ElectronDouble>;
};

/** A folder for the program's own files that goes when the test ends. */
export async function temporaryHome(): Promise<string> {
  const home = await mkdtemp(path.join(tmpdir(), 'swardway-desktop-'));
  onTestFinished(() => rm(home, { recursive: true, force: true, maxRetries: 3 }));
  return home;
}

/** @param main the bundle of the main process; the shipped one when none is named */
export async function startDesktop(
  browser: Browser,
  home: string,
  words: readonly string[] = [],
  main: string = MAIN,
): Promise<Desktop> {
  const options = { main, browser, words, environment: { SWARDWAY_HOME: home } };
  const electron = await startDouble(options);
  const { within } = electron;
  try {
    const window = await electron.firstWindow();
    return shellOf({
      home,
      electron,
      window,
      startSecond: () => startDouble({ ...options, isFirst: false }),
      page: await window.webContents.opened,
      within,
      inMain: async (work, value) => within(Promise.resolve(work(electron.module as typeof electronModule, value))),
      close: electron.close,
      abandon: async () => void (await electron.abandon()),
    });
  } catch (error) {
    await electron.abandon();
    throw error;
  }
}
