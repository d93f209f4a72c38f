import { cp, mkdir, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { ROOT } from '../../support/bundle.ts';
import type { Fault } from './fault.ts';

/**
 * A page that only loads: the shell's checks need no screens, and drawing them takes most of the time of a start.
 * What the screens themselves do with the host is the matter of tests/browser.
 */
const EMPTY_PAGE = '<!doctype html><html lang="en"><meta charset="utf-8"><title>Swardway</title><body></body></html>';

/** The bundles as shipped, in a folder of their own, where one of them can be changed. */
export type Planting = {
  readonly main: string;
  /** Puts every bundle back and then plants the fault; null plants nothing. */
  readonly plant: (fault: Fault | null) => Promise<void>;
  readonly remove: () => Promise<void>;
};

/** The text with the fault in it. Throws where a text of the fault is not there, or more than once: it would plant nothing. */
export function withFault(text: string, { name, changes }: Fault): string {
  return changes.reduce((changed, [from, to]) => {
    const parts = changed.split(from);
    if (parts.length !== 2) {
      throw new Error(`the fault "${name}" does not apply: ${JSON.stringify(from)} is there ${parts.length - 1} times`);
    }
    return parts.join(to);
  }, text);
}

/** Lays the built program out anew under dist, where sqlite3 is found, with links to all that is never changed. */
export async function layOut(): Promise<Planting> {
  const folder = path.join(ROOT, 'dist/tests', `faults-${process.pid}`);
  const shipped = path.join(ROOT, 'dist/electron');
  const bundles = path.join(folder, 'dist/electron');
  await rm(folder, { recursive: true, force: true });
  await mkdir(path.join(folder, 'dist/renderer'), { recursive: true });
  await mkdir(bundles, { recursive: true });
  await writeFile(path.join(folder, 'dist/renderer/index.html'), EMPTY_PAGE);
  await writeFile(path.join(folder, 'package.json'), await readFile(path.join(ROOT, 'package.json')));
  await symlink(path.join(ROOT, 'sample-routes'), path.join(folder, 'sample-routes'), 'junction');
  for (const name of await readdir(shipped)) {
    if (name.endsWith('-worker.cjs')) await cp(path.join(shipped, name), path.join(bundles, name));
  }
  const texts = {
    main: await readFile(path.join(shipped, 'main.cjs'), 'utf8'),
    preload: await readFile(path.join(shipped, 'preload.cjs'), 'utf8'),
  };
  return {
    main: path.join(bundles, 'main.cjs'),
    plant: async (fault) => {
      for (const name of ['main', 'preload'] as const) {
        const text = fault?.bundle === name ? withFault(texts[name], fault) : texts[name];
        await writeFile(path.join(bundles, `${name}.cjs`), text);
      }
    },
    remove: () => rm(folder, { recursive: true, force: true }),
  };
}
