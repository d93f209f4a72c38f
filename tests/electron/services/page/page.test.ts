import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { contentSecurityPolicy, readPageFile } from '../../../../electron/services/page/index.ts';

let root = '';
let folder = '';
beforeAll(async () => {
  root = await mkdtemp(path.join(tmpdir(), 'swardway-page-'));
  folder = path.join(root, 'page');
  await mkdir(path.join(folder, 'assets'), { recursive: true });
  await mkdir(path.join(root, 'page-other'));
  for (const name of ['page/index.html', 'page/assets/a b.js', 'page/notes.txt', 'secret.json', 'page-other/a.js']) {
    await writeFile(path.join(root, name), name);
  }
  await symlink(path.join(root, 'secret.json'), path.join(folder, 'link.json'));
});
afterAll(() => rm(root, { recursive: true, force: true }));

test.each([
  ['/', 'page/index.html', 'text/html; charset=utf-8'],
  ['/index.html', 'page/index.html', 'text/html; charset=utf-8'],
  ['/assets/a%20b.js', 'page/assets/a b.js', 'text/javascript; charset=utf-8'],
])('%s is served', async (address, content, mediaType) => {
  const file = await readPageFile(folder, address);
  expect([Buffer.from(file?.bytes ?? []).toString(), file?.mediaType]).toEqual([content, mediaType]);
});

test.each([
  '/../secret.json',
  '/%2e%2e/secret.json',
  '/..%2fsecret.json',
  '/assets/../../secret.json',
  '/..%5csecret.json',
  '/../page-other/a.js',
  '/link.json',
  '/index.html%00.js',
  '/%',
  '/assets',
  '/notes.txt',
  '/absent.js',
  '//etc/passwd.js',
])('%s is not', async (address) => {
  expect(await readPageFile(folder, address)).toBeNull();
});

test('the policy allows scripts from the program alone and no other place', () => {
  const rules = new Map(
    contentSecurityPolicy(['ws://127.0.0.1:5'])
      .split('; ')
      .map((rule) => [rule.split(' ')[0], rule.split(' ').slice(1)]),
  );
  expect(rules.get('script-src')).toEqual(["'self'"]);
  expect(rules.get('default-src')).toEqual(["'none'"]);
  expect(rules.get('connect-src')).toEqual(["'self'", 'ws://127.0.0.1:5']);
  expect(rules.get('object-src')).toEqual(["'none'"]);
  const all = [...rules.values()].flat();
  for (const loose of ["'unsafe-eval'", '*', 'https:', 'http:']) expect(all).not.toContain(loose);
});
