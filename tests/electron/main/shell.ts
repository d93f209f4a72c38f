import type * as electron from 'electron';
import type { Page } from 'playwright-core';
import type { Result } from '../../../core/base/index.ts';
import type { ChannelName, EventName, Host, RequestOf, ResponseOf } from '../../../core/contract/index.ts';

declare global {
  interface Window {
    /** What the tests' listener heard, in the page's own world. */
    heard?: { readonly name: string; readonly values: readonly unknown[]; readonly atMs: number }[];
  }
}
type PageWindow = { readonly swardway: Host; heard?: Window['heard'] };

/** What every form of the desktop shell can do: the double in this process, the double as a command, Electron itself. */
export type ShellParts = {
  /** The program's own files. */
  readonly home: string;
  /** The page of its one window. */
  readonly page: Page;
  /** Runs a function in the main process, which gets the module and the value, and nothing of the test around it. */
  readonly inMain: <A, T>(work: (module: typeof electron, value: A) => T | Promise<T>, value: A) => Promise<T>;
  /** The promise, or what went wrong in the program meanwhile, whichever comes first. */
  readonly within: <T>(promise: Promise<T>) => Promise<T>;
  /** Ends the program as the user would; fails when anything went wrong in it. */
  readonly close: () => Promise<void>;
  /** Ends the program, whatever went wrong. */
  readonly abandon: () => Promise<void>;
};

/** A desktop shell that runs, with its window open. */
export type DesktopShell = ShellParts & {
  /** Calls the host from the page, through the preload script. */
  readonly call: <Name extends ChannelName>(name: Name, request: RequestOf<Name>) => Promise<Result<ResponseOf<Name>>>;
  /** As call, but a failure fails the test. */
  readonly must: <Name extends ChannelName>(name: Name, request: RequestOf<Name>) => Promise<ResponseOf<Name>>;
  readonly listen: (names: readonly EventName[]) => Promise<void>;
  readonly heard: () => Promise<NonNullable<Window['heard']>>;
};

export function shellOf<Parts extends ShellParts>(parts: Parts): Parts & DesktopShell {
  const { page, within } = parts;
  const call = (name: string, request: unknown) =>
    within(
      page.evaluate(
        ([channel, sent]) => (globalThis as never as PageWindow).swardway.call(channel as ChannelName, sent as never),
        [name, request] as const,
      ),
    );
  return {
    ...parts,
    call: call as DesktopShell['call'],
    must: (async (name: string, request: unknown) => {
      const result = (await call(name, request)) as Result<unknown>;
      if (!result.ok) throw new Error(`${name}: ${result.error.code}: ${result.error.detail}`);
      return result.value;
    }) as DesktopShell['must'],
    listen: (names) =>
      within(
        page.evaluate((all) => {
          const here = globalThis as never as PageWindow;
          here.heard = [];
          for (const name of all) {
            here.swardway.on(name, (...values: readonly unknown[]) => {
              here.heard?.push({ name, values, atMs: performance.now() });
            });
          }
        }, names),
      ),
    heard: () => within(page.evaluate(() => (globalThis as never as PageWindow).heard ?? [])),
  };
}
