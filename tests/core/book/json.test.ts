import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJson } from '../../../core/book/index.ts';
import { findJsonFault } from '../../../core/book/json-fault.ts';

function failure(text: string) {
  const read = readJson(text, 'round.json');
  if (read.ok) throw new Error('read');
  return read.error;
}

describe('text that is not JSON', () => {
  test.each([
    ['{"a": 1,}', 1, 9],
    ['[1, 2', 1, 6],
    ['{"a" 1}', 1, 6],
    ['{a: 1}', 1, 2],
    ['{\n  "a": 1,\n  "b": tru\n}', 3, 8],
    ['{\r\n  "a": 01\r\n}', 2, 8],
    ['[1] x', 1, 5],
    ['{"a": "x\ny"}', 1, 9],
    ['{"a": "never closed', 1, 20],
    ['[1, , 2]', 1, 5],
    ['[1}', 1, 3],
    ['{"a": "\\q"}', 1, 9],
    ["{'a': 1}", 1, 2],
    ['<html>', 1, 1],
  ])('%j: line %d, column %d', (text, line, column) => {
    const error = failure(text);
    expect(error.code).toBe('not-json');
    expect(error.where).toBe(`round.json, line ${line}, column ${column}`);
    expect(error.hint).not.toBe('');
  });

  test('an empty file and a database are told by name', () => {
    expect(failure(' \n').detail).toContain('empty');
    expect(failure('SQLite format 3\0').hint).toContain('book file');
  });

  test('a byte order mark is passed over', () => {
    expect(readJson('\ufeff{"a": 1}', 'x')).toEqual({ ok: true, value: { a: 1 } });
  });

  test('deep nesting and long texts do not overflow', () => {
    expect(failure('['.repeat(200_000)).code).toBe('not-json');
    expect(failure(`{"a": "${'x'.repeat(2_000_000)}`).code).toBe('not-json');
    expect(failure(`["${'\\n'.repeat(500_000)}" 1]`).code).toBe('not-json');
  });
});

test('the walker and the parser agree on what is JSON', () => {
  const broken = fc
    .tuple(fc.json(), fc.nat(), fc.constantFrom('', ',', '"', '}', ']', '{', '0', ' ', '\\', '-', 't', '\n'))
    .map(([text, at, piece]) => {
      const cut = at % (text.length + 1);
      return text.slice(0, cut) + piece + text.slice(cut + (piece === '' ? 1 : 0));
    });
  fc.assert(
    fc.property(fc.oneof(fc.json(), broken, fc.string()), (text) => {
      const fault = findJsonFault(text);
      let parses = true;
      try {
        JSON.parse(text);
      } catch {
        parses = false;
      }
      expect(fault.position === text.length && fault.expected === 'nothing more').toBe(parses);
    }),
    { numRuns: 3000 },
  );
});
