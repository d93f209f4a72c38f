import { builtinModules } from 'node:module';
import { BUNDLES, RUNTIME_PACKAGES } from '../../../electron/packaging/config.ts';

/** What a bundle may ask for without its being in the archive. */
const ALWAYS_THERE: readonly string[] = ['electron', ...builtinModules];

/** The packages that a bundle's text loads when it runs; what comments say of loading is left out. */
export function packagesIn(source: string): readonly string[] {
  const lines = source.split('\n').filter((line) => !/^\s*(?:\*|\/[/*])/.test(line));
  const found = [...lines.join('\n').matchAll(/\brequire\(["'`]([^"'`]+)["'`]\)/g)].map(([, name = '']) => name);
  return [...new Set(found)].filter((name) => !name.startsWith('node:') && !ALWAYS_THERE.includes(name)).sort();
}

/** What the program needs and an archive with these files has not. */
export function missingFrom(names: readonly string[], bundles: readonly string[]): readonly string[] {
  const packages = new Set([...bundles.flatMap(packagesIn), ...RUNTIME_PACKAGES]);
  const files = [
    'package.json',
    'dist/renderer/index.html',
    'dist/renderer/licences.json',
    'node_modules/sqlite3/build/Release/node_sqlite3.node',
    ...BUNDLES.map((name) => `dist/electron/${name}.cjs`),
    ...[...packages].map((name) => `node_modules/${name}/package.json`),
  ];
  return files.filter((file) => !names.includes(file));
}

const NEEDED = [
  /^package\.json$/,
  new RegExp(`^dist/electron/(?:${BUNDLES.join('|')})\\.cjs$`),
  /^dist\/renderer\/(?:index\.html|licences\.json|assets\/[^/]+\.(?:js|css|woff2?|png|svg))$/,
  /^node_modules\/(?:bindings|file-uri-to-path)\/(?:[\w-]+\.js|package\.json|LICEN[CS]E[.\w]*)$/,
  /^node_modules\/sqlite3\/(?:package\.json|LICENSE|lib\/[\w-]+\.js|build\/Release\/node_sqlite3\.node)$/,
];

/** What an archive has without need: sources, maps, tests, tools, packages that the bundles carry inside. */
export function strangersIn(names: readonly string[]): readonly string[] {
  return names.filter((name) => !NEEDED.some((pattern) => pattern.test(name)));
}
