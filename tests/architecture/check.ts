import path from 'node:path';
import { checkDocstrings } from './docstrings.ts';
import { type FoundImport, findImports, stripSource } from './imports.ts';
import { CORE_LAYERS, IMPURE, MOST_LINES, PACKAGE_OWNERS, SEPARATIONS, STARTS, TYPE_PACKAGES } from './layers.ts';

/** Source texts by path from the project's root, with forward slashes. */
export type Sources = ReadonlyMap<string, string>;

/** An import with both ends known: `to` is a path of the project, or null for a package or a file not read. */
export type Link = FoundImport & { readonly from: string; readonly to: string | null };

const isUnder = (file: string, folder: string): boolean => file === folder || file.startsWith(`${folder}/`);

const folderOf = (file: string): string => path.posix.dirname(file);

/** The folder whose index.ts is the door to a file: the nearest above it that has one, else its own folder. */
const unitOf = (file: string, sources: Sources): string => {
  for (let folder = folderOf(file); folder !== '.' && folder.includes('/'); folder = folderOf(folder)) {
    if (folder in CORE_LAYERS || sources.has(`${folder}/index.ts`)) return folder;
  }
  return folderOf(file);
};

/** The unit of the layer table that a file of core belongs to; null when the table does not know it. */
export const layerOf = (file: string): string | null => {
  for (let folder = folderOf(file); folder !== '.'; folder = folderOf(folder)) {
    if (folder in CORE_LAYERS) return folder;
  }
  return null;
};

export const linksOf = (sources: Sources): readonly Link[] =>
  [...sources].flatMap(([from, text]) =>
    /\.(?:ts|tsx|mjs)$/.test(from)
      ? findImports(text).map((found) => ({ ...found, from, to: resolveLocal(from, found.specifier) }))
      : [],
  );

const resolveLocal = (from: string, specifier: string): string | null =>
  specifier.startsWith('.')
    ? path.posix.normalize(path.posix.join(folderOf(from), specifier.split('?')[0] ?? ''))
    : null;

const say = (link: Link, what: string, allowed: string): string =>
  `${link.from}:${link.line} may not import ${what}; allowed: ${allowed}`;

const list = (names: readonly string[]): string => (names.length === 0 ? 'nothing' : names.join(', '));

/** Screens, hosts and core: who may know whom. Tests are known by none of them. */
const PARTS: Readonly<Record<string, readonly string[]>> = {
  core: ['core'],
  electron: ['electron', 'core'],
  renderer: ['renderer', 'core'],
  'sample-routes': ['sample-routes', 'core'],
};

const checkParts = (links: readonly Link[]): readonly string[] =>
  links.flatMap((link) => {
    const allowed = PARTS[link.from.split('/')[0] ?? ''];
    const target = link.to?.split('/')[0];
    if (allowed === undefined || target === undefined || allowed.includes(target)) return [];
    // The version number is the one thing that sources read from the top level.
    if (link.to === 'package.json' && !link.from.startsWith('core/')) return [];
    return [say(link, link.to ?? link.specifier, list(allowed))];
  });

const PRELOAD_MAY = ['electron/preload', 'core/contract'] as const;

const checkPreload = (links: readonly Link[]): readonly string[] =>
  links
    .filter(({ from, to }) => isUnder(from, 'electron/preload') && to !== null)
    .filter(({ to }) => !PRELOAD_MAY.some((folder) => isUnder(to ?? '', folder)))
    .map((link) => say(link, link.to ?? '', list(PRELOAD_MAY)));

const checkLayers = (links: readonly Link[]): readonly string[] =>
  links.flatMap((link) => {
    if (link.to === null || !isUnder(link.from, 'core') || !isUnder(link.to, 'core')) return [];
    const from = layerOf(link.from);
    const to = layerOf(link.to);
    if (from === null || to === null) return [];
    const { uses, types = [] } = CORE_LAYERS[from] ?? { uses: [] };
    if (from === to || uses.includes(to) || (link.typeOnly && types.includes(to))) return [];
    const allowed = list([...uses, ...types.map((name) => `types of ${name}`)]);
    return [say(link, types.includes(to) ? `code from ${to}` : to, allowed)];
  });

const checkKnownLayers = (sources: Sources): readonly string[] =>
  [...sources.keys()]
    .filter((file) => isUnder(file, 'core') && file.endsWith('.ts') && layerOf(file) === null)
    .map((file) => `${file} lies in no layer; allowed: ${list(Object.keys(CORE_LAYERS))} (or add it to layers.ts)`);

const checkDoors = (links: readonly Link[], sources: Sources): readonly string[] =>
  links.flatMap((link) => {
    if (link.to === null || !sources.has(link.to)) return [];
    const door = unitOf(link.to, sources);
    const isDoored = isUnder(door, 'core') || sources.has(`${door}/index.ts`);
    if (!isDoored || isUnder(link.from, door) || link.to === `${door}/index.ts`) return [];
    return [say(link, link.to, `${door}/index.ts`)];
  });

/** The package that a specifier names: `@scope/name` or `name`, without the path inside it. */
const packageOf = (specifier: string): string =>
  specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');

const ownersOf = (name: string): readonly string[] | undefined =>
  PACKAGE_OWNERS[name] ?? PACKAGE_OWNERS[`${name.split('/')[0]}/*`];

/** Where Node's own modules may be used: the hosts, and the tool that writes the samples. */
const NODE_USERS = ['electron', 'sample-routes'] as const;

const checkPackages = (links: readonly Link[]): readonly string[] =>
  links.flatMap((link) => {
    if (link.to !== null || link.specifier.startsWith('/') || link.specifier.startsWith('virtual:')) return [];
    if (link.specifier.startsWith('node:')) {
      return NODE_USERS.some((folder) => isUnder(link.from, folder)) || link.from.endsWith('.mjs')
        ? []
        : [say(link, link.specifier, `node: modules in ${list(NODE_USERS)} only`)];
    }
    const name = packageOf(link.specifier);
    if (link.typeOnly && TYPE_PACKAGES.some((known) => known === name)) return [];
    const owners = ownersOf(name);
    if (owners?.some((folder) => isUnder(link.from, folder))) return [];
    return [say(link, name, owners === undefined ? 'packages listed in layers.ts' : `${name} in ${list(owners)} only`)];
  });

/** Every file whose code runs when the given files run, themselves included. */
const codeBehind = (starts: readonly string[], links: readonly Link[]): ReadonlySet<string> => {
  const targets = new Map<string, string[]>();
  for (const { from, to, typeOnly } of links) {
    if (to !== null && !typeOnly) targets.set(from, [...(targets.get(from) ?? []), to]);
  }
  const seen = new Set(starts);
  // A Set hands out what is added while it is walked, so this ends when nothing new turns up.
  for (const file of seen) for (const to of targets.get(file) ?? []) seen.add(to);
  return seen;
};

const checkSeparations = (links: readonly Link[], sources: Sources): readonly string[] =>
  SEPARATIONS.flatMap(({ one, other, mayShare }) => {
    const filesIn = (folders: readonly string[]): readonly string[] =>
      [...sources.keys()].filter((file) => folders.some((folder) => isUnder(file, folder)));
    const behindOther = codeBehind(filesIn(other), links);
    return [...codeBehind(filesIn([one]), links)]
      .filter((file) => behindOther.has(file) && !mayShare.some((folder) => isUnder(file, folder)))
      .map((file) => `${one} may not share ${file} with ${list(other)}; allowed: code of ${list(mayShare)}`);
  });

/** Folders that import each other in a ring, each ring once, as `a -> b -> a`. */
const checkCycles = (links: readonly Link[], sources: Sources): readonly string[] => {
  const parents = parentFolders(sources);
  const edges = new Map<string, Set<string>>();
  for (const { from, to } of links) {
    if (to === null || !sources.has(to)) continue;
    const [a, b] = [cycleUnit(from, parents), cycleUnit(to, parents)];
    if (a !== b) edges.set(a, (edges.get(a) ?? new Set()).add(b));
  }
  const rings = new Set<string>();
  const visit = (folder: string, trail: readonly string[]): void => {
    const start = trail.indexOf(folder);
    if (start >= 0) {
      rings.add(ringName(trail.slice(start)));
      return;
    }
    if (done.has(folder)) return;
    for (const next of edges.get(folder) ?? []) visit(next, [...trail, folder]);
    done.add(folder);
  };
  const done = new Set<string>();
  for (const folder of edges.keys()) visit(folder, []);
  return [...rings].map((ring) => `folders may not import each other in a ring: ${ring}; allowed: one way only`);
};

/** Folders that hold other folders with sources in them. */
const parentFolders = (sources: Sources): ReadonlySet<string> => {
  const parents = new Set<string>();
  for (const file of sources.keys()) {
    for (let folder = folderOf(folderOf(file)); folder !== '.'; folder = folderOf(folder)) parents.add(folder);
  }
  return parents;
};

/**
 * What stands in a ring: a folder; but a file of a folder that has folders inside (electron/services/index.ts) stands for
 * itself, so that a door may use the folders behind it and they the plain types beside it. So does a start.
 */
const cycleUnit = (file: string, parents: ReadonlySet<string>): string =>
  STARTS.includes(file) || parents.has(folderOf(file)) ? file : folderOf(file);

const ringName = (ring: readonly string[]): string => {
  const first = ring.indexOf([...ring].sort()[0] ?? '');
  const turned = [...ring.slice(first), ...ring.slice(0, first)];
  return [...turned, turned[0]].join(' -> ');
};

const checkPurity = (sources: Sources): readonly string[] =>
  [...sources]
    .filter(([file]) => isUnder(file, 'core') && file.endsWith('.ts'))
    .flatMap(([file, text]) => {
      const { code } = stripSource(text);
      return IMPURE.flatMap(({ pattern, word, instead }) =>
        [...code.matchAll(pattern)].map(
          ({ index }) => `${file}:${code.slice(0, index).split('\n').length} may not use ${word}; allowed: ${instead}`,
        ),
      );
    });

const checkLengths = (sources: Sources): readonly string[] =>
  [...sources].flatMap(([file, text]) => {
    const lines = text.trimEnd().split('\n').length;
    return lines > MOST_LINES ? [`${file} has ${lines} lines; allowed: ${MOST_LINES}`] : [];
  });

/** Every breach of the house rules, each one line that says what may be done instead; none is an empty list. */
export const checkArchitecture = (sources: Sources): readonly string[] => {
  const links = linksOf(sources).filter(({ from }) => !isUnder(from, 'tests'));
  return [
    ...checkKnownLayers(sources),
    ...checkParts(links),
    ...checkPreload(links),
    ...checkLayers(links),
    ...checkDoors(links, sources),
    ...checkPackages(links),
    ...checkSeparations(links, sources),
    ...checkCycles(links, sources),
    ...checkPurity(sources),
    ...checkLengths(sources),
    ...checkDocstrings(sources),
  ];
};
