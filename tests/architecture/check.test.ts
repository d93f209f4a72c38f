import { describe, expect, test } from 'vitest';
import { checkArchitecture } from './check.ts';

/** Breaches of a made-up project given as path and text. */
const check = (files: Readonly<Record<string, string>>): readonly string[] =>
  checkArchitecture(new Map(Object.entries(files)));

describe('the checker finds a breach of every rule', () => {
  test('a lower layer may not use a higher one', () => {
    expect(
      check({
        'core/base/index.ts': `import { area } from '../geometry/index.ts';`,
        'core/geometry/index.ts': '',
      }),
    ).toContain('core/base/index.ts:1 may not import core/geometry; allowed: nothing');
  });

  test('a step may take types of the step before it, but no code', () => {
    const files = { 'core/measure/index.ts': '' };
    const typed = { ...files, 'core/reach/index.ts': `import type { A } from '../measure/index.ts';` };
    const coded = { ...files, 'core/reach/index.ts': `import { a } from '../measure/index.ts';` };
    expect(check(typed)).toEqual([]);
    expect(check(coded)).toEqual([
      'core/reach/index.ts:1 may not import code from core/measure; ' +
        'allowed: core/base, core/units, core/book, core/geometry, core/calibrate, types of core/measure',
    ]);
  });

  test('a folder of core that no layer knows', () => {
    expect(check({ 'core/extras/index.ts': '' })[0]).toMatch(/^core\/extras\/index\.ts lies in no layer; allowed: /);
    expect(check({ 'core/loose.ts': '' })[0]).toMatch(/^core\/loose\.ts lies in no layer/);
  });

  test('core knows no host, screens and hosts do not know each other, nobody knows the tests', () => {
    const found = check({
      'core/base/index.ts': `import '../../electron/start.ts';`,
      'electron/start.ts': `import '../renderer/app/main.tsx';`,
      'renderer/app/main.tsx': `import '../../electron/start.ts'; import '../../tests/a.ts';`,
    });
    expect(found).toContain('core/base/index.ts:1 may not import electron/start.ts; allowed: core');
    expect(found).toContain('electron/start.ts:1 may not import renderer/app/main.tsx; allowed: electron, core');
    expect(found).toContain('renderer/app/main.tsx:1 may not import electron/start.ts; allowed: renderer, core');
    expect(found).toContain('renderer/app/main.tsx:1 may not import tests/a.ts; allowed: renderer, core');
  });

  test('the preload knows the contract only', () => {
    expect(
      check({
        'electron/preload/preload.ts': `import '../services/log/index.ts';\nimport '../../core/contract/index.ts';`,
        'electron/services/log/index.ts': '',
        'core/contract/index.ts': '',
      }),
    ).toEqual([
      'electron/preload/preload.ts:1 may not import electron/services/log/index.ts; ' +
        'allowed: electron/preload, core/contract',
    ]);
  });

  test.each([
    ['core/measure/index.ts', '@turf/turf', '@turf/turf in core/geometry only'],
    ['core/measure/index.ts', 'clipper2-ts', 'clipper2-ts in core/geometry only'],
    ['renderer/rooms/day/map.tsx', 'leaflet', 'leaflet in renderer/map only'],
    ['renderer/rooms/day/map.tsx', 'leaflet/dist/leaflet.css', 'leaflet in renderer/map only'],
    [
      'electron/services/files/index.ts',
      'sqlite3',
      'sqlite3 in electron/services/store, electron/services/imagery, electron/services/ground only',
    ],
    ['electron/services/files/index.ts', 'electron', 'electron in electron/main, electron/preload only'],
    ['core/book/index.ts', 'react', 'react in renderer only'],
    ['electron/start.ts', 'polyclip-ts', 'packages listed in layers.ts'],
    ['core/book/index.ts', 'node:fs', 'node: modules in electron, sample-routes only'],
    ['renderer/app/main.tsx', 'node:path', 'node: modules in electron, sample-routes only'],
  ])('%s may not use the package %s', (file, specifier, allowed) => {
    const found = check({ [file]: `import '${specifier}';` });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(new RegExp(`^${file}:1 may not import .*; allowed: ${allowed}$`));
  });

  test('a folder is entered by its index.ts only', () => {
    const files = { 'core/base/index.ts': '', 'core/base/result.ts': '' };
    expect(check({ ...files, 'core/units/index.ts': `import { ok } from '../base/result.ts';` })).toEqual([
      'core/units/index.ts:1 may not import core/base/result.ts; allowed: core/base/index.ts',
    ]);
    expect(
      check({
        'electron/services/store/index.ts': '',
        'electron/services/store/open.ts': '',
        'electron/start.ts': `import './services/store/open.ts';`,
      }),
    ).toEqual([
      'electron/start.ts:1 may not import electron/services/store/open.ts; allowed: electron/services/store/index.ts',
    ]);
  });

  test('judge and search share no code, however far down', () => {
    const files = {
      'core/plan/search/index.ts': `import '../problem/index.ts';`,
      'core/plan/problem/index.ts': `export * from './clock.ts';`,
      'core/plan/problem/clock.ts': '',
      'core/plan/judge/index.ts': `import type { P } from '../problem/index.ts'; import './own.ts';`,
      'core/plan/judge/own.ts': '',
    };
    expect(check(files)).toEqual([]);
    const shared = check({ ...files, 'core/plan/judge/own.ts': `import { tick } from '../problem/index.ts';` });
    expect(shared.filter((line) => line.includes('may not share'))).toEqual([
      'core/plan/judge may not share core/plan/problem/index.ts with core/plan/search, core/plan/refills; ' +
        'allowed: code of core/base, core/units, core/book',
      'core/plan/judge may not share core/plan/problem/clock.ts with core/plan/search, core/plan/refills; ' +
        'allowed: code of core/base, core/units, core/book',
    ]);
  });

  test('folders in a ring, named once', () => {
    expect(
      check({
        'renderer/map/index.ts': `import '../ui/index.ts';`,
        'renderer/ui/index.ts': `import '../stores/index.ts';`,
        'renderer/stores/index.ts': `import '../map/index.ts';`,
      }),
    ).toEqual([
      'folders may not import each other in a ring: renderer/map -> renderer/ui -> renderer/stores -> renderer/map; ' +
        'allowed: one way only',
    ]);
  });

  test('the start of a program may use what uses its folder; any other file may not', () => {
    const files = {
      'electron/loopback/index.ts': '',
      'electron/shared.ts': `import './loopback/index.ts';`,
    };
    expect(check({ ...files, 'electron/loopback/loopback.ts': `import '../shared.ts';` })).toEqual([]);
    expect(check({ ...files, 'electron/loopback/other.ts': `import '../shared.ts';` })).toEqual([
      'folders may not import each other in a ring: ' +
        'electron/loopback -> electron/shared.ts -> electron/loopback; allowed: one way only',
    ]);
  });

  test('a door may use the folders behind it, and they the types beside it, but not the door itself', () => {
    const files = {
      'electron/services/index.ts': `import './handlers/make.ts';`,
      'electron/services/types.ts': '',
      'electron/services/handlers/make.ts': `import '../types.ts';`,
    };
    expect(check(files)).toEqual([]);
    expect(check({ ...files, 'electron/services/handlers/make.ts': `import '../index.ts';` })).toEqual([
      'folders may not import each other in a ring: ' +
        'electron/services/handlers -> electron/services/index.ts -> electron/services/handlers; allowed: one way only',
    ]);
  });

  test.each([
    'Date.now()',
    'new Date()',
    'new Date',
    'Math.random()',
    'performance.now()',
    'console.log(1)',
    'process.env',
  ])('core may not use %s', (words) => {
    const found = check({ 'core/base/index.ts': `\nconst x = ${words};` });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(/^core\/base\/index\.ts:2 may not use .*; allowed: /);
    expect(check({ 'electron/start.ts': `const x = ${words};` })).toEqual([]);
  });

  test('core may turn a known moment into a date, and speak of clocks in comments and strings', () => {
    const text = `// Date.now()\nconst a = new Date(0); const b = 'Math.random()'; const c = new Date(text);`;
    expect(check({ 'core/base/index.ts': text })).toEqual([]);
  });

  test('a file of more than 500 lines', () => {
    const lines = (count: number): string => Array.from({ length: count }, () => '//').join('\n');
    expect(check({ 'renderer/app/long.ts': lines(501) })).toEqual(['renderer/app/long.ts has 501 lines; allowed: 500']);
    expect(check({ 'tests/app/long.ts': lines(501) })).toHaveLength(1);
    expect(check({ 'renderer/app/long.ts': `${lines(500)}\n` })).toEqual([]);
  });

  test('a door exports nothing without a docstring, wherever in its folder that is written', () => {
    const files = {
      'core/base/index.ts': `export { a, type B as C } from './a.ts';\nexport type * from './types.ts';\nexport const d = 1;`,
      'core/base/a.ts': `/** A. */\nexport function a() {}\n\nexport type B = 1;\nexport const inner = 2;`,
      'core/base/types.ts': `/** */\nexport type E = 1;\n// no docstring\nexport type F = \n 2;\n/** G. */\nexport type G = 3;`,
    };
    expect(check(files)).toEqual(
      [
        'index.ts:3 may not export d',
        'a.ts:4 may not export B',
        'types.ts:2 may not export E',
        'types.ts:4 may not export F',
      ].map((each) => `core/base/${each} untold; allowed: with a docstring`),
    );
    expect(check({ 'renderer/ui/index.ts': 'export const a = 1;' })).toEqual([]);
  });
});
