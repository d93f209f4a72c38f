import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Book, emptyBook, readBook, writeBook, writeDiffableJson } from '../../../core/book/index.ts';
import { sampleBook, sampleValue } from './sample.ts';

function again(book: Book): Book {
  const read = readBook(writeBook(book), 'again');
  if (!read.ok) throw new Error(read.error.detail);
  return read.value.book;
}

describe('writing a book', () => {
  test('reading gives an equal book, unknown members included', () => {
    const book = { ...sampleBook(), colour: 'green' } as Book;
    expect(again(book)).toEqual(book);
    expect(writeBook(again(book))).toBe(writeBook(book));
  });

  test('the order of members does not depend on the order in memory', () => {
    const turned = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(turned);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, each]) => [key, turned(each)]),
      );
    };
    expect(writeBook(turned(sampleBook()) as Book)).toBe(writeBook(sampleBook()));
  });

  test('a moved corner is one changed line', () => {
    const before = writeBook(sampleBook()).split('\n');
    const value = JSON.parse(JSON.stringify(sampleBook()));
    value.properties[0].zones[0].shape.geometry.coordinates[0][1] = [-82.5, 40.5];
    const after = writeBook(value).split('\n');
    expect(after).toHaveLength(before.length);
    expect(after.filter((line, at) => line !== before[at])).toEqual(['                  [-82.5, 40.5],']);
  });

  test('short records stand on one line, and the text ends with a line break', () => {
    const text = writeBook(sampleBook());
    expect(text).toContain('{ "id": "g", "name": "side gate", "clearWidthIn": 36, "locked": false }');
    expect(text.endsWith('}\n')).toBe(true);
    expect(text).toContain('"rigs": [],');
  });

  test('a row of a matrix stands on one line, whatever its length', () => {
    const row = Array.from({ length: 100 }, (_, at) => (at === 7 ? null : at * 1000));
    expect(
      writeDiffableJson({ durationSec: [row, row] })
        .split('\n')
        .filter((line) => line.includes('99000')),
    ).toHaveLength(2);
  });

  test('any JSON value comes back as it was', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(JSON.parse(writeDiffableJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
      { numRuns: 500 },
    );
  });
});

test('an empty book has nothing in it and can be written and read', () => {
  const book = emptyBook('b-1', 'North crew');
  expect(book).toMatchObject({ id: 'b-1', name: 'North crew', properties: [], rounds: [], invented: false });
  expect(again(book)).toEqual(book);
});

describe('the published schema', () => {
  const file = fileURLToPath(new URL('../../../docs/schemas/book.schema.json', import.meta.url));

  test('accepts what the program writes and refuses what it refuses', () => {
    expect(existsSync(file)).toBe(true);
    const validate = new Ajv({ strict: false }).compile(JSON.parse(readFileSync(file, 'utf8')));
    expect(validate(JSON.parse(writeBook(sampleBook())))).toBe(true);
    expect(validate(sampleValue())).toBe(true);
    expect(validate({ ...sampleValue(), version: 2 })).toBe(false);
    const [property] = sampleValue().properties;
    expect(validate({ ...sampleValue(), properties: [{ ...property, parking: [200, 40] }] })).toBe(false);
    expect(validate({ ...sampleValue(), machines: [{ id: 'm', name: 'm' }] })).toBe(false);
  });
});
