#!/usr/bin/env node
/** The `swardway` command: runs the built command line, building it first on a fresh checkout. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

const bundle = fileURLToPath(new URL('../../dist/electron/cli.cjs', import.meta.url));

const buildFirst = () => {
  const script = fileURLToPath(new URL('../build.mjs', import.meta.url));
  // The build's own words go to stderr: stdout belongs to the command that was asked for.
  const { status } = spawnSync(process.execPath, [script], {
    stdio: ['ignore', 2, 2],
  });
  return status === 0 && existsSync(bundle);
};

/** A part that cannot be loaded (the SQLite driver, for one) is told in one line and not as a stack trace. */
const load = () => {
  try {
    createRequire(import.meta.url)(bundle);
  } catch (cause) {
    const told = String(cause?.message ?? cause).split('\n', 1)[0];
    console.error(
      `swardway: the program cannot be loaded (${told}). Run \`npm ci && npm run build\` and read its errors.`,
    );
    process.exitCode = 70;
  }
};

if (existsSync(bundle) || buildFirst()) {
  load();
} else {
  console.error(
    'swardway: the program is not built and could not be built. Run `npm ci && npm run build` and read its errors.',
  );
  process.exitCode = 1;
}
