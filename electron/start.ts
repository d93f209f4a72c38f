import { spawn } from 'node:child_process';
import path from 'node:path';
import { fetchElectron, findElectron, hasDisplay } from './electron-program.ts';
import { serve, wishesOrWords } from './start-browser.ts';

/** `npm start`: the desktop window where Electron can run, else the same program in the browser. */

const root = path.join(__dirname, '../..');
const packageFolder = path.join(root, 'node_modules/electron');
/** Long enough for some 120 MB over a slow line; fetching is only tried where a window could be shown. */
const FETCH_LIMIT_MS = 180_000;
/** A window that ends sooner than this, and with an error, never opened. */
const FAILED_START_MS = 8_000;

async function start(words: readonly string[]): Promise<void> {
  const wishes = await wishesOrWords(words);
  if (wishes === null) return;
  const why = wishes.browserOnly ? 'The browser was asked for.' : await openWindow(words);
  if (why === null) return;
  console.log(`${why} Swardway opens in the browser instead.`);
  await serve(__dirname, wishes);
}

/** Runs the desktop window to its end. Returns why it could not be shown, or null when it was. */
async function openWindow(words: readonly string[]): Promise<string | null> {
  if (!hasDisplay()) return 'There is no display for a window of its own.';
  const program = findElectron(packageFolder) ?? (await tryToFetch());
  if (program === null) return "Electron's program file is not on this machine and could not be fetched.";
  const startedAt = performance.now();
  const code = await runElectron(program, words);
  const failedAtOnce = code !== 0 && performance.now() - startedAt < FAILED_START_MS;
  if (failedAtOnce) return `Electron could not open a window (it ended with ${code}).`;
  process.exitCode = code;
  return null;
}

async function tryToFetch(): Promise<string | null> {
  console.log("Fetching Electron's program file, once (about 120 MB; --browser does without) ...");
  return (await fetchElectron(packageFolder, FETCH_LIMIT_MS)) ? findElectron(packageFolder) : null;
}

function runElectron(program: string, words: readonly string[]): Promise<number> {
  return new Promise((done) => {
    const child = spawn(program, [root, ...words], { stdio: ['ignore', 'inherit', 'ignore'] });
    const pass = (signal: NodeJS.Signals) => () => child.kill(signal);
    const passOn = { SIGINT: pass('SIGINT'), SIGTERM: pass('SIGTERM') };
    process.on('SIGINT', passOn.SIGINT).on('SIGTERM', passOn.SIGTERM);
    const end = (code: number): void => {
      process.off('SIGINT', passOn.SIGINT).off('SIGTERM', passOn.SIGTERM);
      done(code);
    };
    child.on('error', () => end(1));
    child.on('exit', (code, signal) => end(code ?? (signal === null ? 1 : 0)));
  });
}

void start(process.argv.slice(2));
