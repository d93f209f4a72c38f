import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeWithChromium, openBrowser } from '../../../browser/chromium.ts';
import { GUARD_CHECKS } from '../checks/guards.ts';
import { LIFE_CHECKS } from '../checks/life.ts';
import { PAGE_CHECKS } from '../checks/page.ts';
import { startDesktop } from '../desktop.ts';
import type { Fault } from './fault.ts';
import { GUARD_FAULTS } from './guard-faults.ts';
import { LIFE_FAULTS } from './life-faults.ts';
import { layOut, type Planting, withFault } from './plant.ts';
import { WINDOW_FAULTS } from './window-faults.ts';

const FAULTS: readonly Fault[] = [...WINDOW_FAULTS, ...GUARD_FAULTS, ...LIFE_FAULTS];
/** Every check on every fault where that is asked for; otherwise every third fault, and the check that must catch it. */
const IS_WHOLE = process.env.npm_lifecycle_event === 'test:faults';
/** A fault must be told of, not waited for. */
const SOON_MS = 20_000;

/** A check that failed, with what it said. */
type Outcome = { readonly check: string; readonly said: string };

describeWithChromium('planted faults', () => {
  let browser: Browser;
  let planting: Planting;
  beforeAll(async () => {
    browser = await openBrowser();
    planting = await layOut();
  });
  afterAll(async () => {
    await browser?.close();
    await planting?.remove();
  });

  const inHome = async (work: (home: string) => Promise<void> | void): Promise<string | null> => {
    const home = await mkdtemp(path.join(tmpdir(), 'swardway-fault-'));
    const said = await failureOf(() => work(home));
    await rm(home, { recursive: true, force: true, maxRetries: 3 });
    return said;
  };
  const start = (home: string, words: readonly string[] = []) => startDesktop(browser, home, words, planting.main);

  /** What the checks say that fail, of those that are wanted; the shell that does not start fails 'start'. */
  const failures = async (wanted: (check: string) => boolean): Promise<readonly Outcome[]> => {
    const failed: Outcome[] = [];
    const shellChecks = [...GUARD_CHECKS, ...PAGE_CHECKS].filter(({ name }) => wanted(name));
    if (wanted('start') || shellChecks.length > 0) {
      const said = await inHome(async (home) => {
        const desktop = await start(home);
        for (const { name, run } of shellChecks) {
          const broken = await failureOf(() => desktop.within(Promise.resolve(run(desktop))));
          if (broken !== null) failed.push({ check: name, said: broken });
        }
        await desktop.abandon();
      });
      if (said !== null) return [{ check: 'start', said }];
    }
    for (const { name, run } of LIFE_CHECKS.filter((each) => wanted(each.name))) {
      const said = await inHome((home) => run({ home, start: (words) => start(home, words) }));
      if (said !== null) failed.push({ check: name, said });
    }
    return failed;
  };

  test('none is found where none was planted', async () => {
    await planting.plant(null);
    // On the bundles as they lie in dist, ../window.browser.test.ts runs the longer checks in any case.
    const isLong = (name: string) => LIFE_CHECKS.some((check) => check.name === name);
    expect(await failures((check) => IS_WHOLE || !isLong(check))).toEqual([]);
  });

  for (const fault of FAULTS.filter((_, index) => IS_WHOLE || index % 3 === 0)) {
    test(`${fault.name}: caught`, async () => {
      await planting.plant(fault);
      const startedAt = performance.now();
      const failed = await failures((check) => IS_WHOLE || check === fault.caughtBy);
      if (IS_WHOLE) console.log(`${fault.name}: ${failed.map(({ check }) => check).join('; ') || 'NOT CAUGHT'}`);
      const caught = failed.find(({ check }) => check === fault.caughtBy);
      expect(caught?.said, `what "${fault.caughtBy}" says`).toMatch(fault.says);
      if (!IS_WHOLE) expect(performance.now() - startedAt).toBeLessThan(SOON_MS);
    });
  }
});

/** What the work fails with, and null when it does not. */
async function failureOf(work: () => Promise<void> | void): Promise<string | null> {
  try {
    await work();
    return null;
  } catch (error) {
    return error instanceof Error ? `${error.message}\n${difference(error)}` : String(error);
  }
}

/** The values that an assertion compared. */
function difference(error: Error): string {
  const { actual, expected } = error as { readonly actual?: unknown; readonly expected?: unknown };
  return `${JSON.stringify(actual)} instead of ${JSON.stringify(expected)}`;
}

test('a fault that no longer applies, or applies twice, is an error', () => {
  const fault: Fault = { name: 'x', bundle: 'main', changes: [['b', 'c']], caughtBy: 'start', says: /./ };
  expect(withFault('abd', fault)).toBe('acd');
  expect(() => withFault('ad', fault)).toThrow('is there 0 times');
  expect(() => withFault('abb', fault)).toThrow('is there 2 times');
});

test('each fault has a name of its own and a check that is there', () => {
  const checks = new Set(['start', ...[...GUARD_CHECKS, ...PAGE_CHECKS, ...LIFE_CHECKS].map(({ name }) => name)]);
  expect(new Set(FAULTS.map(({ name }) => name)).size).toBe(FAULTS.length);
  for (const { caughtBy } of FAULTS) expect(checks).toContain(caughtBy);
});
