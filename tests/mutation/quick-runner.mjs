/**
 * A runner of tests for stryker. The tests and the instrumented sources are bundled once and loaded once in each process; a mutant
 * is switched on in memory. vitest would begin anew for each, which takes longer than the tests.
 */
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';
import { FIRST, FOLDERS } from './test-files.mjs';

const BARE_VITEST = fileURLToPath(new URL('bare-vitest.mjs', import.meta.url));
/** In the instrumented sources: counts which test comes by which mutant. Heavy, and of use in the first run alone. */
const COUNTING = 'function stryCov_9fa48() {';

class QuickRunner {
  /** The sandbox, where stryker starts this process. */
  root = process.cwd();
  state = stateOfMutants();
  loaded = null;

  capabilities() {
    return { reloadEnvironment: false };
  }

  async dryRun() {
    const { tests, run } = await this.load(true);
    const results = [];
    for (const test of tests) {
      const id = idOf(test);
      this.state.currentTestId = id;
      const begun = performance.now();
      const failure = await failureOf(run, test);
      const timeSpentMs = performance.now() - begun;
      const status = failure === null ? 0 : 1;
      results.push({ id, name: id, fileName: test.file, timeSpentMs, status, failureMessage: failure ?? '' });
      this.state.currentTestId = undefined;
    }
    // The same process may be asked for mutants next, and then without counting.
    this.loaded = null;
    return { status: 'complete', tests: results, mutantCoverage: this.state.mutantCoverage };
  }

  async mutantRun({ activeMutant, testFilter, hitLimit }) {
    const { tests, run } = await this.load(false);
    const chosen = testFilter === undefined ? null : new Set(testFilter);
    Object.assign(this.state, { activeMutant: activeMutant.id, hitCount: 0, hitLimit });
    let nrOfTests = 0;
    try {
      for (const test of tests) {
        if (chosen !== null && !chosen.has(idOf(test))) continue;
        nrOfTests += 1;
        const failureMessage = await failureOf(run, test);
        if (this.state.hitCount > hitLimit) return { status: 'timeout', reason: `Hit limit reached (${hitLimit})` };
        if (failureMessage !== null) return { status: 'killed', killedBy: [idOf(test)], failureMessage, nrOfTests };
      }
      return { status: 'survived', nrOfTests };
    } finally {
      Object.assign(this.state, { activeMutant: undefined, hitCount: undefined, hitLimit: undefined });
    }
  }

  async load(counting) {
    this.loaded ??= await loadTests(this.root, counting);
    return this.loaded;
  }
}

/** Where the instrumented sources look for the mutant that is switched on. */
function stateOfMutants() {
  globalThis.__stryker__ ??= {};
  return globalThis.__stryker__;
}

/** Tells tests apart; where two have the same name, neither could be chosen. */
function idOf(test) {
  return `${path.basename(path.dirname(test.file))}/${path.basename(test.file)} > ${test.name}`;
}

async function failureOf(run, test) {
  try {
    await run(test);
    return null;
  } catch (error) {
    return String(error?.message ?? error).slice(0, 500);
  }
}

function testFiles(root) {
  const files = FOLDERS.flatMap((folder) =>
    readdirSync(path.join(root, folder))
      .filter((name) => name.endsWith('.test.ts'))
      .map((name) => path.join(root, folder, name)),
  );
  const rank = (name) => {
    const at = FIRST.findIndex((each) => name.endsWith(each));
    return at < 0 ? FIRST.length : at;
  };
  return files.sort((left, right) => rank(left) - rank(right) || (left < right ? -1 : 1));
}

/** The bundle is kept in the sandbox: a process that takes the place of one that hung finds it there. */
async function loadTests(root, counting) {
  const outDir = path.join(root, 'dist/mutation-bundle');
  const name = counting ? 'counting.mjs' : 'plain.mjs';
  if (!existsSync(path.join(outDir, name))) await bundle(root, outDir, name, counting);
  const { tests, run, gather, files } = await import(pathToFileURL(path.join(outDir, name)).href);
  for (const [file, load] of files) await gather(file, load);
  return { tests, run };
}

async function bundle(root, outDir, name, counting) {
  const quoted = (text) => JSON.stringify(text);
  const entry = path.join(outDir, `entry-of-${name}`);
  const lines = [
    `export { tests, run, gather } from ${quoted(BARE_VITEST)};`,
    'export const files = [',
    ...testFiles(root).map((file) => `  [${quoted(file)}, () => import(${quoted(file)})],`),
    '];',
  ];
  mkdirSync(outDir, { recursive: true });
  writeFileSync(entry, lines.join('\n'));
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    plugins: [
      {
        name: 'tests-in-memory',
        enforce: 'pre',
        resolveId(source, importer) {
          if (source !== 'vitest') return null;
          return importer === BARE_VITEST ? { id: 'vitest', external: true } : BARE_VITEST;
        },
        transform(code, id) {
          const placed = code.replaceAll('import.meta.url', quoted(pathToFileURL(id).href));
          return counting ? placed : placed.replaceAll(COUNTING, `${COUNTING}} function uncounted() {`);
        },
      },
    ],
    build: {
      ssr: entry,
      outDir,
      emptyOutDir: false,
      copyPublicDir: false,
      target: 'node20',
      minify: false,
      rolldownOptions: { output: { format: 'esm', entryFileNames: name, codeSplitting: false } },
    },
  });
}

export const strykerPlugins = [{ kind: 'TestRunner', name: 'quick', factory: () => new QuickRunner() }];
