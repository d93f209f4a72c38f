import { accessSync, constants, readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import path from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { describe, test } from 'vitest';

/** Where a Chromium was looked for, in this order; the first that can be run is taken. */
const SYSTEM_PATHS = [
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** The program inside one folder of Playwright's browser cache, for each system it is made for. */
const CACHED_PROGRAMS = [
  'chrome-linux/chrome',
  'chrome-linux64/chrome',
  'chrome-mac/Chromium.app/Contents/MacOS/Chromium',
  'chrome-win/chrome.exe',
  'chrome-win64/chrome.exe',
];

/** The one command that installs a Chromium where none was found. */
export const INSTALL_COMMAND = 'npx playwright-core install chromium';
export const NO_CHROMIUM = `no Chromium found (set CHROMIUM to one, or install one: ${INSTALL_COMMAND})`;

/** Start options that keep Chromium quiet, off the network, and able to run in a container. */
export const CHROMIUM_ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--disable-dev-shm-usage',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
] as const;

const canRun = (file: string): boolean => {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

const foldersIn = (folder: string): readonly string[] => {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
};

/** Playwright's browser cache folders, newest browser first. */
const cachedCandidates = (environment: NodeJS.ProcessEnv): readonly string[] => {
  const caches = [
    environment.PLAYWRIGHT_BROWSERS_PATH,
    path.join(homedir(), '.cache/ms-playwright'),
    path.join(homedir(), 'Library/Caches/ms-playwright'),
    path.join(homedir(), 'AppData/Local/ms-playwright'),
  ].filter((folder): folder is string => folder !== undefined && folder !== '');
  return caches.flatMap((cache) =>
    foldersIn(cache)
      .filter((name) => name.startsWith('chromium-'))
      .sort((a, b) => b.localeCompare(a, 'en', { numeric: true }))
      .flatMap((name) => CACHED_PROGRAMS.map((program) => path.join(cache, name, program))),
  );
};

/**
 * The path of a Chromium on this machine, or null. CHROMIUM in the environment wins; if it names no program that can
 * be run, that is an error rather than a reason to take another one.
 */
export const findChromium = (
  environment: NodeJS.ProcessEnv = process.env,
  systemPaths: readonly string[] = SYSTEM_PATHS,
): string | null => {
  const named = environment.CHROMIUM;
  if (named !== undefined && named !== '') {
    if (!canRun(named)) throw new Error(`CHROMIUM names ${named}, which is not a program that can be run.`);
    return named;
  }
  return [...systemPaths, ...cachedCandidates(environment)].find(canRun) ?? null;
};

/** Whether a missing browser is a failure here: CI must run every test. */
export const browserIsRequired = (environment: NodeJS.ProcessEnv = process.env): boolean =>
  environment.CI !== undefined && environment.CI !== '' && environment.CI !== 'false' && environment.CI !== '0';

/** Opens a headless browser of Playwright's kind. The caller closes it. */
export const openBrowser = async (): Promise<Browser> => {
  const executablePath = findChromium();
  if (executablePath === null) throw new Error(NO_CHROMIUM);
  return await chromium.launch({ executablePath, args: [...CHROMIUM_ARGUMENTS] });
};

/**
 * A `describe` whose tests need a Chromium. Without one they are skipped, the reason printed; where CI is set, the
 * missing browser is a failed test instead. The body gets the path of the browser.
 */
export const describeWithChromium = (name: string, body: (chromiumPath: string) => void): void => {
  const chromiumPath = findChromium();
  if (chromiumPath !== null) {
    describe(name, () => body(chromiumPath));
    return;
  }
  describe(name, () => {
    test('needs a Chromium', (context) => {
      if (browserIsRequired()) throw new Error(`${NO_CHROMIUM}; in CI that is a failure`);
      console.log(`${name}: skipped, ${NO_CHROMIUM}`);
      context.skip(NO_CHROMIUM);
    });
  });
};
