/**
 * A runner of tests for stryker. The tests and the instrumented sources are bundled once and loaded once in each process; a mutant
 * is switched on in memory. vitest would begin anew for each, which takes longer than the tests.
 */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { TESTS } from './test-files.mjs';

const BARE_VITEST = fileURLToPath(new URL('bare-vitest.mjs', import.meta.url));
const INSTRUMENTED = 'function stryMutAct_9fa48';
/** Share of stryker's hundredfold number of hits after which a mutant counts as one that goes on for ever. */
const HITS = 0.1;

class QuickRunner {
  /** The sandbox, where stryker starts this process. */
  root = process.cwd();
  loaded = null;

  capabilities() {
    return { reloadEnvironment: false };
  }

  async dryRun({ files = [] }) {
    const { tests, run, takeCounts } = await this.load(true);
    const mutantCoverage = { static: takeCounts(), perTest: {} };
    const wanted = new Set(files.flatMap((file) => this.testsOf(file)));
    const results = [];
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
    const { tests, run, switchOn, goesOn } = await this.load(false);
    const files = this.testsOf(sandboxFileName);
    const chosen = testFilter === undefined ? null : new Set(testFilter);
    switchOn(Number(activeMutant.id), hitLimit && hitLimit * HITS);
    let nrOfTests = 0;
    try {
      for (const test of tests) {
        if (!files.includes(test.file) || chosen?.has(idOf(test)) === false) continue;
        nrOfTests += 1;
        const failureMessage = await failureOf(run, test);
        if (goesOn()) return { status: 'timeout', reason: 'goes on for ever' };
        if (failureMessage !== null) return { status: 'killed', killedBy: [idOf(test)], failureMessage, nrOfTests };
      }
      return { status: 'survived', nrOfTests };
    } finally {
      switchOn(-1);
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
  const loaded = await import(pathToFileURL(path.join(outDir, name)).href);
  for (const [file, load] of loaded.files) await loaded.gather(file, load);
  return loaded;
}

async function bundle(root, outDir, name, counting) {
  const quoted = (text) => JSON.stringify(text);
  const entry = path.join(outDir, `entry-of-${name}`);
  const lines = [
    `export * from ${quoted(BARE_VITEST)};`,
    'export const files = [',
    ...Object.values(TESTS)
      .flat()
      .map((file) => path.join(root, file))
      .map((file) => `  [${quoted(file)}, () => import(${quoted(file)})],`),
    '];',
  ];
  mkdirSync(outDir, { recursive: true });
  writeFileSync(entry, lines.join('\n'));
  // Only where there is something to bundle: a process that takes the place of one that hung is there sooner without it.
  const { build } = await import('vite');
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
          return placed.includes(INSTRUMENTED) ? withSwitches(placed, counting) : placed;
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

/**
 * Instrumented sources ask a function of their own, by name, at every place of a mutant. A number in a variable of the bundle costs
 * next to nothing instead, so that the tests stay about as quick as without mutants.
 */
function withSwitches(code, counting) {
  const switched = code
    .replaceAll(/stryMutAct_9fa48\("(\d+)"\)/g, counting ? 'false' : '(activeMutant === $1 && hitMutant())')
    .replaceAll(/stryCov_9fa48\(([\d", ]+)\)/g, (_, mutants) =>
      counting ? `countMutants(${mutants.replaceAll('"', '')})` : '0',
    );
  return `import { activeMutant, hitMutant, countMutants } from ${JSON.stringify(BARE_VITEST)};\n${switched}`;
}

export const strykerPlugins = [{ kind: 'TestRunner', name: 'quick', factory: () => new QuickRunner() }];
