import { randomBytes } from 'node:crypto';
import { mkdir, rm } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

export const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

/**
 * Bundles a TypeScript program of the tests, so that another process can run it. It goes under dist, where packages are found.
 *
 * @param source path from the root of the project
 */
export async function bundleProgram(
  source: string,
): Promise<{ readonly file: string; readonly remove: () => Promise<void> }> {
  const folder = path.join(ROOT, 'dist/tests', randomBytes(6).toString('hex'));
  await mkdir(folder, { recursive: true });
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'warn',
    ssr: { noExternal: true, external: ['sqlite3', 'playwright-core'] },
    build: {
      ssr: path.join(ROOT, source),
      outDir: folder,
      emptyOutDir: false,
      copyPublicDir: false,
      target: 'node20',
      minify: false,
      rolldownOptions: {
        external: ['sqlite3', 'playwright-core'],
        output: { format: 'cjs', entryFileNames: 'program.cjs', codeSplitting: false },
      },
    },
  });
  return { file: path.join(folder, 'program.cjs'), remove: () => rm(folder, { recursive: true, force: true }) };
}
