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
import { build, runnerImport } from 'vite';
import { staleReason, withLock } from './build-state.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const STAMP = path.join(root, 'dist/.built');
const LOCK = path.join(root, 'dist/.building');

/** Host entries: name of the bundle and the source it starts from. */
const HOST_ENTRIES = [
  { name: 'main', source: 'electron/main/main.ts' },
  { name: 'preload', source: 'electron/preload/preload.ts' },
  { name: 'plan-worker', source: 'electron/services/jobs/plan-worker.ts' },
  { name: 'ground-worker', source: 'electron/services/ground/ground-worker.ts' },
  { name: 'roads-worker', source: 'electron/services/roads/roads-worker.ts' },
  { name: 'loopback', source: 'electron/loopback/loopback.ts' },
  { name: 'start', source: 'electron/start.ts' },
  { name: 'cli', source: 'electron/cli/cli.ts' },
];
/** The page of the screens is renderer/index.html; it starts this. */
const RENDERER_ENTRY = 'renderer/app/main.tsx';
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

/** The screens, and beside them the licences that they show. */
const buildRenderer = async () => {
  await build({
    configFile: path.join(root, 'renderer/vite.config.mjs'),
    logLevel: 'warn',
  });
  const { module } = await runnerImport(path.join(root, 'electron/tools/notices.ts'));
  await module.writeNotices(root);
};

/** Every entry with its source, the file that proves it was built, and how to build it. */
const ENTRIES = [
  ...HOST_ENTRIES.map((entry) => ({
    ...entry,
    made: `dist/electron/${entry.name}.cjs`,
    make: () => buildHost(entry),
  })),
  { name: 'renderer', source: RENDERER_ENTRY, made: 'dist/renderer/index.html', make: buildRenderer },
];

/** Builds one entry; when that fails its old result goes too, so that nobody runs or tests what no longer builds. */
const buildEntry = async ({ name, source, made, make }) => {
  if (!existsSync(path.join(root, source))) return { name, outcome: 'absent', detail: source };
  try {
    await make();
    return { name, outcome: 'built', detail: '' };
  } catch (error) {
    await rm(path.join(root, made), { force: true });
    return { name, outcome: 'failed', detail: error instanceof Error ? error.message : String(error) };
  }
};

/** Builds the chosen entries (all when none is named), each whatever becomes of the others. */
export const buildAll = async (only = []) => {
  const startedAt = new Date();
  const whole = only.length === 0;
  if (whole) await rm(STAMP, { force: true });
  const results = [];
  for (const entry of ENTRIES) {
    if (whole || only.includes(entry.name)) results.push(await buildEntry(entry));
  }
  if (whole && results.every(({ outcome }) => outcome !== 'failed')) {
    await mkdir(path.dirname(STAMP), { recursive: true });
    await writeFile(STAMP, '');
    // The stamp bears the time of the start, so that a source saved while the build ran counts as newer.
    await utimes(STAMP, startedAt, startedAt);
  }
  return results;
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
  const results = await buildAll(only);
  const named = (wanted) => results.filter(({ outcome }) => outcome === wanted);
  for (const { detail } of named('absent')) console.error(`  left out, no such file: ${detail}`);
  for (const { name, detail } of named('failed')) console.error(`  ${name} FAILED\n${detail}`);
  const built = named('built').map(({ name }) => name);
  console.error(`  built ${built.join(', ') || 'nothing'} in ${((performance.now() - started) / 1000).toFixed(1)} s`);
  if (named('failed').length > 0) process.exitCode = 1;
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  run().catch((error) => {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  });
}
