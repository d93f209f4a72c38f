/**
 * Asks the registry whether a package that comes with the program has a known vulnerability: node electron/tools/audit.mjs
 *
 * Ends with 1 where one is known. Where no registry answers (no network, a mirror without this service) it says so and ends with 0: that
 * nobody could be asked is no fault of the program.
 */
import { spawnSync } from 'node:child_process';

const LIMIT_MS = 60_000;

const { stdout, error } = spawnSync('npm', ['audit', '--omit=dev', '--json'], {
  encoding: 'utf8',
  timeout: LIMIT_MS,
  shell: process.platform === 'win32',
});

const report = (() => {
  try {
    return JSON.parse(stdout);
  } catch {
    return null;
  }
})();

if (report?.vulnerabilities === undefined) {
  const why = report?.message ?? error?.message ?? 'no answer';
  console.log(`audit: not done, for no registry answered it (${String(why).split('\n')[0]})`);
} else {
  const known = Object.values(report.vulnerabilities);
  for (const { name, severity, range } of known) console.error(`audit: ${name} ${range}, ${severity}`);
  console.log(`audit: ${known.length} known vulnerabilities in what comes with the program`);
  if (known.length > 0) process.exitCode = 1;
}
