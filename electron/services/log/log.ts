import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';

/** How much a line of the log matters. */
export type LogLevel = 'info' | 'warn' | 'error';
/** What may be logged: codes, counts and ids. Never names, addresses or coordinates. */
export type LogDetail = Readonly<Record<string, string | number | boolean>>;
/** Writes a line: where in the program, what happened, and its figures. Never throws. */
export type Log = (level: LogLevel, area: string, event: string, detail?: LogDetail) => void;

const FILE = 'swardway.log';
const LARGEST_BYTES = 1024 * 1024;
const KEPT = 5;

/** A log of one JSON object a line; at 1 MiB a new file is begun, and five are kept. A log that cannot be written is no error. */
export function createLog(folder: string, now: () => Date): Log {
  const file = path.join(folder, FILE);
  return (level, area, event, detail = {}) => {
    try {
      mkdirSync(folder, { recursive: true });
      rotate(file);
      appendFileSync(file, `${JSON.stringify({ at: now().toISOString(), level, area, event, ...detail })}\n`);
    } catch {
      // The program goes on without a log.
    }
  };
}

/** Where the files cannot be renamed the newest one goes on to twice its size, so that what is wrong there is still written down. */
function rotate(file: string): void {
  const size = statSync(file, { throwIfNoEntry: false })?.size ?? 0;
  if (size < LARGEST_BYTES) return;
  try {
    shift(file);
  } catch (error) {
    if (size >= 2 * LARGEST_BYTES) throw error;
  }
}

function shift(file: string): void {
  for (let number = KEPT - 1; number >= 1; number -= 1) {
    const from = number === 1 ? file : `${file}.${number - 1}`;
    if (statSync(from, { throwIfNoEntry: false }) !== undefined) renameSync(from, `${file}.${number}`);
  }
}

/** The last lines of the log in a folder, oldest first; none where there is no log. */
export async function readLogEnd(folder: string, most: number): Promise<readonly string[]> {
  const text = await readFile(path.join(folder, FILE), 'utf8').catch(() => '');
  return text
    .trimEnd()
    .split('\n')
    .slice(-most)
    .filter((line) => line !== '');
}

/** For tests and for hosts that must not write. */
export const NO_LOG: Log = () => undefined;
