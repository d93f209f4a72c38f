import { stat } from 'node:fs/promises';
import { homedir } from 'node:os';
import path from 'node:path';

/** The folder with the program's own files: settings, recent books, books of its own, log. SWARDWAY_HOME names another one. */
export function dataFolder(environment: NodeJS.ProcessEnv = process.env, platform: string = process.platform): string {
  const named = environment.SWARDWAY_HOME;
  if (named !== undefined && named !== '') return path.resolve(named);
  if (platform === 'darwin') return path.join(homedir(), 'Library/Application Support/Swardway');
  if (platform === 'win32')
    return path.join(environment.APPDATA ?? path.join(homedir(), 'AppData/Roaming'), 'Swardway');
  return path.join(environment.XDG_DATA_HOME ?? path.join(homedir(), '.local/share'), 'swardway');
}

/** A folder in words people know: the home folder is "~". */
export function shortFolder(folder: string, home: string = homedir()): string {
  const inHome = path.relative(home, folder);
  if (inHome === '') return '~';
  return inHome.startsWith('..') || path.isAbsolute(inHome) ? folder : path.join('~', inHome);
}

/** The file and its folder, for the `where` of an error: "north.swardway in ~/books". */
export function describePlace(file: string): string {
  return `${path.basename(file)} in ${shortFolder(path.dirname(file))}`;
}

/** A file name made of a title: letters, digits and hyphens, at most 60 characters. */
export function fileNameFrom(title: string, fallback = 'book'): string {
  const plain = title
    .normalize('NFKD')
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60);
  return plain === '' ? fallback : plain;
}

/** A name that no file has yet, numbered from the second on: what is kept under an earlier one is not written over. */
export async function freeName(base: string, ending: string): Promise<string> {
  for (let number = 1; ; number += 1) {
    const name = `${base}${number === 1 ? '' : `-${number}`}${ending}`;
    if ((await stat(name).catch(() => null)) === null) return name;
  }
}
