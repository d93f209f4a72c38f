import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { onTestFinished } from 'vitest';
import type { Result } from '../../../core/base/index.ts';
import type { ChannelName, EventName, Host, RequestOf, ResponseOf } from '../../../core/contract/index.ts';
import { type ElectronDouble, startDouble, type WindowDouble } from '../../double/index.ts';
import { ROOT } from '../support/bundle.ts';

/** The shipped main file. */
export const MAIN = path.join(ROOT, 'dist/electron/main.cjs');

declare global {
  interface Window {
    /** What the tests' listener heard, in the page's own world. */
    heard?: { readonly name: string; readonly values: readonly unknown[]; readonly atMs: number }[];
  }
}
type PageWindow = { readonly swardway: Host; heard?: Window['heard'] };

/** The desktop shell running on the double, with its first window open. */
export type Desktop = {
  readonly electron: ElectronDouble;
  readonly window: WindowDouble;
  readonly page: Page;
  /** Calls the host from the page, through the preload script. */
  readonly call: <Name extends ChannelName>(name: Name, request: RequestOf<Name>) => Promise<Result<ResponseOf<Name>>>;
  readonly must: <Name extends ChannelName>(name: Name, request: RequestOf<Name>) => Promise<ResponseOf<Name>>;
  readonly listen: (names: readonly EventName[]) => Promise<void>;
  readonly heard: () => Promise<NonNullable<Window['heard']>>;
};

/** A folder for the program's own files that goes when the test ends. */
export async function temporaryHome(): Promise<string> {
  const home = await mkdtemp(path.join(tmpdir(), 'swardway-desktop-'));
  onTestFinished(() => rm(home, { recursive: true, force: true, maxRetries: 3 }));
  return home;
}

export async function startDesktop(browser: Browser, home: string, words: readonly string[] = []): Promise<Desktop> {
  const electron = await startDouble({ main: MAIN, browser, words, environment: { SWARDWAY_HOME: home } });
  try {
    const window = await electron.firstWindow();
    const page = await window.webContents.opened;
    const call = (name: string, request: unknown) =>
      electron.within(
        page.evaluate(
          ([channel, sent]) => (globalThis as never as PageWindow).swardway.call(channel as ChannelName, sent as never),
          [name, request] as const,
        ),
      );
    return {
      electron,
      window,
      page,
      call: call as Desktop['call'],
      must: (async (name: string, request: unknown) => {
        const result = (await call(name, request)) as Result<unknown>;
        if (!result.ok) throw new Error(`${name}: ${result.error.code}: ${result.error.detail}`);
        return result.value;
      }) as Desktop['must'],
      listen: async (names) => {
        await page.evaluate((all) => {
          const here = globalThis as never as PageWindow;
          here.heard = [];
          for (const name of all) {
            here.swardway.on(name, (...values: readonly unknown[]) => {
              here.heard?.push({ name, values, atMs: performance.now() });
            });
          }
        }, names);
      },
      heard: () => page.evaluate(() => (globalThis as never as PageWindow).heard ?? []),
    };
  } catch (error) {
    await electron.abandon();
    throw error;
  }
}
