import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const buildScript = fileURLToPath(new URL('../../electron/build.mjs', import.meta.url));

/**
 * Builds the program when dist is missing or older than its sources; tests of the built program call it first.
 * A part that does not build is told about and removed, so that its tests fail rather than run something old.
 */
export const buildIfStale = (): void => {
  const { status } = spawnSync(process.execPath, [buildScript, '--if-stale'], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  if (status !== 0) console.error('The build failed; tests of the parts that are missing now fail too.');
};

/** Vitest global set-up of the projects that drive the built program. */
export const setup = (): void => buildIfStale();
