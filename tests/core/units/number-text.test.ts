import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseArea } from '../../../core/units/index.ts';
import { readNumberAt } from '../../../core/units/number-text.ts';

test('numbers are read where they stand, and say where they end', () => {
  expect(readNumberAt('abc 12,500.5 x', 4)).toEqual({ kind: 'number', value: 12500.5, end: 12 });
  expect(readNumberAt('1 1/2 ac', 0)).toEqual({ kind: 'number', value: 1.5, end: 5 });
  expect(readNumberAt('3/4', 0)).toEqual({ kind: 'number', value: 0.75, end: 3 });
  expect(readNumberAt('x', 0)).toEqual({ kind: 'none' });
  expect(readNumberAt('1,5', 0)).toEqual({ kind: 'decimal-comma' });
  expect(readNumberAt('1..5', 0)).toEqual({ kind: 'malformed' });
});

test('grouped and plain writing of any whole number mean the same', () => {
  fc.assert(
    fc.property(fc.nat(1_000_000_000), (value) => {
      expect(parseArea(value.toLocaleString('en-US'))).toEqual(
        parseArea(String(value)).ok ? { ok: true, value } : expect.objectContaining({ ok: false }),
      );
    }),
  );
});

test('no text whatever makes a reader throw, and what it accepts is a finite number in range', () => {
  const anyText = fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(...'0123456789.,/- \'"½acftsqm²k') }));
  fc.assert(
    fc.property(anyText, (text) => {
      const read = parseArea(text);
      if (read.ok) expect(read.value >= 0 && read.value < 1.1e9).toBe(true);
    }),
    { numRuns: 2000 },
  );
});
