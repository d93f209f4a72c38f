import { spawn } from 'node:child_process';
import { constants } from 'node:fs';
import { access, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { err, ok, type Result } from '../../../core/base/index.ts';

const PLACES = [
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];
const PRINT_LIMIT_MS = 60_000;

/** A Chromium that can print to PDF, or null. CHROMIUM in the environment names one. */
export async function findPrinter(environment: NodeJS.ProcessEnv = process.env): Promise<string | null> {
  const named = environment.CHROMIUM;
  for (const file of named === undefined || named === '' ? PLACES : [named]) {
    const runs = await access(file, constants.X_OK).then(
      () => true,
      () => false,
    );
    if (runs) return file;
  }
  return null;
}

/**
 * Prints a page with a headless Chromium of this machine, scripts and network off, in a profile of its own that is
 * removed afterwards. Fails with 'not-available' where there is none or it makes no file.
 */
export async function printWithChromium(program: string | null, html: string): Promise<Result<Uint8Array>> {
  if (program === null) return notAvailable('No Chromium was found on this machine.');
  const folder = await mkdtemp(path.join(tmpdir(), 'swardway-print-'));
  try {
    const page = path.join(folder, 'page.html');
    const target = path.join(folder, 'page.pdf');
    await writeFile(page, withoutScripts(html));
    const told = await runChromium(program, [
      '--headless',
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      `--user-data-dir=${path.join(folder, 'profile')}`,
      '--no-pdf-header-footer',
      `--print-to-pdf=${target}`,
      pathToFileURL(page).href,
    ]);
    const bytes = await readFile(target).catch(() => null);
    return bytes === null ? notAvailable(`Chromium made no file (${told}).`) : ok(bytes);
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 3 }).catch(() => undefined);
  }
}

/**
 * The page under a policy that allows its own styles and what lies inside it, and no script, frame or address. (Chromium's switch
 * for turning scripts off also turns its own printing off: it then ends well and writes no file.)
 */
export function withoutScripts(html: string): string {
  const policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:";
  const meta = `<meta http-equiv="Content-Security-Policy" content="${policy}">`;
  const doctype = /^\s*<!doctype html>/i.exec(html)?.[0] ?? '<!doctype html>';
  return `${doctype}${meta}${html.replace(/^\s*<!doctype html>/i, '')}`;
}

/** Runs to the end, or to the time limit; tells how it ended. */
function runChromium(program: string, words: readonly string[]): Promise<string> {
  return new Promise((done) => {
    const child = spawn(program, [...words], { stdio: 'ignore' });
    const limit = setTimeout(() => child.kill('SIGKILL'), PRINT_LIMIT_MS);
    const end = (how: string): void => {
      clearTimeout(limit);
      done(how);
    };
    child.on('error', (error) => end(error.message));
    child.on('exit', (code, signal) => end(`exit ${code ?? signal}`));
  });
}

function notAvailable(detail: string): Result<never> {
  return err(
    'not-available',
    'printing to PDF',
    detail,
    'Install Chromium, or print the page from a browser and choose PDF there.',
  );
}
