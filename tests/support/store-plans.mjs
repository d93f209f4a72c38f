/**
 * Writes the plans that tests of sheets are made from: node tests/support/store-plans.mjs [NAME ...], after a build. Say why in the commit: every
 * expected sheet changes with them.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(path.join(tmpdir(), 'swardway-plans-'));
/** What no sheet shows. */
const LEFT_OUT = new Set(['otherWays', 'whatIf']);

const NAMES =
  process.argv.length > 2 ? process.argv.slice(2) : ['residential-day', 'mixed-day', 'four-day-round', 'creek-town'];

for (const name of NAMES) {
  const file = path.join(folder, `${name}.json`);
  const book = path.join(root, `sample-routes/${name}.json`);
  const words = ['plan', book, '--iterations', '1500', '--out', file];
  execFileSync(process.execPath, [path.join(root, 'dist/electron/cli.cjs'), ...words], { stdio: 'ignore' });
  const plan = JSON.parse(readFileSync(file, 'utf8'), (key, value) => (LEFT_OUT.has(key) ? undefined : value));
  const [first] = plan.days;
  plan.days = plan.days.filter((day) => day.date === first.date).map((day) => ({ ...day, levels: [] }));
  writeFileSync(path.join(root, `tests/fixtures/plans/${name}.plan.json.gz`), gzipSync(JSON.stringify(plan)));
}
rmSync(folder, { recursive: true });
