/**
 * Runs a TypeScript file of the project: node electron/tools/run.mjs FILE [words for it ...]
 *
 * Node 20 cannot read TypeScript, so the file is bundled into dist/tools first; packages stay outside.
 */
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

const runTool = async (source) => {
  const name = path.basename(source, path.extname(source));
  const outDir = path.join(root, 'dist/tools');
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    build: {
      ssr: path.resolve(source),
      outDir,
      emptyOutDir: false,
      copyPublicDir: false,
      target: 'node20',
      minify: false,
      rolldownOptions: { output: { format: 'esm', entryFileNames: `${name}.mjs`, codeSplitting: false } },
    },
  });
  await import(pathToFileURL(path.join(outDir, `${name}.mjs`)).href);
};

const [source] = process.argv.slice(2);
if (source === undefined) {
  console.error('Say which TypeScript file to run.');
  process.exitCode = 2;
} else {
  // The tool sees the words after its own name where a program expects them.
  process.argv.splice(1, 2, source);
  await runTool(source);
}
