import type { Configuration } from 'electron-builder';

/** Ending of a book's file, without its dot. */
export const BOOK_EXTENSION = 'swardway';

/** The folder that bundles, screens and packages are made in, from the project's root. */
export const PACKAGE_FOLDER = 'dist/package';

/** The bundles that the desktop window runs: its main process, its preload script and the threads of the services. */
export const BUNDLES = ['main', 'preload', 'plan-worker', 'ground-worker', 'roads-worker'] as const;

/** What the bundles load at run time instead of carrying inside: the SQLite driver, and how it finds its binary. */
export const RUNTIME_PACKAGES = ['bindings', 'file-uri-to-path', 'sqlite3'] as const;

/** Of these only scripts and the binary run; C sources and build files stay behind. */
const RUNTIME_FILES = [
  ...RUNTIME_PACKAGES.flatMap((name) => [`${name}/package.json`, `${name}/LICENSE*`]),
  'bindings/bindings.js',
  'file-uri-to-path/index.js',
  'sqlite3/lib/*.js',
  'sqlite3/build/Release/node_sqlite3.node',
];

const ICONS = 'electron/packaging/icons';

/**
 * What an installed program is made of, for electron-builder.
 *
 * Only what runs is taken along: five bundles, the screens and the SQLite driver. Samples and notices lie beside the archive
 * as plain files, where people can look at them and where a sample's date is the file's own.
 */
export const packaging: Configuration = {
  appId: 'swardway.desktop',
  productName: 'Swardway',
  copyright: 'Copyright the Swardway contributors, MIT licence',
  directories: { output: PACKAGE_FOLDER, buildResources: 'electron/packaging' },
  files: [
    'package.json',
    ...BUNDLES.map((name) => `dist/electron/${name}.cjs`),
    'dist/renderer/**/*',
    '!**/*.map',
    '!**/node_modules/**/*',
    ...RUNTIME_FILES.map((file) => `node_modules/${file}`),
  ],
  extraResources: [
    { from: 'sample-routes', to: 'sample-routes', filter: ['*.json', '*.md', '*.osm'] },
    { from: 'LICENSE', to: 'LICENSE.swardway.txt' },
    { from: 'dist/third-party-licences.txt', to: 'third-party-licences.txt' },
  ],
  asar: true,
  // The system loads a binary from a file of its own, never out of an archive.
  asarUnpack: ['**/*.node'],
  /** See docs/decisions/0021: the driver speaks N-API and was compiled by the install already. */
  npmRebuild: false,
  fileAssociations: [
    {
      ext: BOOK_EXTENSION,
      name: 'Swardway book',
      description: 'Book of lawns, machines and rounds',
      mimeType: 'application/x-swardway-book',
      role: 'Editor',
    },
  ],
  electronFuses: {
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    grantFileProtocolExtraPrivileges: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    enableCookieEncryption: true,
  },
  linux: {
    target: ['AppImage', 'deb'],
    icon: `${ICONS}/linux`,
    category: 'Office',
    synopsis: 'Plans days of lawn treatment',
    maintainer: 'the Swardway contributors',
  },
  win: { target: ['nsis'], icon: `${ICONS}/swardway.ico` },
  nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true },
  mac: { target: ['dmg'], icon: `${ICONS}/swardway.icns`, category: 'public.app-category.business' },
  // Nothing is ever sent anywhere: no update feed is written, nothing is published.
  publish: null,
};
