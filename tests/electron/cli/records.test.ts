import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeBook } from '../../../core/book/index.ts';
import { applyAction } from '../../../core/edit/index.ts';
import { keepRecord } from '../../../core/records/index.ts';
import { DONE, draftOf, recordBook } from '../../core/records/record-book.ts';
import { buildFirst, errorOf, jsonOf, scratchFolder, swardway } from './support.ts';

const scratch = scratchFolder();
const file = scratch.at('records.json');
beforeAll(() => {
  buildFirst();
  const book = recordBook([DONE, { ...DONE, id: 'visit-2', on: '2027-03-17' }]);
  const written = keepRecord(book, draftOf(book), {
    writtenAt: '2027-03-16T17:05',
    writtenBy: 'Kim Example',
    why: '',
  });
  const applied = written.ok ? applyAction(book, written.value.action) : written;
  if (!applied.ok) throw new Error(applied.error.detail);
  writeFileSync(file, writeBook(applied.value.book));
}, 120_000);
afterAll(scratch.remove);

type Listed = { readonly records: readonly { readonly version: number }[]; readonly notKept: readonly unknown[] };

describe('records', () => {
  test('lists what is kept and names what is not', () => {
    const run = swardway(['records', file]);
    expect(run.code).toBe(0);
    expect(run.out).toMatch(/2027-03-16 +Birch house +1 +2027-03-16 17:05 +Kim Example +Early 4, Feed 20/);
    expect(run.out).toMatch(/no record kept:\n +2027-03-17 Birch house/);
    const answer = jsonOf<Listed>(swardway(['records', file, '--json']), 'records');
    expect(answer.records).toMatchObject([{ version: 1, newest: true, missing: [] }]);
    expect(answer.notKept).toMatchObject([{ on: '2027-03-17' }]);
    const later = jsonOf<Listed>(swardway(['records', file, '--from', '2027-03-17', '--json']), 'records');
    expect(later.records).toEqual([]);
  });

  test('writes a table, and over such a table alone', () => {
    const table = scratch.at('records.csv');
    expect(swardway(['records', file, '--csv', table]).code).toBe(0);
    expect(readFileSync(table, 'utf8')).toMatch(/^record,version,newest,/);
    expect(swardway(['records', file, '--csv', table]).code).toBe(0);
    writeFileSync(table, 'my notes');
    expect(swardway(['records', file, '--csv', table]).code).toBe(1);
    expect(readFileSync(table, 'utf8')).toBe('my notes');
  });

  test('refuses a lawn that it does not know and a day that is none', () => {
    expect(errorOf(swardway(['records', file, '--property', 'oak', '--json']), file)).toMatchObject({
      code: 'reference-missing',
    });
    expect(swardway(['records', file, '--from', 'spring']).code).toBe(2);
  });
});
