import { expect, test } from 'vitest';
import { measureProperty } from '../../core/measure/index.ts';
import { inventLawns } from './lawns.ts';

const TARGET_MS = 2000;

test('measuring 2,000 lawns of 30 corners and 3 exclusions takes under 2 s', () => {
  const times = [1, 2, 3].map((seed) => {
    const lawns = inventLawns(2000, 30, seed);
    const start = performance.now();
    const measures = lawns.map((lawn) => measureProperty(lawn));
    const spent = performance.now() - start;
    expect(measures.every((each) => (each.treatableSqFt ?? 0) > 0)).toBe(true);
    return spent;
  });
  const first = times[0]!;
  const best = Math.min(...times);
  console.log(
    `measure 2,000 lawns: first run ${first.toFixed(0)} ms, best ${best.toFixed(0)} ms, ` +
      `${((1000 * first) / 2000).toFixed(0)} us a lawn; target ${TARGET_MS} ms, ratio ${(first / TARGET_MS).toFixed(2)}`,
  );
  expect(best).toBeLessThan(TARGET_MS);
});
