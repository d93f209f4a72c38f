import type { LogDetail } from './log.ts';

/** A place in the program: the function, where it has a name, and the file's own name with line and column. */
const FRAME = /^\s*at (?:(?<place>.*?) \()?(?<file>[^()]*?):(?<line>\d+):(?<column>\d+)\)?$/;
const MOST_FRAMES = 12;

/**
 * What may be logged of an exception: its kind, its code, and where in the program it arose. Its words are left out, for they may quote what
 * the user typed or what a file holds; of a path the last part stays.
 */
export function faultDetail(error: unknown): LogDetail {
  if (!(error instanceof Error)) return { fault: typeof error };
  const code: LogDetail = 'code' in error && typeof error.code === 'string' ? { code: error.code } : {};
  const frames = (error.stack ?? '').split('\n').flatMap((line) => {
    const { place, file, line: row, column } = FRAME.exec(line)?.groups ?? {};
    if (file === undefined) return [];
    const name = file.split(/[\\/]/).at(-1) ?? file;
    return [`${place === undefined ? '' : `${place} `}${name}:${row}:${column}`];
  });
  return { fault: error.name, ...code, at: frames.slice(0, MOST_FRAMES).join(' < ') };
}
