/**
 * Builds every part of the program with Vite.
 *
 *   node electron/build.mjs              build everything
 *   node electron/build.mjs --if-stale   build only when dist is missing or older than a source file
 *   node electron/build.mjs --only cli   build the named entries only (several: cli,loopback)
 *
 * Host entries become one self-contained CommonJS file each in dist/electron (a sandboxed preload may not load other
 * files); only electron and sqlite3 stay outside. The screens go to dist/renderer. An entry whose source file is
 * absent is left out, and the build says so.
 */
import { existsSync } from 'node:fs';
import { mkdir, rm, utimes, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';
import { staleReason, withLock } from './build-state.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const STAMP = path.join(root, 'dist/.built');
const LOCK = path.join(root, 'dist/.building');

/** Host entries: name of the bundle and the source it starts from. */
const HOST_ENTRIES = [
  { name: 'main', source: 'electron/main/main.ts' },
  { name: 'preload', source: 'electron/preload/preload.ts' },
  { name: 'plan-worker', source: 'electron/services/jobs/plan-worker.ts' },
  { name: 'loopback', source: 'electron/loopback/loopback.ts' },
  { name: 'start', source: 'electron/start.ts' },
  { name: 'cli', source: 'electron/cli/cli.ts' },
];
const RENDERER_ENTRY = 'renderer/index.html';
/** What a bundle loads at run time instead of carrying inside. */
const OUTSIDE = ['electron', 'sqlite3'];

/** Bundles one host entry into dist/electron/NAME.cjs. */
const buildHost = ({ name, source }) =>
  build({
    root,
    configFile: false,
    logLevel: 'warn',
    define: { 'process.env.NODE_ENV': '"production"' },
    resolve: { conditions: ['node', 'import', 'module', 'default'] },
    ssr: { noExternal: true, external: OUTSIDE },
    build: {
      ssr: path.join(root, source),
      outDir: path.join(root, 'dist/electron'),
      emptyOutDir: false,
      copyPublicDir: false,
      target: 'node20',
      minify: false,
      sourcemap: true,
      rolldownOptions: {
        external: OUTSIDE,
        output: {
          format: 'cjs',
          entryFileNames: `${name}.cjs`,
          codeSplitting: false,
        },
      },
    },
  });

const buildRenderer = () =>
  build({
    configFile: path.join(root, 'renderer/vite.config.mjs'),
    logLevel: 'warn',
  });

/** Builds the chosen entries; returns the names built and the sources that are absent. */
export const buildAll = async (only = []) => {
  const wanted = (name) => only.length === 0 || only.includes(name);
  const built = [];
  const absent = [];
  const startedAt = new Date();
  if (only.length === 0) await rm(STAMP, { force: true });
  for (const entry of HOST_ENTRIES.filter(({ name }) => wanted(name))) {
    if (existsSync(path.join(root, entry.source))) {
      await buildHost(entry);
      built.push(entry.name);
    } else absent.push(entry.source);
  }
  if (wanted('renderer')) {
    if (existsSync(path.join(root, RENDERER_ENTRY))) {
      await buildRenderer();
      built.push('renderer');
    } else absent.push(RENDERER_ENTRY);
  }
  if (only.length === 0) {
    await mkdir(path.dirname(STAMP), { recursive: true });
    await writeFile(STAMP, '');
    // The stamp bears the time of the start, so that a source saved while the build ran counts as newer.
    await utimes(STAMP, startedAt, startedAt);
  }
  return { built, absent };
};

const readArguments = (words) => {
  const at = words.indexOf('--only');
  return {
    ifStale: words.includes('--if-stale'),
    only: at >= 0 ? (words[at + 1] ?? '').split(',').filter((name) => name !== '') : [],
  };
};

const run = async () => {
  const { ifStale, only } = readArguments(process.argv.slice(2));
  const whyBuild = async () => (ifStale ? await staleReason(root, STAMP) : 'asked for');
  if ((await whyBuild()) === null) return;
  await withLock(LOCK, async () => {
    // Another process may have built while this one waited for its turn.
    const reason = await whyBuild();
    if (reason !== null) await buildAndTell(reason, only);
  });
};

/** Progress goes to stderr, so that a command that builds first can still print clean JSON on stdout. */
const buildAndTell = async (reason, only) => {
  console.error(`Building Swardway (${reason}) ...`);
  const started = performance.now();
  const { built, absent } = await buildAll(only);
  for (const source of absent) console.error(`  left out, no such file: ${source}`);
  console.error(`  built ${built.join(', ') || 'nothing'} in ${((performance.now() - started) / 1000).toFixed(1)} s`);
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  run().catch((error) => {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  });
}
