import { readFileSync } from 'node:fs';
import path from 'node:path';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { noticesSchema } from '../../../core/contract/index.ts';
import { type LockFile, licencesOf } from '../../../electron/tools/licence-list.ts';
import { gatherNotices, noticesText } from '../../../electron/tools/notices.ts';
import { ROOT } from '../support/bundle.ts';

describe('the licences that come with the program', () => {
  const lock = JSON.parse(readFileSync(path.join(ROOT, 'package-lock.json'), 'utf8')) as LockFile;
  const notices = gatherNotices(lock, ROOT);
  const wordsOf = (name: string) => notices.texts[notices.packages.find((each) => each.name === name)?.text ?? -1];

  test('name every package of docs/licences.md, in the form that the screen reads', () => {
    expect(v.is(noticesSchema, notices)).toBe(true);
    expect(notices.packages.map(({ name, version }) => `${name} ${version}`)).toEqual(
      licencesOf(lock).map(({ name, version }) => `${name} ${version}`),
    );
  });

  test('have the words of each, as its own file has them', () => {
    expect(wordsOf('leaflet')).toContain('Copyright (c) 2010');
    expect(wordsOf('sqlite3')).toBe(readFileSync(path.join(ROOT, 'node_modules/sqlite3/LICENSE'), 'utf8').trim());
    expect(notices.own).toBe(readFileSync(path.join(ROOT, 'LICENSE'), 'utf8'));
    for (const { name, text } of notices.packages)
      expect((notices.texts[text] ?? '').length, name).toBeGreaterThan(100);
  });

  test('say whose words stand where a package has no licence file', () => {
    const without = notices.packages.filter((each) => each.wordsOf !== null);
    expect(without.map(({ name }) => name)).toContain('saxes');
    for (const each of without) {
      const lender = notices.packages.find(({ name }) => name === each.wordsOf);
      expect([each.text, each.licence]).toEqual([lender?.text, expect.any(String)]);
    }
  });

  test('are plain text too, each package once', () => {
    const text = noticesText(notices);
    for (const { name, version } of notices.packages) expect(text.split(`\n${name} ${version} (`).length, name).toBe(2);
  });

  test('a licence whose words are nowhere is a fault, not a gap', () => {
    const odd = { packages: { 'node_modules/client-only': { version: '1.0.0', license: 'Zlib' } } };
    expect(() => gatherNotices(odd, ROOT)).toThrow('Zlib');
  });
});
