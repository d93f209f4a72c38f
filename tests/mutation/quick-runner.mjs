/**
 * A runner of tests for stryker. The tests and the instrumented sources are bundled once and loaded once in each process; a mutant
 * is switched on in memory. vitest would begin anew for each, which takes longer than the tests.
 */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';
import { TESTS } from './test-files.mjs';

const BARE_VITEST = fileURLToPath(new URL('bare-vitest.mjs', import.meta.url));
/** In the instrumented sources: counts which test comes by which mutant. Of use in the first run alone. */
const COUNTING = 'function stryCov_9fa48() {';
/** The same with numbers in an array: with names in objects, as stryker does it, the first run takes minutes. */
const COUNT = `${COUNTING}
  for (let k = 0; k < arguments.length; k += 1) globalThis.__mutantCounts__[arguments[k]] += 1;
}
function uncounted() {`;
const MOST_MUTANTS = 100_000;

class QuickRunner {
  /** The sandbox, where stryker starts this process. */
  root = process.cwd();
  state = stateOfMutants();
  loaded = null;

  capabilities() {
    return { reloadEnvironment: false };
  }

  async dryRun({ files = [] }) {
    globalThis.__mutantCounts__ = new Float64Array(MOST_MUTANTS);
    const { tests, run } = await this.load(true);
    const mutantCoverage = { static: takeCounts(), perTest: {} };
    const results = [];
    const wanted = new Set(files.flatMap((file) => this.testsOf(file)));
    for (const test of tests) {
      if (wanted.size > 0 && !wanted.has(test.file)) continue;
      const id = idOf(test);
      const begun = performance.now();
      const failure = await failureOf(run, test);
      const timeSpentMs = performance.now() - begun;
      const status = failure === null ? 0 : 1;
      results.push({ id, name: id, fileName: test.file, timeSpentMs, status, failureMessage: failure ?? '' });
      mutantCoverage.perTest[id] = takeCounts();
    }
    // The same process may be asked for mutants next, and then without counting.
    this.loaded = null;
    return { status: 'complete', tests: results, mutantCoverage };
  }

  async mutantRun({ activeMutant, sandboxFileName, testFilter, hitLimit }) {
    const { tests, run } = await this.load(false);
    const files = this.testsOf(sandboxFileName);
    const chosen = testFilter === undefined ? null : new Set(testFilter);
    Object.assign(this.state, { activeMutant: activeMutant.id, hitCount: 0, hitLimit });
    let nrOfTests = 0;
    try {
      for (const test of tests) {
        if (!files.includes(test.file) || chosen?.has(idOf(test)) === false) continue;
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

  /** The tests of the folder in which a mutant lies. */
  testsOf(source) {
    const folder = Object.keys(TESTS).find((each) => source.includes(each));
    return (TESTS[folder] ?? []).map((file) => path.join(this.root, file));
  }

  async load(counting) {
    this.loaded ??= await loadTests(this.root, counting);
    return this.loaded;
  }
}

/** How often each mutant was come by since the last call. */
function takeCounts() {
  const counts = globalThis.__mutantCounts__;
  const found = {};
  counts.forEach((count, mutant) => {
    if (count > 0) found[mutant] = count;
  });
  counts.fill(0);
  return found;
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
    ...Object.values(TESTS)
      .flat()
      .map((file) => path.join(root, file))
      .map((file) => `  [${quoted(file)}, () => import(${quoted(file)})],`),
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
          if (!counting) return placed.replaceAll(COUNTING, `${COUNTING}} function uncounted() {`);
          const numbered = placed.replaceAll(/stryCov_9fa48\([^)]+\)/g, (call) => call.replaceAll('"', ''));
          return numbered.replaceAll(COUNTING, COUNT);
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
