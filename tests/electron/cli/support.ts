import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv, type ValidateFunction } from 'ajv';
import { expect } from 'vitest';
import { writeBook } from '../../../core/book/index.ts';
import type { World } from '../../../electron/cli/command.ts';
import { runLine } from '../../../electron/cli/run.ts';
import { buildIfStale } from '../../support/build-first.ts';
import { type SampleName, smallBook } from '../../support/samples.ts';

export const root = fileURLToPath(new URL('../../..', import.meta.url));
const bundle = path.join(root, 'dist/electron/cli.cjs');

/** Tests of the built program call this before anything else. */
export const buildFirst = buildIfStale;

const STACK_TRACE = /\n\s+at .+:\d+/;

export type Run = { readonly code: number | null; readonly out: string; readonly remarks: string };

/** Runs a command line in this process, where what lawns take is reckoned once for all runs. `swardway` starts a process instead. */
export async function here(words: readonly string[]): Promise<Run> {
  const told: string[] = [];
  const world: World = {
    bundleFolder: path.dirname(bundle),
    tell: (line) => void told.push(line),
    onInterrupt: () => () => undefined,
  };
  const { code, out, remarks } = await runLine(words, world);
  const lines = [...told, ...remarks].join('\n');
  expect(lines, 'no stack trace ever').not.toMatch(STACK_TRACE);
  return { code, out, remarks: lines };
}

/** Runs the built command line as a user would. */
export function swardway(words: readonly string[], folder: string = root, environment: NodeJS.ProcessEnv = {}): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bundle, ...words], {
    cwd: folder,
    env: { ...process.env, ...environment },
    encoding: 'utf8',
    maxBuffer: 256 * 1024 * 1024,
  });
  expect(stderr, 'no stack trace ever').not.toMatch(STACK_TRACE);
  return { code: status, out: stdout, remarks: stderr };
}

/** As `swardway`, where no file may grow beyond a number of blocks (POSIX `ulimit -f`). */
export function limited(blocks: number, words: readonly string[]): Run {
  const script = `trap '' XFSZ; ulimit -f ${blocks}; exec "$@"`;
  const { status, stdout, stderr } = spawnSync('sh', ['-c', script, 'sh', process.execPath, bundle, ...words], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 256 * 1024 * 1024,
  });
  return { code: status, out: stdout, remarks: stderr };
}

/** As `swardway`, interrupted once it has told something. */
export function interrupted(words: readonly string[]): Promise<Run> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [bundle, ...words], { cwd: root });
    let out = '';
    let remarks = '';
    let sent = false;
    child.stdout.on('data', (chunk: Buffer) => {
      out += chunk.toString();
    });
    child.stderr.on('data', (chunk: Buffer) => {
      remarks += chunk.toString();
      if (!sent && /placed/.test(remarks)) {
        sent = true;
        child.kill('SIGINT');
      }
    });
    child.on('close', (code) => done({ code, out, remarks }));
  });
}

const ajv = new Ajv({ strict: false });
const known = new Map<string, ValidateFunction>();

/** Reads the whole of standard output as one JSON object and holds it against a file of docs/schemas. */
export function jsonOf<T = Record<string, unknown>>(run: Run, schema: string): T {
  const value: unknown = JSON.parse(run.out);
  const validate =
    known.get(schema) ?? ajv.compile(readJsonFile(path.join(root, `docs/schemas/${schema}.schema.json`)));
  known.set(schema, validate);
  expect(validate(value), `${JSON.stringify(validate.errors)} ${run.remarks}`).toBe(true);
  return value as T;
}

export type ErrorObject = {
  readonly code: string;
  readonly where: string;
  readonly detail: string;
  readonly hint: string;
};

/** The error of a run that failed because of its input: file, place and remedy are told in both forms. */
export function errorOf(run: Run, file: string): ErrorObject {
  expect(run.code, run.remarks).toBe(1);
  const { error } = jsonOf<{ readonly error: ErrorObject }>(run, 'failure');
  expect(error.where).toContain(path.basename(file));
  for (const words of [error.where, error.detail, error.hint, error.code]) expect(run.remarks).toContain(words);
  expect(error.hint.length).toBeGreaterThan(10);
  return error;
}

export function readJsonFile<T = Record<string, unknown>>(file: string): T {
  return JSON.parse(readFileSync(file, 'utf8')) as T;
}

export const sampleFile = (name: string): string => path.join(root, `sample-routes/${name}.json`);

/** A folder that is gone after the tests. */
export function scratchFolder(): { readonly at: (name: string) => string; readonly remove: () => void } {
  const folder = mkdtempSync(path.join(tmpdir(), 'swardway-cli-'));
  return {
    at: (name) => path.join(folder, name),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

type Json = { [key: string]: Json } & Json[] & { valueOf(): unknown };

/** Writes a sample book with eight of its lawns. */
export function smallSample(name: SampleName, file: string): string {
  writeFileSync(file, writeBook(smallBook(name)));
  return file;
}

/** Writes a changed copy of a sample book. */
export function changedSample(name: string, file: string, change: (book: Json) => void): string {
  const book = readJsonFile<Json>(sampleFile(name));
  change(book);
  writeFileSync(file, JSON.stringify(book));
  return file;
}
