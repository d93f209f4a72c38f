import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';

/**
 * Finds Electron's program file by the files its package leaves, without loading that package: loading it would start a
 * download. Null where it is not there.
 *
 * @param packageFolder node_modules/electron
 */
export function findElectron(packageFolder: string, environment: NodeJS.ProcessEnv = process.env): string | null {
  const named = readShort(path.join(packageFolder, 'path.txt'));
  const folder = environment.ELECTRON_OVERRIDE_DIST_PATH;
  if (folder !== undefined && folder !== '') return existing(path.join(folder, named ?? 'electron'));
  return named === null ? null : existing(path.join(packageFolder, 'dist', named));
}

/** Whether a window can be shown. Only Linux and its like can be without a display. */
export function hasDisplay(environment: NodeJS.ProcessEnv = process.env, platform: string = process.platform): boolean {
  if (platform === 'win32' || platform === 'darwin') return true;
  const set = (name: string): boolean => (environment[name] ?? '') !== '';
  return set('DISPLAY') || set('WAYLAND_DISPLAY');
}

/** Has Electron's package fetch its program file, for at most so long. True where it came. */
export function fetchElectron(packageFolder: string, limitMs: number): Promise<boolean> {
  const script = path.join(packageFolder, 'install.js');
  if (!existsSync(script)) return Promise.resolve(false);
  return new Promise((done) => {
    const child = spawn(process.execPath, [script], { stdio: 'ignore' });
    const limit = setTimeout(() => child.kill('SIGKILL'), limitMs);
    const end = (came: boolean): void => {
      clearTimeout(limit);
      done(came);
    };
    child.on('error', () => end(false));
    child.on('exit', (code) => end(code === 0));
  });
}

const existing = (file: string): string | null => (existsSync(file) ? file : null);

function readShort(file: string): string | null {
  try {
    const text = readFileSync(file, 'utf8').trim();
    return text === '' ? null : text;
  } catch {
    return null;
  }
}
