import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';

// The probe runs lie inside the project (git-ignored dist), so that they find the vitest package.
const root = fileURLToPath(new URL('../..', import.meta.url));
const reporter = path.join(root, 'tests/support/count-reporter.ts');
mkdirSync(path.join(root, 'dist'), { recursive: true });
const folder = mkdtempSync(path.join(root, 'dist/count-reporter-'));
writeFileSync(path.join(folder, 'vitest.config.mjs'), 'export default {};\n');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs Vitest on one probe file and returns its exit code and the lines it printed. */
const runProbe = (
  name: string,
  body: string,
): Promise<{ readonly code: number; readonly lines: readonly string[] }> => {
  const file = path.join(folder, `${name}.test.mjs`);
  writeFileSync(file, `import { expect, test, beforeAll, describe } from 'vitest';\n${body}`);
  const words = [
    path.join(root, 'node_modules/vitest/vitest.mjs'),
    'run',
    ...['--root', folder, '--reporter', 'default', '--reporter', reporter, file],
  ];
  return new Promise((resolve) => {
    execFile(process.execPath, words, { env: { ...process.env, NO_COLOR: '1' } }, (error, stdout) => {
      resolve({ code: Number(error?.code ?? 0), lines: stdout.trimEnd().split('\n') });
    });
  });
};

describe('the line that ends a test run', () => {
  test('counts passed and failed, after the summary, and fails the run', async () => {
    const { code, lines } = await runProbe(
      'mixed',
      `test('a', () => {}); test('b', () => {}); test('c', () => { expect(1).toBe(2); });`,
    );
    expect(lines.at(-1)).toBe('2 passed, 1 failed');
    expect(lines.findIndex((line) => line.includes('Tests  '))).toBeGreaterThan(0);
    expect(code).toBe(1);
  });

  test('names each skipped test with its reason, and shames one without', async () => {
    const { code, lines } = await runProbe(
      'skips',
      `test('ok', () => {}); test('s', (c) => c.skip('no moon')); test('t', (c) => c.skip());`,
    );
    expect(lines.slice(-3)).toEqual([
      'skipped: skips.test.mjs > s: no moon',
      'skipped: skips.test.mjs > t: NO REASON GIVEN',
      '1 passed, 0 failed',
    ]);
    expect(code).toBe(0);
  });

  test('a file that cannot be loaded counts as failed', async () => {
    const { code, lines } = await runProbe('broken', `throw new Error('cannot load');`);
    expect(lines.at(-1)).toBe('0 passed, 1 failed');
    expect(code).toBe(1);
  });

  test('a set-up that throws is counted', async () => {
    const { code, lines } = await runProbe(
      'setup',
      `describe('d', () => { beforeAll(() => { throw new Error('no'); }); test('a', () => {}); });`,
    );
    expect(lines.at(-1)).toMatch(/^0 passed, [1-9]\d* failed$/);
    expect(code).toBe(1);
  });

  test('an error outside every test is counted', async () => {
    const { code, lines } = await runProbe(
      'stray',
      `test('a', async () => { Promise.reject(new Error('stray')); await new Promise((r) => setTimeout(r, 20)); });`,
    );
    expect(lines.at(-1)).toBe('1 passed, 1 failed');
    expect(code).toBe(1);
  });

  test('a run that fails outside the tests never says 0 failed', async () => {
    writeFileSync(path.join(folder, 'set-up.mjs'), `export const setup = () => { throw new Error('no'); };`);
    writeFileSync(
      path.join(folder, 'vitest.config.mjs'),
      `export default { test: { globalSetup: ['./set-up.mjs'] } };`,
    );
    const { code, lines } = await runProbe('fine', `test('a', () => {});`);
    expect(lines.at(-1)).toBe('0 passed, 1 failed');
    expect(code).toBe(1);
  });
});
