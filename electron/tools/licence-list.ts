/** What the lock file says of one package. */
export type LockedPackage = {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly optional?: boolean;
};
export type LockFile = { readonly packages: Readonly<Record<string, LockedPackage>> };

export type Licensed = {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** The package's folder, from the project's root. */
  readonly place: string;
};

/**
 * Licences under which a package may come with the program: all of them let it be passed on with a notice. Names are those of the SPDX
 * licence list; a choice (OR) is as good as its best part, a sum (AND) as its worst.
 */
const ALLOWED: readonly string[] = [
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BSL-1.0',
  'BlueOak-1.0.0',
  'CC0-1.0',
  'EDL-1.0',
  'ISC',
  'MIT',
  'OFL-1.1',
  'Unlicense',
  'WTFPL',
  'Zlib',
];

/** Where a package states its licence in words of its own or not at all: what its licence file says, read by hand. */
const READ_BY_HAND: Readonly<Record<string, string>> = {
  arc: 'BSD-2-Clause AND MIT',
  'splaytree-ts': 'BSD-3-Clause',
  wellknown: 'WTFPL',
};

/** Every package that comes with the program, from the lock file: no tools, no packages that are there for tests alone. Sorted by name. */
export function licencesOf({ packages }: LockFile): readonly Licensed[] {
  return Object.entries(packages)
    .filter(([place, each]) => place !== '' && each.dev !== true && each.devOptional !== true && each.optional !== true)
    .map(([place, { version = '', license = '' }]) => {
      const name = place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length);
      return { name, version, licence: READ_BY_HAND[name] ?? license, place };
    })
    .sort((a, b) => (a.name === b.name ? (a.version < b.version ? -1 : 1) : a.name < b.name ? -1 : 1));
}

/** Whether a licence, or a choice or sum of several, lets a package come with the program. */
export function isAllowed(licence: string): boolean {
  const bare = licence.replace(/^\((.*)\)$/, '$1');
  if (bare.includes(' AND ')) return bare.split(' AND ').every(isAllowed);
  if (bare.includes(' OR ')) return bare.split(' OR ').some(isAllowed);
  return ALLOWED.includes(bare);
}

/** The page docs/licences.md. */
export function licencePage(lock: LockFile): string {
  const all = licencesOf(lock);
  const rows = all.map(({ name, version, licence }) => `| ${name} | ${version} | ${licence} |`);
  return `# Licences of what comes with Swardway

Swardway itself is under the MIT licence (\`LICENSE\`). These ${all.length} packages come with it, directly or through one another; tools and
packages for tests do not. The page is written by \`npm run licences\` from the lock file, and a test compares the two. Each licence lets the
package be passed on with its notice: the words of all of them are in the program under Help, About Swardway, and beside an installed program.

| package | version | licence |
| --- | --- | --- |
${rows.join('\n')}
`;
}
