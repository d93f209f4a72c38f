import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { openBrowser } from './chromium.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const START = path.join(root, 'dist/electron/start.cjs');
const START_LIMIT_MS = 30_000;

/** The built program with its own empty data folder, and a browser page that shows it. */
export type Desk = {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly address: string;
  readonly dataFolder: string;
  /** The process of the program behind the page. */
  readonly processId: number;
  /** What the page complained of: errors of the console and of scripts. */
  readonly complaints: readonly string[];
  /** Another window of the same program. */
  readonly openPage: () => Promise<Page>;
  readonly close: () => Promise<void>;
};

export type DeskWishes = {
  /** Words after the program's name; a sample is opened where there are none. */
  readonly words?: readonly string[];
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: 'light' | 'dark';
  /** The locale of the machine, and the zone that its clock goes by; as this machine has them where none are named. */
  readonly locale?: string;
  readonly zone?: string;
  /** Pixels of a picture for one of the page. */
  readonly pictureScale?: number;
  /** The file that is started; as `npm start -- --browser` does where none is named. */
  readonly start?: string;
  /** A command that starts the program in its turn. */
  readonly through?: readonly string[];
};

/** Starts the program as `npm start -- --browser --no-open` does, and opens its address. */
export async function openDesk(wishes: DeskWishes = {}): Promise<Desk> {
  const dataFolder = await mkdtemp(path.join(tmpdir(), 'swardway-desk-'));
  const file = wishes.start === undefined ? [START, '--browser'] : [wishes.start];
  const [command = '', ...words] = [
    ...(wishes.through ?? []),
    ...[process.execPath, ...file, '--no-open', ...(wishes.words ?? ['--sample', 'residential-day'])],
  ];
  const program = spawn(command, words, {
    cwd: root,
    env: { ...process.env, SWARDWAY_HOME: dataFolder, CI: '' },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let browser: Browser | null = null;
  const close = async () => {
    await browser?.close();
    await ended(program);
    await rm(dataFolder, { recursive: true, force: true });
  };
  try {
    const address = await addressOf(program);
    browser = await openBrowser();
    const context = await browser.newContext({
      viewport: { width: wishes.width ?? 1440, height: wishes.height ?? 900 },
      colorScheme: wishes.colorScheme ?? 'light',
      deviceScaleFactor: wishes.pictureScale ?? 1,
      reducedMotion: 'reduce',
      ...(wishes.locale === undefined ? {} : { locale: wishes.locale }),
      ...(wishes.zone === undefined ? {} : { timezoneId: wishes.zone }),
    });
    const complaints: string[] = [];
    const openPage = async () => {
      const page = await context.newPage();
      page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
      page.on('pageerror', (error) => complaints.push(String(error)));
      await page.goto(address);
      return page;
    };
    return {
      page: await openPage(),
      context,
      address,
      dataFolder,
      processId: program.pid ?? 0,
      complaints,
      openPage,
      close,
    };
  } catch (error) {
    await close();
    throw error;
  }
}

/** The address that the program prints when it is ready. */
function addressOf(program: ChildProcess): Promise<string> {
  let printed = '';
  return new Promise((found, failed) => {
    const late = setTimeout(() => failed(new Error(`no address within 30 s; printed: ${printed}`)), START_LIMIT_MS);
    const read = (part: Buffer) => {
      printed += part.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+\/\S*/.exec(printed)?.[0];
      if (address === undefined) return;
      clearTimeout(late);
      found(address);
    };
    program.stdout?.on('data', read);
    program.stderr?.on('data', read);
    program.once('exit', (code) => {
      clearTimeout(late);
      failed(new Error(`the program ended with ${code}; printed: ${printed}`));
    });
  });
}

function ended(program: ChildProcess): Promise<void> {
  if (program.exitCode !== null || program.signalCode !== null) return Promise.resolve();
  return new Promise((done) => {
    const hard = setTimeout(() => program.kill('SIGKILL'), 5_000);
    program.once('exit', () => {
      clearTimeout(hard);
      done();
    });
    program.kill('SIGTERM');
  });
}

/** Goes to a room by its step in the header. */
export async function goToRoom(page: Page, room: string): Promise<void> {
  const step = page.getByRole('navigation', { name: 'Rooms' }).getByRole('button', { name: new RegExp(`^${room}`) });
  await step.click();
}

/**
 * Plans the round that is chosen, and waits for the plan.
 * @param reckoningSec how long what comes before the search may take
 */
export async function planRound(page: Page, seconds: number, reckoningSec = 60): Promise<void> {
  await goToRoom(page, 'Round');
  const field = page.getByLabel('Seconds to search');
  await field.fill(String(seconds));
  await field.press('Enter');
  await page.getByRole('button', { name: /^Plan (this round|again)$/ }).click();
  await page.getByRole('button', { name: 'Plan again' }).waitFor({ timeout: (seconds + reckoningSec) * 1000 });
  await page.getByRole('progressbar', { name: 'Planning' }).waitFor({ state: 'detached', timeout: 60_000 });
}

/** Chooses a command out of the menu: its group first. */
export async function chooseCommand(page: Page, group: string, title: string): Promise<void> {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('menuitem', { name: group, exact: true }).click();
  await page.getByRole('menuitem', { name: title }).click();
}

/** Finds a command by its words, which have to be the first that are found, and does it without a mouse. */
export async function doCommand(page: Page, words: string, key = 'Control+k'): Promise<void> {
  await page.keyboard.press(key);
  const dialog = page.getByRole('dialog', { name: 'Find a command' });
  await dialog.waitFor();
  await page.keyboard.type(words);
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await dialog.waitFor({ state: 'detached' });
}
