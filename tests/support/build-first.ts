import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const buildScript = fileURLToPath(new URL('../../electron/build.mjs', import.meta.url));

/** Builds the program when dist is missing or older than its sources; tests of the built program call it first. */
export const buildIfStale = (): void => {
  execFileSync(process.execPath, [buildScript, '--if-stale'], { stdio: ['ignore', 'ignore', 'inherit'] });
};

/** Vitest global set-up of the projects that drive the built program. */
export const setup = (): void => buildIfStale();
