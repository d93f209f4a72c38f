import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import type { ErrorCode } from '../../../core/base/index.ts';
import { KEPT } from '../../../renderer/texts/index.ts';
import { ROOT } from '../../electron/support/bundle.ts';

const codes = Object.keys(KEPT) as readonly ErrorCode[];
/** Rows of the table in docs/reliability.md: code, what happened, what is kept, what to do. */
const rows = readFileSync(path.join(ROOT, 'docs/reliability.md'), 'utf8')
  .split('\n')
  .flatMap((line) => {
    const [, code, ...cells] = /^\| `([a-z-]+)` \|(.*)\|$/.exec(line) ?? [];
    return code === undefined ? [] : [[code, ...(cells[0] ?? '').split('|').map((each) => each.trim())] as const];
  });

test('every failure says what is kept, in whole sentences', () => {
  expect(codes.length).toBeGreaterThan(30);
  for (const code of codes) expect(KEPT[code], code).toMatch(/^[A-Z][^.]*\.( [A-Z][^.]*\.)*$/);
});

test('the table of failures has what happened, what is kept word for word, and what to do', () => {
  const listed = rows.map(([code]) => code);
  expect(new Set(listed).size).toBe(listed.length);
  for (const [code, happened, kept, next, ...more] of rows) {
    expect(more, code).toEqual([]);
    expect(kept, code).toBe(KEPT[code as ErrorCode]);
    expect(happened?.length, code).toBeGreaterThan(5);
    expect(next?.length, code).toBeGreaterThan(5);
  }
});

test('every failure of a file, the store, a backup or a job is in the table', () => {
  const groups =
    /^(file|book|backup|disk|job|host)-|^(not-json|not-a-book|wrong-schema|newer-version|plan-stale|no-plan-possible|cancelled|internal)$/;
  const wanted = codes.filter((code) => groups.test(code));
  expect(rows.map(([code]) => code).toSorted()).toEqual([...wanted].toSorted());
});
