import type { BrowserContext } from 'playwright-core';
import type { Trouble } from './trouble.ts';

/** What the pages of the double ask of its main process. */
export type Shell = {
  readonly context: BrowserContext;
  readonly trouble: Trouble;
  /** True once the test has done with the program. */
  readonly hasEnded: () => boolean;
  readonly schemes: () => readonly string[];
  /** Whether the program lets pages have a permission; Electron gives all where the program does not decide. */
  readonly allows: (permission: string) => boolean;
  /** Whether the program's webRequest handler stops a request. */
  readonly cancels: (address: string, resourceType: string) => boolean;
  /** The program's own answer to an address of its scheme; null for any other address. */
  readonly respond: (address: string, method: string) => Promise<Response | null>;
  readonly invoke: (channel: string, event: unknown, values: readonly unknown[]) => Promise<unknown>;
};
