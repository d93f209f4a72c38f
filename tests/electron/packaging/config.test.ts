import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { BUNDLES, packaging } from '../../../electron/packaging/config.ts';
import { programPlaces } from '../../../electron/program.ts';
import { BOOK_ENDING } from '../../../electron/services/library/index.ts';
import { ROOT } from '../support/bundle.ts';
import { missingFrom, packagesIn, strangersIn } from './contents.ts';

describe('what an installed program is made of', () => {
  test('its fuses: nothing lets it run as Node or be looked into; it loads only its own sealed archive', () => {
    expect(packaging.electronFuses).toEqual({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      grantFileProtocolExtraPrivileges: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      enableCookieEncryption: true,
    });
    expect(packaging.asar).toBe(true);
  });

  test('the ending of books belongs to it', () => {
    expect(packaging.fileAssociations).toMatchObject([{ ext: BOOK_ENDING.slice(1), role: 'Editor' }]);
  });

  test('every file that it names for itself is taken along', () => {
    const places = programPlaces('/opt/Swardway/resources/app.asar/dist/electron');
    const bundles = [places.workerFile, places.groundWorkerFile, places.roadsWorkerFile, places.preloadFile];
    for (const file of bundles) expect(BUNDLES).toContain(path.basename(file, '.cjs'));
    expect(places.samplesFolder).toBe(path.normalize('/opt/Swardway/resources/sample-routes'));
    const main = (JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as { readonly main: string }).main;
    expect(packaging.files).toContain(main);
    expect(packaging.extraResources).toContainEqual(expect.objectContaining({ to: 'sample-routes' }));
  });

  test('from a checkout the samples are those of the checkout', () => {
    expect(programPlaces('/home/me/swardway/dist/electron').samplesFolder).toBe(
      path.normalize('/home/me/swardway/sample-routes'),
    );
  });

  test('its icons are there', () => {
    for (const icon of [packaging.win?.icon, packaging.mac?.icon, `${packaging.linux?.icon}/512x512.png`]) {
      expect(existsSync(path.join(ROOT, String(icon))), String(icon)).toBe(true);
    }
  });
});

describe('the check of what lies in an archive', () => {
  const whole = [
    'package.json',
    'dist/renderer/index.html',
    'dist/renderer/licences.json',
    'dist/renderer/assets/index-a.js',
    'node_modules/sqlite3/build/Release/node_sqlite3.node',
    ...BUNDLES.map((name) => `dist/electron/${name}.cjs`),
    ...['bindings', 'file-uri-to-path', 'sqlite3'].map((name) => `node_modules/${name}/package.json`),
  ];

  test('finds nothing amiss in a whole one', () => {
    expect(missingFrom(whole, ['require("node:fs"); require("electron")'])).toEqual([]);
    expect(strangersIn(whole)).toEqual([]);
  });

  test.each(whole.filter((name) => !name.includes('assets')))('misses %s', (name) => {
    expect(
      missingFrom(
        whole.filter((each) => each !== name),
        [],
      ),
    ).toEqual([name]);
  });

  test('misses a package that a bundle loads, and not one that a comment speaks of', () => {
    expect(
      packagesIn('/**\n * const pako = require("pako")\n */\n// require("x")\nconst a = require("left");'),
    ).toEqual(['left']);
    expect(missingFrom(whole, ['const a = require("left");'])).toEqual(['node_modules/left/package.json']);
  });

  test.each([
    'dist/electron/main.cjs.map',
    'dist/electron/cli.cjs',
    'node_modules/sqlite3/deps/sqlite3.gyp',
    'node_modules/sqlite3/src/node_sqlite3.cc',
    'node_modules/react/index.js',
    'core/base/index.ts',
  ])('finds %s needless', (name) => {
    expect(strangersIn([...whole, name])).toEqual([name]);
  });
});
