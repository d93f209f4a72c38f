import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { emptyBook, readBook, writeBook } from '../../../core/book/index.ts';
import { placedTasks, wholeRun } from '../../acceptance/whole-run.ts';
import { SAMPLE_NAMES, sampleText } from '../../support/samples.ts';

const page = readFileSync(new URL('../../../docs/file-format.md', import.meta.url), 'utf8');
const example = /```json\n([\s\S]*?)```/.exec(page)?.[1] ?? '';

function read(text: string) {
  const result = readBook(text, 'book.json');
  if (!result.ok) throw new Error(`${result.error.where}: ${result.error.detail}`);
  return result.value;
}

describe('the example of docs/file-format.md', () => {
  test('is a book without unknown members, and is planned: the gate does not stop a hose', () => {
    expect(read(example).issues).toEqual([]);
    const run = wholeRun(example, 5);
    expect(run.checks).toEqual([]);
    expect(placedTasks(run.plan)).toEqual(['p1 back t 0']);
    // 2,400 ft2 at 1 gal and 0.4 fl oz per 1,000 ft2.
    expect(run.plan.days[0]?.loads[0]).toMatchObject({ volumeGal: 2.4 });
    expect(run.plan.totals.products[0]?.amount).toBeCloseTo(0.96, 6);
  });

  test('names every section that a book has', () => {
    for (const section of Object.keys(emptyBook('b', 'B'))) expect(page).toContain(`\`${section}\``);
  });
});

describe('writing what was read', () => {
  test.each(SAMPLE_NAMES)('%s comes out letter by letter as it went in', (name) => {
    expect(writeBook(read(sampleText(name)).book)).toBe(sampleText(name));
  });

  test('a change to one gate is a change to one line', () => {
    const before = sampleText('residential-day');
    const after = writeBook(read(before.replace('"clearWidthIn": 36', '"clearWidthIn": 40')).book);
    const [old, changed] = [before.split('\n'), after.split('\n')];
    expect(changed).toHaveLength(old.length);
    expect(changed.filter((line, index) => line !== old[index])).toHaveLength(1);
  });

  test('members that are not known are named, kept at every depth, and read again', () => {
    const book = JSON.parse(example) as { properties: [{ gates: [object] }] };
    const [lawn] = book.properties;
    Object.assign(book, { crewSongs: ['one'] });
    Object.assign(lawn, { colour: 'green' });
    Object.assign(lawn.gates[0], { paint: { year: 2019 } });
    const first = read(JSON.stringify(book));
    expect(first.issues.map((each) => each.where).sort()).toEqual([
      'book.json, crewSongs',
      'book.json, properties[0].colour',
      'book.json, properties[0].gates[0].paint',
    ]);
    const again = JSON.parse(writeBook(first.book)) as { crewSongs: unknown; properties: unknown[] };
    expect(again.crewSongs).toEqual(['one']);
    expect(again.properties[0]).toMatchObject({
      colour: 'green',
      gates: [{ paint: { year: 2019 } }],
    });
  });

  test('an empty book reads as it was written', () => {
    const empty = emptyBook('b', 'B');
    expect(read(writeBook(empty))).toEqual({ book: empty, issues: [] });
  });
});

describe('versions', () => {
  test('a later version is refused with its number', () => {
    const result = readBook(example.replace('"version": 1', '"version": 7'), 'book.json');
    expect(result).toMatchObject({ ok: false, error: { code: 'newer-version', where: 'book.json' } });
    expect(!result.ok && result.error.detail).toMatch(/version 7.*up to version 1/);
  });

  test.each([0, -1, '1', null])('version %j was never written by anybody', (version) => {
    const result = readBook(example.replace('"version": 1', `"version": ${JSON.stringify(version)}`), 'book.json');
    expect(result).toMatchObject({ ok: false, error: { code: 'wrong-schema', where: 'book.json, version' } });
  });
});
